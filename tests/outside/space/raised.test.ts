import { expect, test } from 'vitest';
import { seenBlock } from '../../../calc/space/oblique.ts';
import { twiceAreaOf } from '../../../routing/plane/area.ts';
import type { Point2 } from '../../../routing/site/site.ts';
import stored from './raised.json' with { type: 'json' };

test.each(stored.cases.map((one, i) => ({ ...one, i })))(
  'a raised block covers and shows what shapely and numpy say, case $i',
  ({ outline, high, area, bounds, seen, drawn }) => {
    const block = { list: 'stalls', id: 'S', outline: outline as unknown as Point2[], low: 0, high } as const;
    const shown = seenBlock(block);
    expect(twiceAreaOf(shown.silhouette) / 2).toBeCloseTo(area, 6);
    [shown.minX, shown.minY, shown.maxX, shown.maxY].forEach((value, k) => {
      expect(value).toBeCloseTo(bounds[k]!, 9);
    });
    expect(shown.edges).toHaveLength(seen);
    const length = shown.edges.reduce((sum, [a, b]) => sum + Math.hypot(b[0] - a[0], b[1] - a[1]), 0);
    expect(length).toBeCloseTo(drawn, 6);
  },
);
