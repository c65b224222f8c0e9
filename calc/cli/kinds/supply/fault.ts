import * as v from 'valibot';
import { type FaultStep, faultChain, lackingAt } from '../../../supply/fault/fault-chain.ts';
import { finite, metal, nonNegativeFigure, phases, positiveFigure, size, TABLES, wholeFigure } from '../fields.ts';
import { answer, kind, refuse } from '../kind.ts';

const step = v.variant('kind', [
  v.strictObject({
    kind: v.literal('source'),
    faultAmps: v.optional(positiveFigure),
    mva: v.optional(positiveFigure),
    volts: positiveFigure,
    xr: v.optional(nonNegativeFigure),
  }),
  v.strictObject({
    kind: v.literal('transformer'),
    kva: positiveFigure,
    secondaryVolts: positiveFigure,
    phases,
    impedancePercent: positiveFigure,
    xr: v.optional(nonNegativeFigure),
  }),
  v.strictObject({
    kind: v.literal('conductor'),
    length: nonNegativeFigure,
    volts: positiveFigure,
    phases,
    conductor: v.strictObject({ size, metal, sets: v.optional(wholeFigure, 1) }),
    raceway: v.picklist(['steel', 'nonmagnetic']),
    ohms: v.optional(v.strictObject({ r: nonNegativeFigure, x: nonNegativeFigure })),
  }),
]);

const schema = v.strictObject({
  steps: v.pipe(v.array(step), v.minLength(1)),
  method: v.picklist(['point-to-point', 'impedance']),
  impedanceTolerance: v.optional(v.pipe(positiveFigure, v.maxValue(2))),
  conductorC: v.optional(v.pipe(finite, v.minValue(-50), v.maxValue(250))),
});

export const faultKind = kind(schema, (input, tell) => {
  const { steps, method } = input;
  if (input.conductorC !== undefined && method === 'point-to-point')
    return refuse(
      'conductorC',
      'the constants of the point-to-point method are of about 25 °C; by impedance it may be given',
    );
  let volts = 0;
  for (const [at, one] of steps.entries()) {
    const wrong = refusal(one, at, volts, method);
    if (wrong !== undefined) return refuse(`steps[${at}]${wrong.field}`, wrong.says);
    volts = one.kind === 'transformer' ? one.secondaryVolts : one.volts;
  }
  return answer({ places: faultChain(TABLES, input, tell) });
});

function refusal(
  one: FaultStep,
  at: number,
  volts: number,
  method: 'point-to-point' | 'impedance',
): { readonly field: string; readonly says: string } | undefined {
  if ((one.kind === 'source') !== (at === 0)) return { field: '', says: 'one source, and it comes first' };
  if (one.kind === 'source' && one.faultAmps !== undefined && one.mva !== undefined)
    return { field: '.mva', says: 'give faultAmps or mva, not both' };
  if (one.kind !== 'conductor') return undefined;
  if (Math.abs(one.volts - volts) > 0.05 * volts)
    return { field: '.volts', says: `what feeds it has ${volts} V; a transformer between them changes that` };
  if (one.ohms !== undefined && one.ohms.r === 0 && one.ohms.x === 0)
    return { field: '.ohms', says: 'expected some resistance or reactance' };
  const lacking = lackingAt(TABLES, one, method);
  return lacking === undefined ? undefined : { field: '.conductor', says: lacking };
}
