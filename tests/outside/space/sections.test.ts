import { expect, test } from 'vitest';
import { plan } from '../../../calc/plan/plan.ts';
import { sectionOf } from '../../../calc/space/section/section.ts';
import type { Point2, Point3, SiteFile } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import stored from './sections.json' with { type: 'json' };

test.each(stored.cases.map((one, i) => ({ ...one, i })))(
  'a cut goes through blocks and paths where shapely says, case $i',
  ({ cut, length, blocks, paths }) => {
    const file: SiteFile = {
      format: 'overrow/site',
      version: 1,
      units: 'ft',
      name: 'Cut',
      equipment: blocks.map(({ at, size, rotation }, k) => ({
        id: `B${k}`,
        kind: 'disconnect',
        at: at as unknown as Point2,
        size: size as unknown as Point3,
        rotation,
        entry: [at[0]!, at[1]!, 4],
      })),
      raceways: paths.map(({ path }, k) => ({
        id: `R${k}`,
        path: path as unknown as Point3[],
        method: 'EMT',
        place: 'overhead',
      })),
    };
    const site = toSite(file);
    const [from, to] = cut as unknown as [Point2, Point2];
    const section = sectionOf(site, plan(site), { from, to, look: 0 })!;
    expect(section.length).toBeCloseTo(length, 9);
    for (const [k, { spans, size }] of blocks.entries()) {
      const found = section.shapes.flatMap((shape) =>
        shape.kind === 'outline' && shape.id === `B${k}` && shape.isCut ? [shape.points] : [],
      );
      expect(found).toHaveLength(spans.length);
      spans.forEach(([start, end], n) => {
        const [low, , high] = found[n]!;
        expect(low![0]).toBeCloseTo(start!, 6);
        expect(high![0]).toBeCloseTo(end!, 6);
        expect(high![1]).toBeCloseTo(size[2]!, 9);
      });
    }
    for (const [k, { met }] of paths.entries()) {
      const found = section.shapes
        .flatMap((shape) => (shape.kind === 'round' && shape.id === `R${k}` ? [shape] : []))
        .sort((a, b) => a.at[0] - b.at[0]);
      expect(found.map(({ elevation }) => elevation.toFixed(6))).toEqual(met.map(({ z }) => z.toFixed(6)));
      // Side by side with others that cross there, it stands no farther off than these are wide.
      found.forEach(({ at }, n) => {
        expect(Math.abs(at[0] - met[n]!.across)).toBeLessThan(0.5);
      });
    }
  },
);
