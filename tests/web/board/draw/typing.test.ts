import { describe, expect, test } from 'vitest';
import { readTyped, startTyping, typedPlace } from '../../../../web/board/draw/typing.ts';

const typed = (length: string, angle = '') => ({ ...startTyping('length', length), angle });

describe('a typed distance and angle', () => {
  test('the distance alone goes the way the hand points', () => {
    expect(typedPlace(typed("12' 6"), [0, 0], [3, 4], 'ft')).toEqual([7.5, 10]);
  });

  test('both give the place whatever the hand points at, exact at the quarters', () => {
    expect(typedPlace(typed('9 * 3', '90'), [2, 1], [50, 50], 'ft')).toEqual([2, 28]);
    expect(typedPlace(typed('10', '-90'), [0, 0], [5, 5], 'ft')).toEqual([0, -10]);
    const [x, y] = typedPlace(typed('10', '30°'), [0, 0], [5, 5], 'ft');
    expect([x, y]).toEqual([expect.closeTo(8.660254, 6), expect.closeTo(5, 9)]);
  });

  test('the angle alone keeps the distance of the hand', () => {
    expect(typedPlace(typed('', '180'), [0, 0], [3, 4], 'ft')).toEqual([-5, 0]);
  });

  test('a bare number is in the units of the site', () => {
    expect(typedPlace(typed('1'), [0, 0], [1, 0], 'm')[0]).toBeCloseTo(3.28084, 5);
  });

  test('what is no length, or no distance to go, is told and not taken', () => {
    expect(readTyped(typed('12 6 4'), 'length', 'ft')).toMatchObject({ ok: false });
    expect(readTyped(typed('0'), 'length', 'ft')).toEqual({ ok: false, says: 'expected more than 0' });
    expect(readTyped(startTyping('elevation', '-2'), 'elevation', 'ft')).toEqual({ ok: true, value: -2 });
    expect(readTyped(startTyping('elevation'), 'elevation', 'ft')).toBeNull();
  });
});
