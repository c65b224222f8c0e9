import * as v from 'valibot';
import { bondingJumper } from '../../../circuits/bonding-jumper.ts';
import { metal, size, TABLES, wholeFigure } from '../fields.ts';
import { answer, kind, refuse } from '../kind.ts';

export const supplyConductor = v.strictObject({ size, metal, sets: v.optional(wholeFigure, 1) });

const schema = v.strictObject({ conductor: supplyConductor, metal });

export const bondingKind = kind(schema, (input, tell) => {
  const { size: found, mils } = bondingJumper(TABLES, input, tell);
  return found === null
    ? refuse('conductor', `asks for ${Math.round(mils ?? 0)} circular mils, more than any size: a busbar`)
    : answer({ jumper: { size: found, metal: input.metal } });
});
