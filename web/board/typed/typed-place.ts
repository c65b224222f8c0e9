import { parseLength } from '../../../routing/site/numbers/parse-length.ts';
import type { Units } from '../../../routing/site/schema/vocabulary.ts';
import type { Point2 } from '../../../routing/site/site.ts';
import { type ReadNumber, readNumber } from '../../parts/read-number.ts';
import { typedLetters } from '../../parts/typed-text.ts';
import type { TypedPart, Typing } from './typing.ts';

/** What is typed in a field: a length, coordinate or elevation in feet, an angle in degrees counter-clockwise from +x. */
export function readTyped(typing: Typing, field: TypedPart, units: Units): ReadNumber | null {
  const text = typing[field];
  if (typedLetters(text).trim() === '') return null;
  if (field === 'angle') {
    const degrees = readNumber(text, { unit: 'degrees' });
    return degrees.ok ? degrees : { ok: false, says: `angle: ${degrees.says}` };
  }
  const length = parseLength(typedLetters(text), units);
  if (!length.ok) return { ok: false, says: `${field}: ${length.says}` };
  if (field === 'length' && !(length.feet > 0)) return { ok: false, says: `${field}: more than 0` };
  return { ok: true, value: length.feet };
}

/**
 * The place that is typed, the hand deciding what is not: by its coordinates on the site, else by distance and angle
 * from another place. Null where nothing is typed that says where.
 */
export function typedPlace(typing: Typing, from: Point2 | null, hand: Point2, units: Units): Point2 | null {
  const x = readTyped(typing, 'x', units);
  const y = readTyped(typing, 'y', units);
  if (x?.ok || y?.ok) return [x?.ok ? x.value : hand[0], y?.ok ? y.value : hand[1]];
  const told = readTyped(typing, 'length', units)?.ok || readTyped(typing, 'angle', units)?.ok;
  return from && told ? fromLast(typing, from, hand, units) : null;
}

function fromLast(typing: Typing, from: Point2, hand: Point2, units: Units): Point2 {
  const length = readTyped(typing, 'length', units);
  const angle = readTyped(typing, 'angle', units);
  const dx = hand[0] - from[0];
  const dy = hand[1] - from[1];
  const away = Math.hypot(dx, dy);
  const far = length?.ok ? length.value : away;
  if (angle?.ok) {
    const quarter = ((angle.value % 360) + 360) % 360;
    const exact: Record<number, Point2> = { 0: [1, 0], 90: [0, 1], 180: [-1, 0], 270: [0, -1] };
    const radians = (angle.value * Math.PI) / 180;
    const [ux, uy] = exact[quarter] ?? [Math.cos(radians), Math.sin(radians)];
    return [from[0] + far * ux, from[1] + far * uy];
  }
  if (away < 1e-9) return [from[0] + far, from[1]];
  return [from[0] + (far * dx) / away, from[1] + (far * dy) / away];
}
