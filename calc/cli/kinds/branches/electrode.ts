import * as v from 'valibot';
import { ELECTRODES } from '../../../../routing/site/schema/vocabulary.ts';
import { electrodeConductor } from '../../../circuits/electrode-conductor.ts';
import { metal, TABLES } from '../fields.ts';
import { answer, kind } from '../kind.ts';
import { supplyConductor } from './bonding.ts';

const schema = v.strictObject({ conductor: supplyConductor, metal, electrode: v.picklist(ELECTRODES) });

export const electrodeKind = kind(schema, (input, tell) =>
  answer({ conductor: { ...electrodeConductor(TABLES, input, tell), metal: input.metal } }),
);
