import { steadyNumbers } from '../../../../routing/propose/shared/steady-numbers.ts';
import type { Boundary, Keepout, Raceway, SiteFile, Stall } from '../../../../routing/site/site.ts';
import { doubleRows, facingRows } from '../hand/lots.ts';

/**
 * A seeded lot of 4 to 12 stalls: a double row under a canopy, two of them, or two single rows over an aisle, some stalls
 * slanted or missing, the source near or far, with a boundary and its setback beside it, a keep-out that raceways go round,
 * a raceway that stands along the row, and few feet or bends from one pull point to the next. Feet, to the half.
 */
export function randomLot(seed: number): SiteFile {
  const random = steadyNumbers(seed);
  const whole = (from: number, to: number): number => from + Math.floor((to - from + 1) * random());
  const is = (share: number): boolean => random() < share;
  const kind = whole(0, 3);
  const away = whole(10, 70);
  const ground: SiteFile =
    kind === 0
      ? facingRows({ along: whole(2, 6), volts: 208, away })
      : doubleRows({ along: kind === 1 ? whole(2, 3) : whole(3, 6), canopies: kind === 1 ? 2 : 1, volts: 208, away });
  const gone = new Set(Array.from({ length: whole(0, 2) }, () => whole(0, ground.stalls!.length - 1)));
  const slant = kind === 0 && is(0.5);
  const side = is(0.5) ? 1 : -1;
  const [edge, setback] = [-whole(10, 16), whole(2, 5)];
  const boundary: Boundary = {
    id: 'BL1',
    path: [
      [edge, -200],
      [edge, 200],
    ],
    setback,
  };
  const [x, y] = [-whole(4, 8), side * whole(3, 8)];
  const keepout: Keepout = {
    id: 'KO1',
    outline: [
      [x, y],
      [x + 3, y],
      [x + 3, y + 4],
      [x, y + 4],
    ],
    blocks: ['raceway', 'equipment'],
  };
  const trunk: Raceway = {
    id: 'T1',
    path: [
      [whole(-2, 8), side * 2, 11.5],
      [whole(14, 26), side * 2, 11.5],
    ],
    method: 'EMT',
    place: 'overhead',
  };
  return {
    ...ground,
    name: `lot ${seed}`,
    stalls: ground.stalls!.filter((_, i) => !gone.has(i)).map((stall) => (slant ? slanted(stall) : stall)),
    ...(is(0.5) && { boundaries: [boundary] }),
    ...(is(0.4) && { keepouts: [keepout] }),
    ...(kind > 0 && is(0.4) && { raceways: [trunk] }),
    rules: {
      ...ground.rules,
      ...(is(0.6) && { pullLimit: whole(25, 90) }),
      ...(is(0.3) && { bendLimit: 180 }),
      ...(is(0.3) && { tapLimit: whole(3, 5) }),
    },
  };
}

/** At 60 degrees to the aisle, where a stall takes more of the row. */
const slanted = (stall: Stall): Stall => ({
  ...stall,
  at: [stall.at[0] * 1.25, stall.at[1]],
  heading: stall.heading + 30,
});
