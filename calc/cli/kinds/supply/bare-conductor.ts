import * as v from 'valibot';
import { ampacity } from '../../../circuits/ampacity.ts';
import { ampacityAt } from '../../../tables/ampacity-of.ts';
import type { Tell } from '../../../words/explain.ts';
import { measured } from '../../../words/measured.ts';
import { finite, insulation, metal, nonNegativeFigure, size, TABLES, terminalC, wholeFigure } from '../fields.ts';

/** What is said of conductors that start without a device. */
export const bareFields = {
  conductor: v.strictObject({
    size,
    metal,
    sets: v.optional(wholeFigure, 1),
    insulation: v.optional(insulation),
  }),
  length: nonNegativeFigure,
  ambientC: v.optional(finite),
  terminalC: v.optional(terminalC, 75),
} as const;

const bareSchema = v.strictObject(bareFields);
type BareInput = Omit<v.InferOutput<typeof bareSchema>, 'length'>;

export const lacksInsulation = ({ ambientC, conductor }: BareInput): boolean =>
  ambientC !== undefined && conductor.insulation === undefined;
export const NO_INSULATION = ['conductor.insulation', 'missing: an ambient corrects by the insulation'] as const;

export const notHeld = ({ size: of, metal: made }: BareInput['conductor']): [string, string] => [
  'conductor.size',
  `${TABLES.ampacity.source} has no ${of} ${made}`,
];

/** Of one set, three conductors with current: in the column of the terminals where no insulation is given. */
export function bareAmpacity({ conductor, ambientC = 30, terminalC: terminals }: BareInput, tell: Tell): number | null {
  const { size: of, metal: made, insulation: under } = conductor;
  if (under !== undefined) {
    const given = { conductor: { size: of, metal: made, insulation: under }, ambientC, terminalC: terminals };
    return ampacity(TABLES, { ...given, currentCarrying: 3 }, tell)?.ampacity ?? null;
  }
  const amps = ampacityAt(TABLES, of, made, terminals);
  if (amps !== null)
    tell(() => ({
      find: 'ampacity',
      formula: 'of the size in the column of the terminals, at 30 °C, no insulation given',
      values: { conductor: `${of} ${made}`, column: `${terminals} °C` },
      result: measured(amps, 'A'),
      source: TABLES.ampacity.source,
    }));
  return amps;
}
