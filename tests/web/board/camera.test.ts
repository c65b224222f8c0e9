import fc from 'fast-check';
import { expect, test } from 'vitest';
import { boxInView, type Camera, fitted, placeOnSite, pushed, toScreen, zoomed } from '../../../web/board/camera.ts';

const view = { width: 1000, height: 600 };
const far = fc.double({ min: -5000, max: 5000, noNaN: true });
const camera: fc.Arbitrary<Camera> = fc.record({
  x: far,
  y: far,
  scale: fc.double({ min: 0.05, max: 100, noNaN: true }),
});
const pixel = fc.record({
  px: fc.double({ min: 0, max: 1000, noNaN: true }),
  py: fc.double({ min: 0, max: 600, noNaN: true }),
});

test('up in the plan is up on the screen', () => {
  const at = toScreen({ x: 10, y: 20, scale: 5 }, view, [12, 24]);
  expect(at).toEqual({ px: 510, py: 280 });
});

test('a pixel, taken to the plan and back, is the same pixel', () => {
  fc.assert(
    fc.property(camera, pixel, (c, p) => {
      const back = toScreen(c, view, placeOnSite(c, view, p));
      expect(back.px).toBeCloseTo(p.px, 6);
      expect(back.py).toBeCloseTo(p.py, 6);
    }),
  );
});

test('zooming keeps what is under the pointer under the pointer', () => {
  fc.assert(
    fc.property(camera, pixel, fc.double({ min: 0.2, max: 5, noNaN: true }), (c, p, factor) => {
      const before = placeOnSite(c, view, p);
      const after = placeOnSite(zoomed(c, view, p, factor), view, p);
      expect(after[0]).toBeCloseTo(before[0], 5);
      expect(after[1]).toBeCloseTo(before[1], 5);
    }),
  );
});

test('pushing the drawing moves what is under the hand with the hand', () => {
  fc.assert(
    fc.property(camera, pixel, (c, p) => {
      const held = placeOnSite(c, view, p);
      const now = toScreen(pushed(c, 30, -12), view, held);
      expect(now.px - p.px).toBeCloseTo(30, 5);
      expect(now.py - p.py).toBeCloseTo(-12, 5);
    }),
  );
});

test('a fitted box lies in view with its margin free, and touches it on one axis', () => {
  const box = { minX: 0, minY: -10, maxX: 300, maxY: 40 };
  const c = fitted(box, view, 50);
  const a = toScreen(c, view, [box.minX, box.maxY]);
  const b = toScreen(c, view, [box.maxX, box.minY]);
  expect(a.px).toBeCloseTo(50, 9);
  expect(b.px).toBeCloseTo(950, 9);
  expect(a.py).toBeGreaterThan(50);
  expect(b.py).toBeLessThan(550);
});

test('a box of nothing is looked at from the origin', () => {
  const nothing = { minX: Infinity, minY: Infinity, maxX: -Infinity, maxY: -Infinity };
  expect(fitted(nothing, view, 50)).toMatchObject({ x: 0, y: 0 });
});

test('what is in view is what its corners look at', () => {
  const c = { x: 3, y: -2, scale: 4 };
  const box = boxInView(c, view);
  expect(placeOnSite(c, view, { px: 0, py: 0 })).toEqual([box.minX, box.maxY]);
  expect(placeOnSite(c, view, { px: 1000, py: 600 })).toEqual([box.maxX, box.minY]);
});

test('a site with nothing in it shows ground for a lot of 24 stalls, 108 ft and its margins, on a screen and on a phone', () => {
  for (const width of [390, 900, 2100]) {
    const nothing = { minX: Infinity, minY: Infinity, maxX: -Infinity, maxY: -Infinity };
    const { minX, maxX } = boxInView(fitted(nothing, { width, height: 600 }, 40), { width, height: 600 });
    expect(maxX - minX).toBeGreaterThanOrEqual(150);
    expect(maxX - minX).toBeLessThan(300);
  }
});
