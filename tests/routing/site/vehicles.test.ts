import { describe, expect, it, test } from 'vitest';
import { BUILT_IN_VEHICLES } from '../../../routing/site/vehicles.ts';

const inches = (feet: number) => Math.round(feet * 12 * 1e6) / 1e6;

describe('the built-in vehicle classes', () => {
  // Open data set of US-market plug-in models, December 2025, unweighted: 5th percentiles, medians by body, largest.
  test.each([
    ['compact', 164, 70, 56],
    ['sedan', 195, 76, 57],
    ['suv', 187, 76, 65],
    ['pickup', 230, 80, 76],
    ['van', 202, 78, 74],
  ])('%s is %d x %d in and %d in tall', (name, length, width, height) => {
    const vehicle = BUILT_IN_VEHICLES.get(name);
    expect(vehicle && [vehicle.length, vehicle.width, vehicle.height].map(inches)).toEqual([length, width, height]);
  });

  it('have an inlet at every corner that occurs, inside the usual ranges', () => {
    // Usual ranges of inlets along the car and in height above ground, inches: common practice, no source.
    const ranges = new Map([
      ['rear-left', { side: 'left', along: [0.76, 0.95], height: [28, 44] }],
      ['front-left', { side: 'left', along: [0.1, 0.28], height: [28, 42] }],
      ['rear-right', { side: 'right', along: [0.76, 0.95], height: [28, 44] }],
      ['front', { side: 'front', along: [0, 0.03], height: [26, 34] }],
      ['front-right', { side: 'right', along: [0.1, 0.28], height: [28, 42] }],
    ]);
    for (const vehicle of BUILT_IN_VEHICLES.values()) {
      expect(vehicle.inlets.map((inlet) => inlet.name)).toEqual([...ranges.keys()]);
      for (const { name, side, along, height } of vehicle.inlets) {
        const range = ranges.get(name);
        expect(range?.side).toBe(side);
        expect(along).toBeGreaterThanOrEqual(range?.along[0] ?? Number.NaN);
        expect(along).toBeLessThanOrEqual(range?.along[1] ?? Number.NaN);
        expect(inches(height)).toBeGreaterThanOrEqual(range?.height[0] ?? Number.NaN);
        expect(inches(height)).toBeLessThanOrEqual(range?.height[1] ?? Number.NaN);
      }
    }
  });

  it('weigh the corners by the middles of the usual shares, which add up to 1', () => {
    // Rear-left 45-55, front-left 20-25, rear-right 15-20, front centre 3-6, front-right 3-5: common practice, no source.
    const middles = [50, 22.5, 17.5, 4.5, 4];
    const total = middles.reduce((sum, middle) => sum + middle);
    for (const { inlets } of BUILT_IN_VEHICLES.values()) {
      inlets.forEach((inlet, i) => {
        expect(inlet.share).toBeCloseTo((middles[i] ?? Number.NaN) / total, 12);
      });
      expect(inlets.reduce((sum, inlet) => sum + inlet.share, 0)).toBeCloseTo(1, 12);
    }
  });
});
