import { expect, test } from 'vitest';
import { penWith } from '../../../../../calc/sheets/pdf/kit/pen.ts';
import { drawNorthArrow } from '../../../../../calc/sheets/pdf/kit/view/north-arrow.ts';
import { plainLettering } from './plain-lettering.ts';

/** Where the letter N stands from the middle of the arrow. */
function letterAt(bearing: number): readonly [number, number] {
  const pen = penWith(plainLettering());
  drawNorthArrow(pen, [100, 100], { georef: { lon: 0, lat: 0, bearing } });
  const [, x, y] = /([-\d.]+) ([-\d.]+) T[dm]/.exec(pen.content().split('BT')[1]!) ?? [];
  return [Number(x) - 100, Number(y) - 100];
}

// The site file: `bearing` is the compass bearing of +y, which is up on the sheet.
test('with +y to the north the arrow points up', () => {
  const [x, y] = letterAt(0);
  expect(Math.abs(x)).toBeLessThan(4);
  expect(y).toBeGreaterThan(10);
});
test('with +y to the east north is to the left', () => {
  const [x, y] = letterAt(90);
  expect(x).toBeLessThan(-10);
  expect(Math.abs(y)).toBeLessThan(4);
});
test('with +y to the west north is to the right', () => {
  const [x] = letterAt(270);
  expect(x).toBeGreaterThan(10);
});
test('without a bearing the sheet says that north is not given', () => {
  const pen = penWith(plainLettering());
  drawNorthArrow(pen, [100, 100], {});
  expect(pen.content()).toContain(plainLettering().encoded('North not'));
});
