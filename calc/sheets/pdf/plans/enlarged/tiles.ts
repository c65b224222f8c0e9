import type { Extent } from '../../../drawing/drawing.ts';

/** One window of a plan that is too large for a sheet at its scale. Feet. */
export interface Tile {
  readonly window: Extent;
  /** From the left and from the top. */
  readonly column: number;
  readonly row: number;
  /** Of an area that somebody chose; its neighbors need not touch it. */
  readonly name?: string;
}

/** What the sheet of a window is called by others of the set. */
export const tileKey = ({ column, row }: Tile): string => `enlarged ${column} ${row}`;

/** What cuts are kept from beside the things themselves. */
export interface Uncut {
  /** Things that are cut only where no division of any number of windows spares them, as equipment with its space. */
  readonly whole: readonly Extent[];
  /** Lines that a cut runs along only where it must, as raceways: crossing them does no harm. */
  readonly lines: readonly Extent[];
}

/**
 * The windows, of at most a size, that together cover an extent: as few columns and rows as leave whole what is to be
 * whole and run along no line, cut where the cuts lie farthest from the things in them. Only windows that something lies in; by rows from the
 * top, each from the left.
 */
export function tilesOf(
  things: readonly Extent[],
  around: Extent,
  most: { readonly width: number; readonly height: number },
  { whole, lines }: Uncut = { whole: [], lines: [] },
): readonly Tile[] {
  const isLevel = ({ minX, maxX, minY, maxY }: Extent): boolean => maxX - minX > maxY - minY;
  const upright = lines.filter((line) => !isLevel(line));
  const level = lines.filter(isLevel);
  const xs = cutsOf(around.minX, around.maxX, most.width, [...things, ...upright].map(inX), [
    ...whole.map(inX),
    ...upright.map(inX),
  ]);
  const ys = cutsOf(around.minY, around.maxY, most.height, [...things, ...level].map(inY), [
    ...whole.map(inY),
    ...level.map(inY),
  ]);
  const tiles: Tile[] = [];
  for (let row = 0; row < ys.length - 1; row++)
    for (let column = 0; column < xs.length - 1; column++) {
      const window: Extent = {
        minX: xs[column]!,
        maxX: xs[column + 1]!,
        minY: ys[ys.length - 2 - row]!,
        maxY: ys[ys.length - 1 - row]!,
      };
      if (things.some((thing) => holdsMiddle(window, thing))) tiles.push({ window, column, row });
    }
  return tiles;
}

const holdsMiddle = (window: Extent, { minX, minY, maxX, maxY }: Extent): boolean => {
  const [x, y] = [(minX + maxX) / 2, (minY + maxY) / 2];
  return x >= window.minX && x <= window.maxX && y >= window.minY && y <= window.maxY;
};

type Span = readonly [from: number, to: number];
const inX = ({ minX, maxX }: Extent): Span => [minX, maxX];
const inY = ({ minY, maxY }: Extent): Span => [minY, maxY];

/** Places tried for cuts, evenly over the extent. */
const TRIES = 240;
/** Room beside a cut that is worth having, feet. */
const ENOUGH = 8;

/** Feet that a cut keeps from what is to be whole. */
const BESIDE_WHOLE = 0.5;

/**
 * Ends of the windows along one axis, each of at most a length: those that cut least of what is to be whole, of these the
 * fewest, and of these the cuts with the most room.
 */
function cutsOf(
  from: number,
  to: number,
  most: number,
  spans: readonly Span[],
  whole: readonly Span[],
): readonly number[] {
  if (to - from <= most) return [from, to];
  const beside = whole.flatMap(([start, stop]) => [start - BESIDE_WHOLE, stop + BESIDE_WHOLE]);
  const places = candidates(from, to, spans, beside);
  const broken = places.map((place) => whole.filter(([start, stop]) => start < place && place < stop).length);
  const worth = worths(places, spans);
  // Windows up to each place, and the worth of their cuts; a place that no window reaches stays at infinity.
  const best = places.map((_, i) => ({ broken: 0, windows: i === 0 ? 0 : Infinity, worth: 0, before: -1 }));
  places.forEach((place, i) => {
    for (let k = i - 1; k >= 0 && place - places[k]! <= most + 1e-9; k--) {
      const windows = best[k]!.windows + 1;
      if (windows === Infinity) continue;
      const isEnd = i === places.length - 1;
      const sum = best[k]!.worth + (isEnd ? 0 : worth[i]!);
      const cut = best[k]!.broken + (isEnd ? 0 : broken[i]!);
      const now = best[i]!;
      const order = now.windows === Infinity ? -1 : cut - now.broken || windows - now.windows;
      if (order < 0 || (order === 0 && sum > now.worth + 1e-9))
        best[i] = { broken: cut, windows, worth: sum, before: k };
    }
  });
  const cuts: number[] = [];
  for (let i = places.length - 1; i >= 0; i = best[i]!.before) cuts.unshift(places[i]!);
  return cuts;
}

/** Even places, the middle of each gap between things, and so many more. */
function candidates(from: number, to: number, spans: readonly Span[], more: readonly number[]): readonly number[] {
  const places = Array.from({ length: TRIES + 1 }, (_, i) => from + ((to - from) * i) / TRIES);
  places.push(...more.filter((place) => place > from && place < to));
  let end = -Infinity;
  for (const [start, stop] of [...spans].sort((a, b) => a[0] - b[0])) {
    if (start > end && end > from && start < to) places.push((start + end) / 2);
    end = Math.max(end, stop);
  }
  return [...new Set(places)].sort((a, b) => a - b);
}

/**
 * Of each place, in rising order: room between a cut there and the nearest thing; where it cuts things, less than nothing:
 * how many, and how near a middle. Only what is open at a place is looked at.
 */
function worths(places: readonly number[], spans: readonly Span[]): readonly number[] {
  const byStart = spans.map((_, i) => i).sort((a, b) => spans[a]![0] - spans[b]![0]);
  let next = 0;
  let last = -Infinity;
  let open: number[] = [];
  return places.map((place) => {
    while (next < byStart.length && spans[byStart[next]!]![0] < place) open.push(byStart[next++]!);
    let cut = 0;
    const still: number[] = [];
    // Summed in the order of the list, whatever it was sorted by.
    for (const i of open.sort((a, b) => a - b)) {
      const [start, stop] = spans[i]!;
      if (stop <= place) {
        last = Math.max(last, stop);
        continue;
      }
      still.push(i);
      cut += (2 * Math.min(place - start, stop - place)) / (stop - start);
    }
    open = still;
    if (cut > 0) return -cut;
    const after = next < byStart.length ? spans[byStart[next]!]![0] - place : Infinity;
    return Math.min(ENOUGH, after, place - last) / ENOUGH;
  });
}
