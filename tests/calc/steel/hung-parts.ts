import fc from 'fast-check';
import type { Point3 } from '../../../routing/site/site.ts';

export const member = fc
  .tuple(
    fc.integer({ min: -10, max: 50 }),
    fc.integer({ min: -10, max: 50 }),
    fc.integer({ min: 4, max: 60 }),
    fc.boolean(),
  )
  .map(([x, y, long, across]): readonly [Point3, Point3] => [
    [x, y, 12.5],
    across ? [x + long, y + (long % 5), 12.5] : [x, y + long, 14],
  ]);
