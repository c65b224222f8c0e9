import { describe, expect, test } from 'vitest';
import { stallRectangle } from '../../../routing/site/place/stall-rectangle.ts';
import { directionsOf, inletAt, parkedRectangle, vehicleOf } from '../../../routing/standing/parked.ts';
import { CAR, inlet, siteOf, stall } from '../reach/sites.ts';

const north = stall('S1', [0, 0]);

describe('a parked vehicle', () => {
  test('stands centred in its stall with its leading bumper 2 ft from the head', () => {
    expect(parkedRectangle(north, CAR, 2)).toEqual([
      [3, 1],
      [3, 16],
      [-3, 16],
      [-3, 1],
    ]);
  });

  test('sticks out past the entry where it is longer than the stall leaves room for', () => {
    const [tail] = parkedRectangle(north, { ...CAR, length: 19 }, 2);
    expect(tail).toEqual([3, -3]);
  });

  test('turns with its stall', () => {
    const west = parkedRectangle(stall('S1', [10, 5], { heading: 180 }), CAR, 2);
    expect(west).toEqual([
      [9, 8],
      [-6, 8],
      [-6, 2],
      [9, 2],
    ]);
  });
});

// Worked by hand on a car of 15 x 6 ft whose leading bumper is at y = 16 and whose tail is at y = 1, facing +y nose-in.
describe('an inlet', () => {
  const at = (side: 'left' | 'right' | 'front' | 'rear', along: number, parking: 'nose-in' | 'back-in') =>
    inletAt(north, CAR, 2, parking, inlet('i', side, along));

  test('nose-in is as far from the head as it is from the front bumper, its left to the left', () => {
    expect(at('left', 0.1, 'nose-in')).toEqual([-3, 14.5, 2.5]);
    expect(at('right', 0.9, 'nose-in')).toEqual([3, 2.5, 2.5]);
  });

  test('back-in is the other way about, and so are left and right', () => {
    expect(at('left', 0.1, 'back-in')).toEqual([3, 2.5, 2.5]);
    expect(at('right', 0.9, 'back-in')).toEqual([-3, 14.5, 2.5]);
  });

  test('in a bumper is at its middle, whatever its `along` says', () => {
    expect(at('front', 0.4, 'nose-in')).toEqual([0, 16, 2.5]);
    expect(at('rear', 0.4, 'nose-in')).toEqual([0, 1, 2.5]);
    expect(at('front', 0.4, 'back-in')).toEqual([0, 1, 2.5]);
    expect(at('rear', 0.4, 'back-in')).toEqual([0, 16, 2.5]);
  });
});

test('a stall allows the directions it names, both where it names none, nose-in first', () => {
  expect(directionsOf(north)).toEqual(['nose-in', 'back-in']);
  expect(directionsOf({ ...north, parking: 'either' })).toEqual(['nose-in', 'back-in']);
  expect(directionsOf({ ...north, parking: 'back-in' })).toEqual(['back-in']);
});

test('a stall that names no class has the class of the rules, and an unknown class is a mistake of the program', () => {
  const site = siteOf({ vehicles: { car: CAR }, rules: { vehicle: 'car' } });
  const { vehicle: _, ...plain } = north;
  expect(vehicleOf(plain, site)).toBe(site.vehicles.get('car'));
  expect(() => vehicleOf({ ...north, vehicle: 'sleigh' }, site)).toThrow(RangeError);
});

test('the painted stall runs its depth from the entry edge', () => {
  expect(stallRectangle(north)).toEqual([
    [4.5, 0],
    [4.5, 18],
    [-4.5, 18],
    [-4.5, 0],
  ]);
});
