import { describe, expect, test } from 'vitest';
import { insideOf, obstacleOf } from '../../../routing/plane/obstacle.ts';
import { proposePedestals } from '../../../routing/propose/drops/propose-pedestals.ts';
import { vehicleUnder } from '../../../routing/reach/field.ts';
import { nowOf } from '../../../routing/reach/kept-reach.ts';
import { stallRectangle } from '../../../routing/site/place/stall-rectangle.ts';
import type { Site, SiteFile } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';

const row = (count: number, more: Partial<SiteFile> = {}): Site =>
  toSite({
    format: 'overrow/site',
    version: 1,
    units: 'ft',
    name: 'row',
    stalls: Array.from({ length: count }, (_, i) => ({
      id: `S${i + 1}`,
      at: [4.5 + 9 * i, 18],
      width: 9,
      depth: 18,
      heading: 270,
    })),
    rules: { vehicle: 'sedan' },
    ...more,
  });
const make = { cord: 25, elevation: 2, restHeight: 2 };
const all = ({ stalls }: Site) => new Set(stalls.map(({ id }) => id));

describe('pedestals', () => {
  test('with one cord each are as many as stalls, beside the cars and never under one', () => {
    const site = row(6);
    const { pedestals, without } = proposePedestals(site, all(site), { ...make, holds: 1 });
    expect([pedestals.length, without]).toEqual([6, []]);
    expect(pedestals.flatMap(({ stalls }) => stalls)).toEqual(['S1', 'S2', 'S3', 'S4', 'S5', 'S6']);
    const { field } = nowOf(site);
    for (const { box } of pedestals) {
      expect(box[0] % 9).toBeCloseTo(0, 9);
      expect(vehicleUnder(field, [box[0], box[1]])).toBeFalsy();
    }
    const places = pedestals.map(({ box }) => box[0]);
    expect(new Set(places).size).toBe(6);
  });

  // Between two cars one stands for both: three for six, four for seven.
  test.each([
    [6, 3],
    [7, 4],
  ])('with two cords each %i stalls take %i', (stalls, least) => {
    const site = row(stalls);
    const { pedestals, without } = proposePedestals(site, all(site), { ...make, holds: 2 });
    expect([pedestals.length, without]).toEqual([least, []]);
    expect(pedestals.flatMap(({ stalls: own }) => own)).toHaveLength(stalls);
  });

  test('serve the stalls that are wanted alone, and stand out of keep-outs and accessible stalls', () => {
    const site = row(4, {
      keepouts: [
        {
          id: 'K1',
          outline: [
            [8, 0],
            [10, 0],
            [10, 18],
            [8, 18],
          ],
          blocks: ['drop'],
        },
      ],
    });
    const { pedestals } = proposePedestals(site, new Set(['S1', 'S2']), { ...make, holds: 1 });
    expect(pedestals.map(({ stalls, box }) => [stalls, box[0]])).toEqual([
      [['S1'], 0],
      [['S2'], 18],
    ]);
    const accessible = row(1, {
      stalls: [{ id: 'S1', at: [4.5, 18], width: 9, depth: 18, heading: 270, use: 'accessible' }],
    });
    const [one] = proposePedestals(accessible, new Set(['S1']), { ...make, holds: 1 }).pedestals;
    const outline = obstacleOf(stallRectangle(accessible.stalls[0]!));
    expect(insideOf(outline, one!.box[0], one!.box[1])).toBe(false);
    expect(Math.min(Math.abs(one!.box[0]), Math.abs(one!.box[0] - 9))).toBeCloseTo(0.5, 9);
  });

  test('a cord that comes round no car leaves a stall without', () => {
    const site = row(2);
    expect(proposePedestals(site, all(site), { ...make, cord: 8, holds: 1 })).toEqual({
      pedestals: [],
      without: ['S1', 'S2'],
    });
  });
});
