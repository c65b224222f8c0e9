import { describe, expect, test } from 'vitest';
import type { TargetLine, TargetPoint } from '../../../../web/board/snap/aims.ts';
import { SNAP_KINDS, type SnapKind } from '../../../../web/board/snap/kinds.ts';
import type { SnapTo } from '../../../../web/board/snap/snap-to.ts';
import { snapped } from '../../../../web/board/snap/snapped.ts';

const RACEWAY: TargetLine = { from: [0, 10, 11], to: [40, 10, 11], label: 'R1', ref: { list: 'raceways', id: 'R1' } };
const BEAM: TargetLine = { from: [20, 0, 12], to: [20, 30, 12], label: 'B1', ref: { list: 'members', id: 'B1' } };
const END: TargetPoint = { kind: 'ends', at: [40, 10], z: 11, label: 'end of R1', ref: RACEWAY.ref };
const MIDDLE: TargetPoint = { kind: 'middles', at: [20, 10], z: 11, label: 'middle of R1', ref: RACEWAY.ref };
const POST: TargetPoint = {
  kind: 'ends',
  at: [55, 31.3],
  z: null,
  label: 'center of C1',
  ref: { list: 'columns', id: 'C1' },
};

const EVERYTHING: SnapTo = {
  near: 1,
  step: 0.25,
  gridlines: { x: [{ label: '2', at: 30.1 }], y: [] },
  close: { points: [END, MIDDLE], lines: [RACEWAY, BEAM] },
  around: { points: [POST], lines: [] },
  from: [5, 3],
  before: null,
  off: new Set(),
};

/** With only some kinds on. */
const only = (...kinds: SnapKind[]): SnapTo => ({
  ...EVERYTHING,
  off: new Set(SNAP_KINDS.filter((kind) => !kinds.includes(kind))),
});

describe('the hand is drawn', () => {
  test('to an end, and told its elevation and what it belongs to', () => {
    expect(snapped([40.6, 9.7], EVERYTHING)).toEqual({
      at: [40, 10],
      z: 11,
      ref: RACEWAY.ref,
      guides: [{ kind: 'point', at: [40, 10], label: 'end of R1' }],
    });
  });

  test('to a middle', () => {
    expect(snapped([20.4, 10.2], only('middles')).at).toEqual([20, 10]);
  });

  test('to where a raceway and a beam cross, at the elevation of the raceway', () => {
    const found = snapped([20.3, 10.4], only('crossings'));
    expect(found).toMatchObject({ at: [20, 10], z: 11, ref: { id: 'R1' } });
  });

  test('to the foot of a perpendicular from where the line begins', () => {
    expect(snapped([5.3, 9.6], only('perpendiculars')).at).toEqual([5, 10]);
  });

  test('onto a gridline, and along it by the step', () => {
    expect(snapped([30.7, 4.06], only('gridlines', 'grid')).at).toEqual([30.1, 4]);
  });

  test('onto a raceway, with its elevation', () => {
    expect(snapped([12.06, 10.7], only('members', 'grid'))).toMatchObject({ at: [12, 10], z: 11, ref: { id: 'R1' } });
  });

  test('square to where the line begins', () => {
    expect(snapped([17.1, 3.6], only('right angles', 'grid')).at).toEqual([17, 3]);
    expect(snapped([5.6, 22.1], only('right angles', 'grid')).at).toEqual([5, 22]);
  });

  test('square to the way that a slanting line came', () => {
    const slanting: SnapTo = { ...only('right angles'), from: [10, 10], before: [0, 0] };
    const [x, y] = snapped([16.4, 3.9], slanting).at;
    expect(x - 10).toBeCloseTo(10 - y, 9);
  });

  test('into line with what stands farther off', () => {
    const { at, guides } = snapped([54.4, 2.1], only('alignment', 'grid'));
    expect(at).toEqual([55, 2]);
    expect(guides[0]).toMatchObject({ label: 'in line with center of C1' });
  });

  test('to where two lines meet, both shown', () => {
    const { at, guides } = snapped([30.4, 10.5], only('gridlines', 'members'));
    expect(at).toEqual([30.1, 10]);
    expect(guides).toHaveLength(2);
  });

  test('to the grid where nothing else is near', () => {
    expect(snapped([47.13, 18.9], only('grid'))).toEqual({ at: [47.25, 19], z: null, ref: null, guides: [] });
  });
});

test('whatever is switched off draws nothing: with all of it off the hand is where it is', () => {
  for (const at of [
    [40.6, 9.7],
    [20.3, 10.4],
    [30.7, 4.06],
    [54.4, 2.1],
  ] as const)
    expect(snapped(at, only())).toEqual({ at, z: null, ref: null, guides: [] });
});

test('an end wins over a line that runs through it, and a place over the grid', () => {
  expect(snapped([39.3, 10.3], EVERYTHING).guides[0]).toMatchObject({ kind: 'point', label: 'end of R1' });
});

describe('beside gridlines that are turned', () => {
  // atan(3/4) about (10, 0): line 2 runs through (10 + 16, 12), the way (-0.6, 0.8).
  const turned: SnapTo = {
    ...only('gridlines', 'grid'),
    gridlines: {
      x: [{ label: '2', at: 20 }],
      y: [{ label: 'A', at: 0 }],
      rotation: (Math.atan2(3, 4) * 180) / Math.PI,
      origin: [10, 0],
    },
  };
  const close = (x: number, y: number) => [expect.closeTo(x, 9), expect.closeTo(y, 9)];

  test('the hand is drawn onto one, and along it by the step from their origin', () => {
    const { at, guides } = snapped([26 - 0.6 * 7.1 + 0.3, 12 + 0.8 * 7.1 + 0.2], turned);
    expect(at).toEqual(close(26 - 0.6 * 7, 12 + 0.8 * 7));
    expect(guides).toEqual([{ kind: 'line', through: at, way: close(-0.6, 0.8), label: 'on 2' }]);
  });

  test('to where two of them meet', () => {
    expect(snapped([26.4, 12.3], { ...turned, off: new Set() }).at).toEqual(close(26, 12));
  });

  test('in the open by steps along them', () => {
    // 5.1 along and 5.1 across: to 5 and 5 by a quarter of a foot.
    const at = snapped([10 + 0.8 * 5.1 - 0.6 * 5.1, 0.6 * 5.1 + 0.8 * 5.1], { ...turned, near: 0.1 }).at;
    expect(at).toEqual(close(10 + 0.8 * 5 - 0.6 * 5, 0.6 * 5 + 0.8 * 5));
  });

  test('square to where the line begins along them too, and in line with what stands off along them', () => {
    const square = snapped([5 + 0.8 * 10 + 0.3, 3 + 0.6 * 10], { ...turned, off: only('right angles').off });
    expect(square.at).toEqual(close(...onRay([5, 3], square.at)));
    const lined = snapped([55 + 0.8 * 10 + 0.2, 31.3 + 0.6 * 10], { ...turned, off: only('alignment').off });
    expect(lined.at).toEqual(close(...onRay([55, 31.3], lined.at)));
  });
});

/** The foot of a place on the ray from another along 4 to the right and 3 up. */
function onRay([x, y]: readonly [number, number], at: readonly [number, number]): readonly [number, number] {
  const t = (at[0] - x) * 0.8 + (at[1] - y) * 0.6;
  return [x + 0.8 * t, y + 0.6 * t];
}
