import { expect, test } from 'vitest';
import { runsOf } from '../../../routing/network/runs.ts';
import type { Point3, Raceway } from '../../../routing/site/site.ts';
import { box, charger, panel, raceway, siteOf } from '../../routing/network/sites.ts';
import stored from './bend-routes.json' with { type: 'json' };

type Cell = readonly [number, number];

/** A raceway along every unbroken row and column of two or more free cells. */
function racewaysOf(rows: readonly string[]): Raceway[] {
  const width = rows[0]!.length;
  const at = ([x, y]: Cell): Point3 => [x, y, 11];
  const along = (name: string, cells: readonly Cell[]): Raceway[] => {
    const found: Raceway[] = [];
    let free: Cell[] = [];
    const close = (): void => {
      if (free.length > 1) found.push(raceway(`${name}-${found.length}`, [at(free[0]!), at(free.at(-1)!)]));
      free = [];
    };
    for (const [x, y] of cells) {
      if (rows[y]![x] === '.') free.push([x, y]);
      else close();
    }
    close();
    return found;
  };
  return [
    ...rows.flatMap((_, y) =>
      along(
        `row${y}`,
        Array.from({ length: width }, (_, x): Cell => [x, y]),
      ),
    ),
    ...Array.from({ length: width }, (_, x) =>
      along(
        `column${x}`,
        rows.map((_, y): Cell => [x, y]),
      ),
    ).flat(),
  ];
}

test.each(stored.grids)('$id: the run has the least length, and of these the least bends', (grid) => {
  const site = siteOf({
    raceways: racewaysOf(grid.rows),
    equipment: [panel('P1', [grid.start[0]!, grid.start[1]!, 11])],
    drops: [box('D1', [grid.goal[0]!, grid.goal[1]!, 11])],
    chargers: [charger('C1', 'D1', 'P1')],
    // Only what touches the entry is tapped, and only touching raceways join.
    rules: { tapLimit: 0.1, joinTolerance: 0.01 },
  });
  const run = runsOf(site).runs[0]!;
  expect(run.length).toBe(grid.length);
  expect(run.bends).toBe(grid.bends);
  expect(run.bendDegrees).toBeCloseTo(90 * grid.bends, 9);
});
