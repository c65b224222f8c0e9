import { describe, expect, test } from 'vitest';
import { withCanopyLines } from '../../../../routing/propose/rows/canopy-gridlines.ts';
import type { Gridlines, Point2 } from '../../../../routing/site/site.ts';

describe('gridlines through the columns of a canopy', () => {
  const canopy = (columns: readonly Point2[], rotation: number) => ({
    bays: 1,
    beams: [],
    purlins: [],
    columns: columns.map((at) => ({ at, rotation, height: 12 })),
  });
  const NONE: Gridlines = { x: [], y: [] };

  test('of a slanting one turn with it, from its first column', () => {
    const bays = canopy(
      [
        [10, 20],
        [26, 32],
      ],
      (Math.atan2(3, 4) * 180) / Math.PI,
    );
    const lines = withCanopyLines(NONE, bays)!;
    expect(lines.rotation).toBeCloseTo(36.8699, 4);
    expect(lines.origin).toEqual([10, 20]);
    expect(lines.x).toEqual([
      { label: '1', at: 0 },
      { label: '2', at: expect.closeTo(20, 5) },
    ]);
    expect(lines.y).toEqual([{ label: 'A', at: 0 }]);
  });

  test('of one along an axis are as they ever were', () => {
    const bays = canopy(
      [
        [5, 3],
        [5, 30],
      ],
      90,
    );
    expect(withCanopyLines(NONE, bays)).toEqual({
      x: [{ label: 'A', at: 5 }],
      y: [
        { label: '1', at: 3 },
        { label: '2', at: 30 },
      ],
    });
  });

  test('go on from turned ones that it is square to, and leave others alone', () => {
    const standing: Gridlines = { x: [{ label: '1', at: 0 }], y: [], rotation: 30, origin: [0, 0] };
    const [dx, dy] = [Math.cos(Math.PI / 6) * 27, Math.sin(Math.PI / 6) * 27];
    expect(
      withCanopyLines(
        standing,
        canopy(
          [
            [0, 0],
            [dx, dy],
          ],
          30,
        ),
      )!.x,
    ).toEqual([
      { label: '1', at: 0 },
      { label: '2', at: 27 },
    ]);
    expect(
      withCanopyLines(
        standing,
        canopy(
          [
            [0, 0],
            [27, 0],
          ],
          0,
        ),
      ),
    ).toBeNull();
  });
});
