import { describe, expect, test } from 'vitest';
import { readTyped, typedPlace } from '../../../../web/board/typed/typed-place.ts';
import { retyped, startTyping } from '../../../../web/board/typed/typing.ts';

const typed = (length: string, angle = '') => retyped(startTyping('length', length), 'angle', angle);

describe('a typed distance and angle', () => {
  test('the distance alone goes the way the hand points', () => {
    expect(typedPlace(typed("12' 6"), [0, 0], [3, 4], 'ft')).toEqual([7.5, 10]);
  });

  test('both give the place whatever the hand points at, exact at the quarters', () => {
    expect(typedPlace(typed('9 * 3', '90'), [2, 1], [50, 50], 'ft')).toEqual([2, 28]);
    expect(typedPlace(typed('10', '-90'), [0, 0], [5, 5], 'ft')).toEqual([0, -10]);
    expect(typedPlace(typed('10', '30°'), [0, 0], [5, 5], 'ft')).toEqual([
      expect.closeTo(8.660254, 6),
      expect.closeTo(5, 9),
    ]);
  });

  test('the angle alone keeps the distance of the hand', () => {
    expect(typedPlace(typed('', '180'), [0, 0], [3, 4], 'ft')).toEqual([-5, 0]);
  });

  test('a bare number is in the units of the site', () => {
    expect(typedPlace(typed('1'), [0, 0], [1, 0], 'm')?.[0]).toBeCloseTo(3.28084, 5);
  });

  test('what is no length, or no distance to go, is told and not taken', () => {
    expect(readTyped(typed('12 6 4'), 'length', 'ft')).toMatchObject({ ok: false });
    expect(readTyped(typed('0'), 'length', 'ft')).toEqual({ ok: false, says: 'length: more than 0' });
    expect(readTyped(startTyping('elevation', '-2'), 'elevation', 'ft')).toEqual({ ok: true, value: -2 });
    expect(readTyped(startTyping('elevation'), 'elevation', 'ft')).toBeNull();
  });
});

describe('typed coordinates', () => {
  const onSite = (x: string, y = '') => retyped(startTyping('x', x), 'y', y);

  test('give the place on the site, before there is another to go from, in tape units, metric and sums', () => {
    expect(typedPlace(onSite("12' 6", '-3'), null, [50, 50], 'ft')).toEqual([12.5, -3]);
    expect(typedPlace(onSite("9' * 3", "2' + 18in"), [1, 1], [50, 50], 'ft')).toEqual([27, 3.5]);
    const [x, y] = typedPlace(onSite('3.048', '3.048 * 2'), null, [0, 0], 'm')!;
    expect([x, y]).toEqual([expect.closeTo(10, 9), expect.closeTo(20, 9)]);
  });

  test('one alone leaves the other to the hand', () => {
    expect(typedPlace(onSite('4'), [1, 1], [50, 7], 'ft')).toEqual([4, 7]);
    expect(typedPlace(onSite('', '4'), [1, 1], [50, 7], 'ft')).toEqual([50, 4]);
  });

  test('hold in place of a distance and angle once they are typed, and the other way round', () => {
    const relative = retyped(startTyping('length', '10'), 'angle', '90');
    const there = retyped(relative, 'x', '3');
    expect(there).toMatchObject({ field: 'x', x: '3', length: '', angle: '' });
    expect(retyped(there, 'angle', '45')).toMatchObject({ field: 'angle', x: '', y: '', angle: '45' });
  });

  test('nothing typed, or a distance from nowhere, is no place', () => {
    expect(typedPlace(startTyping('x'), [1, 1], [5, 5], 'ft')).toBeNull();
    expect(typedPlace(startTyping('length', '10'), null, [5, 5], 'ft')).toBeNull();
    expect(readTyped(startTyping('x', '0'), 'x', 'ft')).toEqual({ ok: true, value: 0 });
    expect(readTyped(startTyping('y', 'left'), 'y', 'ft')).toMatchObject({ ok: false });
  });
});
