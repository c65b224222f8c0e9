import * as v from 'valibot';
import {
  id,
  maybe,
  nonNegative,
  nonNegativeLength,
  phaseCount,
  positive,
  positiveLength,
  ref,
  told,
} from '../schema/schema-parts.ts';
import type { Kind, KindDocs, Of } from './kind.ts';

export const chargerSchema = v.strictObject({
  id,
  drop: told(ref, 'Drop its cord hangs at.'),
  stalls: told(v.array(ref), 'Stalls it is meant to serve.'),
  from: told(ref, 'Equipment that feeds it.'),
  amps: told(positive, 'Rated output current.'),
  volts: positive,
  phases: told(phaseCount, '1 (line to line) or 3.'),
  pilot: maybe(
    told(v.boolean(), 'A pilot conductor is carried with the branch; it returns on the grounding conductor.'),
  ),
  minAmps: maybe(
    told(
      nonNegative,
      'Least current that it gives where it gives any: 6 where absent, 0 where it can give less still.',
    ),
  ),
  disconnect: maybe(
    told(
      nonNegativeLength,
      'How far from it a disconnect of its own stands that can be locked open; 0 where it is part of the equipment.',
    ),
  ),
  branchLimit: maybe(told(positiveLength, 'Longest conductor length, in place of the rule.')),
  branchDrop: maybe(
    told(
      positive,
      'Most voltage drop of its branch, percent, in place of the rule: conductors are grown until they hold it.',
    ),
  ),
});

export type Charger = Of<typeof chargerSchema>;

export const chargers: Kind<typeof chargerSchema> = {
  schema: chargerSchema,
  one: 'charger',
  many: 'chargers',
  anyOne: 'a charger',
  refers: { drop: 'drops', stalls: 'stalls', from: 'equipment' },
};

export const chargerDocs: KindDocs<typeof chargerSchema> = {
  says: 'Outlets that charge vehicles, each at a drop.',
  fields: {
    volts: 'Volts at which it charges.',
  },
  examples: [
    {
      id: 'C01',
      drop: 'D01',
      stalls: ['S01', 'S02'],
      from: 'P1',
      amps: 40,
      volts: 208,
      phases: 1,
      minAmps: 6,
      pilot: true,
      disconnect: 8,
      branchLimit: 120,
      branchDrop: 1.5,
    },
    { id: 'C02', drop: 'D02', stalls: ['S02'], from: 'P1', amps: 40, volts: 208, phases: 1 },
  ],
};
