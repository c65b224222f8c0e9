import { describe, expect, test } from 'vitest';
import { runsOf } from '../../../routing/network/runs.ts';
import type { Point3, Raceway, Site } from '../../../routing/site/site.ts';
import { oneRun, raceway } from './sites.ts';

const first = (site: Site) => runsOf(site).runs[0]!;

describe('bends', () => {
  const bendsOn = (path: Point3[], entry = path[0]!, to = path.at(-1)!) => {
    const { bends, bendDegrees } = first(oneRun([raceway('R1', path)], entry, to));
    return { bends, bendDegrees };
  };
  test('are changes of direction over 1 degree, in space', () => {
    expect(
      bendsOn([
        [0, 0, 11],
        [10, 0, 11],
        [20, 10, 11],
      ]),
    ).toEqual({ bends: 1, bendDegrees: expect.closeTo(45, 9) });
    expect(
      bendsOn([
        [0, 0, 11],
        [10, 0, 11],
        [10, 0, 21],
      ]),
    ).toEqual({ bends: 1, bendDegrees: 90 });
    const slight = Math.tan((0.9 * Math.PI) / 180) * 100;
    expect(
      bendsOn([
        [0, 0, 11],
        [100, 0, 11],
        [200, slight, 11],
      ]),
    ).toEqual({ bends: 0, bendDegrees: 0 });
    const more = Math.tan((1.1 * Math.PI) / 180) * 100;
    expect(
      bendsOn([
        [0, 0, 11],
        [100, 0, 11],
        [200, more, 11],
      ]),
    ).toEqual({ bends: 1, bendDegrees: expect.closeTo(1.1, 9) });
  });
  test('a raceway that doubles back is one of 180 degrees', () => {
    // Tolerance 0, so that the way back is not joined to the way out.
    const out: Raceway = raceway('R1', [
      [0, 0, 11],
      [20, 0, 11],
      [20, 3, 11],
      [15, 3, 11],
    ]);
    expect(first(oneRun([out], [0, 0, 11], [15, 3, 11]))).toMatchObject({ bends: 2, bendDegrees: 180 });
  });
  test('those at both taps count', () => {
    expect(
      bendsOn(
        [
          [0, 0, 11],
          [50, 0, 11],
        ],
        [10, 0, 8],
        [40, 2, 11],
      ),
    ).toEqual({ bends: 2, bendDegrees: 180 });
    expect(
      bendsOn(
        [
          [0, 0, 11],
          [50, 0, 11],
        ],
        [-3, 0, 11],
        [53, 0, 11],
      ),
    ).toEqual({ bends: 0, bendDegrees: 0 });
  });
});
