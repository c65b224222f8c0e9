import signs from '../../../fonts/signs.json' with { type: 'json' };
import { FACES, type FaceName } from './faces.ts';

/** The typeface of the set, or one beside it. */
export type AnyFace = FaceName | 'set';

/** A page is 256 signs, a bit each in base 64; an asterisk has all of them. */
type Pages = Readonly<Record<string, string>>;

const PAGES = signs as Readonly<Record<AnyFace, Pages>>;
const opened = new Map<string, string>();

/** Whether a typeface has a sign, by the table of what each has: no typeface is read for it. */
export function faceHas(face: AnyFace, code: number): boolean {
  const page = PAGES[face][(code >> 8).toString(16)];
  if (page === undefined || page === '*') return page === '*';
  let bits = opened.get(page);
  if (bits === undefined) {
    bits = atob(page);
    opened.set(page, bits);
  }
  return ((bits.charCodeAt((code & 0xff) >> 3) >> (code & 7)) & 1) === 1;
}

/** Whether any of the typefaces has a sign, but for those that cannot be had. */
export const isDrawnBy =
  (absent: ReadonlySet<FaceName>) =>
  (code: number): boolean =>
    faceHas('set', code) || FACES.some((face) => !absent.has(face) && faceHas(face, code));

/** Whether any of the typefaces has a sign. */
export const isDrawn = isDrawnBy(new Set());
