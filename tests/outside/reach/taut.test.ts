import { describe, expect, test } from 'vitest';
import { neededLength } from '../../../routing/reach/cords/needed-length.ts';
import type { Point2 } from '../../../routing/site/site.ts';
import { tautPath } from '../../routing/reach/taut-path.ts';
import visibility from './shapely-networkx.json';
import tautString from './taut-string.json';

const points = (outline: readonly (readonly number[])[]): Point2[] => outline.map(([x, y]): Point2 => [x!, y!]);

describe('instances of the shortest path round boxes, each proved twice', () => {
  test.each(tautString.instances)('$id', ({ boxes, start, goal, length, straight }) => {
    const around = boxes.map(([x0, y0, x1, y1]): Point2[] => [
      [x0!, y0!],
      [x1!, y0!],
      [x1!, y1!],
      [x0!, y1!],
    ]);
    const answer = neededLength({ retractor: [start[0]!, start[1]!, 7], inlet: [goal[0]!, goal[1]!, 7], around });
    // Printed to nine decimals.
    expect(Math.abs(answer.planLength! - length)).toBeLessThan(1e-9 * length);
    expect(answer.needed).toBe(answer.planLength);
    const open = neededLength({ retractor: [start[0]!, start[1]!, 7], inlet: [goal[0]!, goal[1]!, 7], around: [] });
    expect(open.planLength).toBeCloseTo(straight, 8);
  });
});

// 40 scatters of rectangles, 40 turned rows of vehicles with the goal on an outline, 40 of shapes that are not convex.
describe(`visibility graphs by ${visibility.source}`, () => {
  test.each(['scatter', 'lot', 'shapes'])('%s: the same lengths, and no way where there is none', (kind) => {
    const cases = visibility.cases.filter((one) => one.kind === kind);
    expect(cases).toHaveLength(40);
    for (const { start, goal, polygons, length } of cases) {
      const path = tautPath([start[0]!, start[1]!], [goal[0]!, goal[1]!], polygons.map(points));
      if (length === null) expect(path).toBeNull();
      else expect(Math.abs(path!.length - length)).toBeLessThan(1e-9 * length);
    }
  });
});
