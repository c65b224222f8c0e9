import fc from 'fast-check';
import type { Point3, Raceway, Site } from '../../../routing/site/site.ts';
import { box, charger, panel, raceway, siteOf } from './sites.ts';

/** Raceways, where the two panels' entries are, and where the boxes are. */
export interface Drawing {
  readonly raceways: readonly Raceway[];
  readonly entries: readonly Point3[];
  readonly boxes: readonly Point3[];
}

/** Every box has a charger on either panel. */
export const siteOfDrawing = ({ raceways, entries, boxes }: Drawing): Site =>
  siteOf({
    raceways: [...raceways],
    equipment: entries.map((entry, i) => panel(`P${i + 1}`, entry)),
    drops: boxes.map((at, i) => box(`D${i}`, at)),
    chargers: boxes.flatMap((_, i) => entries.map((_, p) => charger(`C${i}-P${p + 1}`, `D${i}`, `P${p + 1}`))),
  });

const whole = (min: number, max: number) => fc.integer({ min, max });
const named = (paths: readonly Point3[][]): Raceway[] =>
  paths.map((path, i) => raceway(`R${String(i).padStart(2, '0')}`, path));

/** Square raceways on whole feet, at a few elevations: many crossings, overlaps, risers and equally short ways. */
const squarePath = fc
  .record({
    start: fc.tuple(whole(0, 12), whole(0, 12)),
    z: fc.constantFrom(11, 11, 11, 13, -2),
    legs: fc.array(fc.record({ axis: whole(0, 2), by: whole(-8, 8), up: fc.constantFrom(-2, 2) }), {
      minLength: 1,
      maxLength: 4,
    }),
  })
  .map(({ start, z, legs }): Point3[] => {
    const path: Point3[] = [[3 * start[0], 3 * start[1], z]];
    for (const { axis, by, up } of legs) {
      const [x, y, at] = path.at(-1)!;
      path.push(axis === 0 ? [x + 3 * by, y, at] : axis === 1 ? [x, y + 3 * by, at] : [x, y, at + up]);
    }
    return path;
  })
  .filter((path) => path.some((p) => p.some((c, axis) => c !== path[0]![axis])));

/** A place some way along one of the raceways, and how far beside it something stands. */
const pick = (offset: fc.Arbitrary<number>, share: fc.Arbitrary<number>) =>
  fc.record({ raceway: fc.nat(), leg: fc.nat(), share, offset: fc.tuple(offset, offset, offset) });

type Pick = typeof pick extends (...args: never[]) => fc.Arbitrary<infer P> ? P : never;

function placed(raceways: readonly Raceway[], { raceway: r, leg, share, offset }: Pick): Point3 {
  const { path } = raceways[r % raceways.length]!;
  const k = leg % (path.length - 1);
  const at = (axis: 0 | 1 | 2): number =>
    Math.round((path[k]![axis] + share * (path[k + 1]![axis] - path[k]![axis]) + offset[axis]) * 1000) / 1000;
  return [at(0), at(1), at(2)];
}

const drawingsOf = (paths: fc.Arbitrary<Point3[][]>, picks: fc.Arbitrary<Pick>): fc.Arbitrary<Drawing> =>
  fc
    .record({ paths, entries: fc.tuple(picks, picks), boxes: fc.array(picks, { minLength: 1, maxLength: 6 }) })
    .map(({ paths: drawn, entries, boxes }) => {
      const raceways = named(drawn);
      const put = (one: Pick): Point3 => placed(raceways, one);
      return { raceways, entries: entries.map(put), boxes: boxes.map(put) };
    });

export const squareDrawings: fc.Arbitrary<Drawing> = drawingsOf(
  fc.array(squarePath, { minLength: 3, maxLength: 12 }),
  pick(fc.constantFrom(0, 0, 1, -2), fc.constantFrom(0, 0.5, 1)),
);

/** Streets of a small town: level rows and columns, some over one another, with very many equally short ways. */
const streetPath = fc
  .record({ across: fc.boolean(), at: whole(0, 4), from: whole(0, 4), by: whole(1, 4), turn: whole(-3, 3) })
  .map(({ across, at, from, by, turn }): Point3[] => {
    const path: [number, number][] = [
      [from, at],
      [from + by, at],
    ];
    if (turn !== 0) path.push([from + by, at + turn]);
    return path.map(([x, y]): Point3 => (across ? [6 * x, 6 * y, 11] : [6 * y, 6 * x, 11]));
  });

export const streetDrawings: fc.Arbitrary<Drawing> = drawingsOf(
  fc.array(streetPath, { minLength: 6, maxLength: 14 }),
  pick(fc.constantFrom(0, 0, 2), fc.constantFrom(0, 0.5, 1)),
);

// Thousandths: no coordinate lies so near a limit that rounding could tell.
const thousandths = (min: number, max: number) => whole(min * 1000, max * 1000).map((n) => n / 1000);
const freePoint = fc
  .tuple(thousandths(0, 40), thousandths(0, 40), fc.constantFrom(11, 11, 11.1, 12))
  .map((p): Point3 => p);

/** Raceways at any angle and slope. */
export const freeDrawings: fc.Arbitrary<Drawing> = drawingsOf(
  fc.array(fc.array(freePoint, { minLength: 2, maxLength: 4 }), { minLength: 3, maxLength: 10 }),
  pick(thousandths(-3, 3), thousandths(0, 1)),
);

export const drawings: fc.Arbitrary<Drawing> = fc.oneof(squareDrawings, streetDrawings, freeDrawings);

/** The same drawing with every point moved. */
export const moved = ({ raceways, entries, boxes }: Drawing, move: (p: Point3) => Point3): Drawing => ({
  raceways: raceways.map((one) => ({ ...one, path: one.path.map(move) })),
  entries: entries.map(move),
  boxes: boxes.map(move),
});
