import * as v from 'valibot';
import { distance } from '../../../../routing/plane/space.ts';
import { simpleSpan } from '../../../steel/simple-span.ts';
import { finite, nonNegativeFigure } from '../fields.ts';
import { answer, kind, refuse } from '../kind.ts';

/** More loads than this on one member are no drawing of a canopy. */
const MOST_LOADS = 20_000;

const point3 = v.strictTuple([finite, finite, finite]);
const member = v.union(
  [v.strictObject({ from: point3, to: point3 }), v.strictObject({ from: finite, to: finite })],
  'expected {"from": [x, y, z], "to": [x, y, z]}, or two numbers along a level line, ft',
);
const load = v.union(
  [
    v.strictObject({ at: nonNegativeFigure, pounds: nonNegativeFigure }),
    v.strictObject({ from: nonNegativeFigure, to: nonNegativeFigure, poundsPerFoot: nonNegativeFigure }),
  ],
  'expected {"at", "pounds"} or {"from", "to", "poundsPerFoot"}, ft along the member from its first end, none below 0',
);

const schema = v.strictObject({
  member,
  loads: v.pipe(v.array(load), v.maxLength(MOST_LOADS, `expected ${MOST_LOADS} loads at most`)),
});

/** A rounding of the length must not refuse a load at the end. */
const SLIP = 1e-9;

export const hungKind = kind(schema, (input, tell) => {
  const { from, to } = input.member;
  const level = typeof from === 'number' || typeof to === 'number';
  const length = level ? Math.abs(Number(to) - Number(from)) : distance(from, to);
  const inPlan = level ? length : Math.hypot(to[0] - from[0], to[1] - from[1]);
  if (!(length > 0)) return refuse('member', 'its two ends are one place');
  if (!(inPlan > SLIP * length)) return refuse('member', 'it stands upright: nothing spans between its ends');
  for (const [i, one] of input.loads.entries()) {
    if ('at' in one ? one.at > length + SLIP : one.to > length + SLIP)
      return refuse(
        `loads[${i}]`,
        `lies past the end of the member, which is ${Number(length.toPrecision(6))} ft long`,
      );
    if ('from' in one && one.to < one.from) return refuse(`loads[${i}].to`, 'expected it no less than `from`');
  }
  const within = (at: number): number => Math.min(length, at);
  const loads = input.loads.map((one) =>
    'at' in one ? { ...one, at: within(one.at) } : { ...one, from: within(one.from), to: within(one.to) },
  );
  return answer(simpleSpan({ length, inPlan }, loads, tell));
});
