import fc from 'fast-check';
import { expect, test } from 'vitest';
import { changedAreas } from '../../../calc/sheets/drawing/changed-areas.ts';
import { boxesMeet, boxHolds } from '../../../routing/plane/box.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { SMALL } from '../../web/document/small-site.ts';

const spot = fc.tuple(fc.integer({ min: 0, max: 60 }), fc.integer({ min: 0, max: 60 }));

test('areas of a revision hold every changed place with its margin, and no two of them meet', () => {
  fc.assert(
    fc.property(
      fc.array(spot, { minLength: 1, maxLength: 25 }),
      fc.double({ min: 0.1, max: 6, noNaN: true }),
      (spots, margin) => {
        const site = toSite({ ...SMALL, columns: spots.map((at, i) => ({ id: `C${i}`, at, size: [1, 1] })) });
        const areas = changedAreas(
          site,
          site,
          site.columns.map(({ id }) => ({ list: 'columns', id, change: 'moved' })),
          margin,
        );
        const grown = 0.5 + margin - 1e-9;
        for (const [x, y] of spots)
          expect(
            areas.filter((area) =>
              boxHolds(area, { minX: x - grown, minY: y - grown, maxX: x + grown, maxY: y + grown }),
            ),
          ).toHaveLength(1);
        for (const [i, one] of areas.entries())
          for (const other of areas.slice(i + 1)) expect(boxesMeet(one, other)).toBe(false);
      },
    ),
  );
});
