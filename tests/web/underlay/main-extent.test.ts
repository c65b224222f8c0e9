import fc from 'fast-check';
import { expect, it } from 'vitest';
import { mainExtent } from '../../../web/underlay/reading/main-extent.ts';

type Rectangle = readonly [number, number, number, number];
const lot = (x: number, y: number, count = 20): Rectangle[] =>
  Array.from({ length: count }, (_, i): Rectangle => [x + 9 * i, y, x + 9 * i + 9, y + 18]);
const of = (...boxes: readonly Rectangle[]) => mainExtent(new Float64Array(boxes.flat()));

it('leaves a line at the origin of a grid aside, and says how far it is', () => {
  const { main, strays, farthest } = of(...lot(6_000_000, 2_000_000), [0, 0, 10, 0]);
  expect(main).toEqual({ minX: 6_000_000, minY: 2_000_000, maxX: 6_000_180, maxY: 2_000_018 });
  expect(strays).toBe(1);
  expect(farthest).toBeCloseTo(Math.hypot(6_000_000, 2_000_000), -1);
});
it('also one that reaches from the site to it', () => {
  expect(of(...lot(6_000_000, 2_000_000), [0, 0, 6_000_050, 2_000_010]).strays).toBe(1);
});
it('keeps what belongs to it: a sheet round a detail, a road that runs out of it, two drawings side by side', () => {
  for (const all of [
    [...lot(0, 0, 200), [-600, -400, 2500, 900] as Rectangle],
    [...lot(0, 0), [0, 30, 900, 40] as Rectangle, [900, 30, 4000, 40] as Rectangle],
    [...lot(0, 0), ...lot(30_000, 0)],
    [[0, 0, 0, 0] as Rectangle],
    [[5, 5, 5, 5] as Rectangle, [5, 5, 5, 5] as Rectangle, [5, 5, 5, 5] as Rectangle, [5, 5, 5, 5] as Rectangle],
  ])
    expect(of(...all).strays).toBe(0);
});
it('of any things leaves at most two in five aside, and holds the others', () => {
  const side = fc.double({ min: -1e9, max: 1e9, noNaN: true });
  const rectangle = fc
    .tuple(side, side, side, side)
    .map(([a, b, c, d]): Rectangle => [Math.min(a, c), Math.min(b, d), Math.max(a, c), Math.max(b, d)]);
  fc.assert(
    fc.property(fc.array(rectangle, { minLength: 4, maxLength: 30 }), (all) => {
      const { main, strays } = of(...all);
      const held = all.filter(
        (each) => each[0] >= main.minX && each[1] >= main.minY && each[2] <= main.maxX && each[3] <= main.maxY,
      );
      expect(held.length).toBeGreaterThanOrEqual(all.length - strays);
      expect(strays).toBeLessThanOrEqual(0.4 * all.length + 4);
    }),
  );
});
