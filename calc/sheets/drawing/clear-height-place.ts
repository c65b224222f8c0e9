import type { Box } from '../../../routing/plane/box.ts';
import type { GroundSpan, SectionPart, SectionShape } from '../../space/section/shape.ts';

/** Steps to either side, in letters, at which a clear height is tried. */
const ASIDE = [4, 6, 8, 10, 12, 14, 16, 20, 24, 28, -3, -5, -7, -9, -11, -13, -15, -19, -23, -27];
/** What hangs or stands where the words of a clear height must not lie. */
const KEPT_OFF: ReadonlySet<SectionPart> = new Set([
  'cord at rest',
  'cord out',
  'rod',
  'retractor',
  'box',
  'column',
  'equipment',
]);

/** The place of a clear height's words: beside the steel above it, within its part of the ground, over nothing that hangs or stands. */
export function clearOf(
  shapes: readonly SectionShape[],
  { from, to }: GroundSpan,
  clear: { readonly height: number; readonly across: number },
  forms: readonly string[],
  letter: number,
): { readonly words: string; readonly across: number } {
  const within = (u: number): number => Math.min(Math.max(u, from + 3 * letter), to - letter);
  const middle = clear.height / 2;
  const off = shapes.filter(({ part }) => KEPT_OFF.has(part));
  const isFree = (u: number, long: number): boolean => {
    const words: Box = {
      minX: u - 1.6 * letter,
      maxX: u + 0.3 * letter,
      minY: middle - long / 2,
      maxY: middle + long / 2,
    };
    return !off.some((shape) => goesThrough(shape, words));
  };
  const tried = ASIDE.map((step) => within(clear.across + step * letter));
  for (const words of forms) {
    const across = tried.find((u) => isFree(u, words.length * letter * 0.8));
    if (across !== undefined) return { words, across };
  }
  return { words: forms.at(-1)!, across: tried[0]! };
}

/** A line or outline of a shape goes through a box, to a twentieth of its straights. */
function goesThrough(shape: SectionShape, { minX, minY, maxX, maxY }: Box): boolean {
  const points = shape.kind === 'round' ? [shape.at] : shape.points;
  return points.some((to, i) => {
    const before = points[i - 1] ?? (shape.kind === 'outline' ? points.at(-1)! : to);
    for (let k = 0; k <= 20; k++) {
      const [x, y] = [before[0] + ((to[0] - before[0]) * k) / 20, before[1] + ((to[1] - before[1]) * k) / 20];
      if (x >= minX && x <= maxX && y >= minY && y <= maxY) return true;
    }
    return false;
  });
}
