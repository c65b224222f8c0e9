import type { Unrolled } from './unrolled.ts';

/** Lettering of the strip where it lies over nothing else: pixels, `y` its baseline. */
export interface StripLabel {
  readonly words: string;
  readonly x: number;
  readonly y: number;
  readonly anchor: Anchor;
}

type Anchor = 'start' | 'middle' | 'end';

interface Patch {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** A letter of the strip's face, on an average, and how far letters stand above and below their line. Pixels. */
const LETTER = 6.3;
const ABOVE = 10;
const BELOW = 3;
/** Half of a raceway as it is drawn, and of a box on it. */
const TUBE = 5;
const BOX = 6;

export interface StripPlace {
  readonly x: (along: number) => number;
  readonly y: (up: number) => number;
  readonly width: number;
  readonly words: (length: number) => string;
}

/**
 * The names of pull points and the lengths of the legs, each at the first of its places where it hides nothing and lies
 * over nothing; what has no such place is left out, for the line above the strip and its spoken words say the rest.
 * `taken` is what else is lettered there.
 */
export function stripLabels(flat: Unrolled, { x, y, width, words }: StripPlace, taken: readonly Patch[]): StripLabel[] {
  const patches: Patch[] = [...taken];
  for (const { from, to } of flat.legs) {
    const [ax, bx] = [x(from.along), x(to.along)];
    const [ay, by] = [y(from.up), y(to.up)];
    patches.push({
      left: Math.min(ax, bx) - TUBE,
      right: Math.max(ax, bx) + TUBE,
      top: Math.min(ay, by) - TUBE,
      bottom: Math.max(ay, by) + TUBE,
    });
  }
  for (const { at } of flat.pullpoints) patches.push(around(x(at.along), y(at.up), BOX));
  const placed: StripLabel[] = [];
  const place = (said: string, places: readonly (readonly [number, number, Anchor])[]): void => {
    for (const [px, py, anchor] of places) {
      const patch = patchOf(said, px, py, anchor);
      if (patch.left < 2 || patch.right > width - 2 || patches.some((other) => meet(patch, other))) continue;
      patches.push(patch);
      placed.push({ words: said, x: px, y: py, anchor });
      return;
    }
  };
  for (const { id, at } of flat.pullpoints) {
    const [px, py] = [x(at.along), y(at.up)];
    place(id, [
      [px, py + 19, 'middle'],
      [px + BOX + 3, py + 19, 'start'],
      [px - BOX - 3, py + 19, 'end'],
    ]);
  }
  // The longest are told first: they are what one looks for.
  for (const { kind, from, to, length } of [...flat.legs].sort((a, b) => b.length - a.length)) {
    const [ax, bx] = [x(from.along), x(to.along)];
    const [ay, by] = [y(from.up), y(to.up)];
    if (kind === 'riser') {
      const middle = (ay + by) / 2 + 4;
      const low = Math.max(ay, by) - 2;
      place(`riser ${words(length)}`, [
        [ax + 8, middle, 'start'],
        [ax + 8, low, 'start'],
        [ax - 8, middle, 'end'],
        [ax - 8, low, 'end'],
      ]);
      continue;
    }
    const said = `${kind === 'tap' ? 'stub ' : ''}${words(length)} at ${words(to.up)}`;
    const room = bx - ax;
    if (said.length * LETTER > room) continue;
    const line = (share: number): number => y(from.up + (to.up - from.up) * share) + 17;
    place(
      said,
      [0.5, 0.35, 0.65, 0.2, 0.8].map((share) => [ax + room * share, line(share), 'middle'] as const),
    );
  }
  return placed;
}

/** The patch that a label covers. */
export function patchOf(words: string, x: number, y: number, anchor: Anchor): Patch {
  const width = words.length * LETTER;
  const left = anchor === 'start' ? x : anchor === 'end' ? x - width : x - width / 2;
  return { left, right: left + width, top: y - ABOVE, bottom: y + BELOW };
}

const around = (x: number, y: number, half: number): Patch => ({
  left: x - half,
  right: x + half,
  top: y - half,
  bottom: y + half,
});

const meet = (a: Patch, b: Patch): boolean =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;

/** The longest of several ways to say something that has room, or null. */
export const labelThatFits = (ways: readonly string[], room: number): string | null =>
  ways.find((words) => words.length * LETTER <= room) ?? null;
