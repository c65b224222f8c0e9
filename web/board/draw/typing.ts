import { parseLength } from '../../../routing/site/feet-inches.ts';
import type { Point2 } from '../../../routing/site/site.ts';
import type { Units } from '../../../routing/site/vocabulary.ts';

export const TYPED = ['length', 'angle', 'elevation'] as const;
export type TypedField = (typeof TYPED)[number];

/** What is being typed while the hand draws. The field that has not been typed follows the hand. */
export interface Typing {
  readonly field: TypedField;
  readonly length: string;
  readonly angle: string;
  readonly elevation: string;
}

export const startTyping = (field: TypedField, first = ''): Typing => ({
  field,
  length: '',
  angle: '',
  elevation: '',
  [field]: first,
});

export type Read = { readonly ok: true; readonly value: number } | { readonly ok: false; readonly says: string };

/** What is typed in a field: a length or an elevation in feet, an angle in degrees counter-clockwise from +x. */
export function readTyped(typing: Typing, field: TypedField, units: Units): Read | null {
  const text = typing[field].trim();
  if (text === '') return null;
  if (field === 'angle') {
    const value = Number(text.replace(/\s*(°|deg|degrees)$/i, ''));
    return Number.isFinite(value) ? { ok: true, value } : { ok: false, says: 'expected degrees' };
  }
  const length = parseLength(text, units);
  if (!length.ok) return { ok: false, says: length.says };
  if (field === 'length' && !(length.feet > 0)) return { ok: false, says: 'expected more than 0' };
  return { ok: true, value: length.feet };
}

/** The place that a typed distance and angle give from another, the hand deciding what is not typed. */
export function typedPlace(typing: Typing, from: Point2, hand: Point2, units: Units): Point2 {
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
