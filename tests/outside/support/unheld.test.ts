import { expect, test } from 'vitest';
import { steelOf } from '../../../routing/network/support/steel-near.ts';
import { unheldStretches } from '../../../routing/network/support/unheld.ts';
import type { Point3 } from '../../../routing/site/site.ts';
import stored from './unheld.json' with { type: 'json' };

test.each(stored.cases.map((one, i) => ({ ...one, i })))(
  'stretches that no member holds are those that sampling with shapely finds, case $i',
  ({ members, path, reach, stretches }) => {
    const steel = steelOf(
      members.map(([from, to], i) => ({ id: `M${i}`, from: from as unknown as Point3, to: to as unknown as Point3 })),
    );
    const found = unheldStretches(path as unknown as Point3[], steel, reach)
      .map(({ length }) => length)
      .filter((length) => length > 0.2);
    expect(found).toHaveLength(stretches.length);
    found.forEach((length, i) => {
      expect(Math.abs(length - stretches[i]!)).toBeLessThan(0.05);
    });
  },
);
