import * as v from 'valibot';
import { fraction, id, maybe, nonNegative, phaseCount, positive, ref, text, told } from '../schema/schema-parts.ts';
import type { Kind, KindDocs, Of } from './kind.ts';

export const loadSchema = v.strictObject({
  id,
  from: told(ref, 'Equipment that feeds it, or that it feeds where it generates.'),
  name: text,
  volts: positive,
  phases: phaseCount,
  va: nonNegative,
  continuous: v.boolean(),
  generation: maybe(v.boolean()),
  demand: maybe(
    told(fraction, 'Part of it that counts in demand, as a demand factor of the code allows; 1 where absent.'),
  ),
  motor: maybe(told(v.boolean(), 'A motor: `va` are those of its full-load current.')),
});

export type Load = Of<typeof loadSchema>;

export const loads: Kind<typeof loadSchema> = {
  schema: loadSchema,
  one: 'load',
  many: 'loads',
  anyOne: 'a load',
  alsoCalled: ({ name }) => name,
  refers: { from: 'equipment' },
};

export const loadDocs: KindDocs<typeof loadSchema> = {
  says: 'Loads beside chargers.',
  fields: {
    name: 'What it is, as the schedule says it.',
    volts: 'Volts at which it is rated.',
    phases: 'Phases: 1 or 3.',
    va: 'Volt-amperes at its rating.',
    continuous: 'Whether it is expected to go on for three hours or more.',
    generation: 'Whether it feeds power in, as a battery or solar inverter does.',
  },
  examples: [
    {
      id: 'L1',
      from: 'P1',
      name: 'Lighting',
      volts: 120,
      phases: 1,
      va: 1800,
      continuous: true,
      generation: false,
      demand: 0.8,
      motor: false,
    },
  ],
};
