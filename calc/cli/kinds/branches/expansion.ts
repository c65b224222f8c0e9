import * as v from 'valibot';
import { METHODS } from '../../../../routing/site/schema/vocabulary.ts';
import { expansion } from '../../../branches/expansion.ts';
import { methodRaceway } from '../../../tables/conductor-of.ts';
import { RACEWAY_KINDS } from '../../../tables/table.ts';
import { nonNegativeFigure, TABLES } from '../fields.ts';
import { answer, kind, refuse } from '../kind.ts';

/** A material, or a wiring method for what it is made of. */
const material = v.union([v.picklist(RACEWAY_KINDS), v.pipe(v.picklist(METHODS), v.transform(methodRaceway))]);

const schema = v.strictObject({
  /** The same field under two names. */
  metal: v.optional(material),
  material: v.optional(material),
  length: nonNegativeFigure,
  temperatureRangeC: nonNegativeFigure,
});

export const expansionKind = kind(schema, ({ metal, material: other, length, temperatureRangeC }, tell) => {
  const of = other ?? metal;
  if (of === undefined || (metal !== undefined && other !== undefined))
    return refuse('material', `expected either material or metal, one of ${RACEWAY_KINDS.join(', ')}`);
  return answer(expansion(TABLES, { material: of, length, temperatureRangeC }, tell));
});
