import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { plan } from '../../../calc/plan/plan.ts';
import { INVENTED_LIST } from '../../../calc/prices/invented-list.ts';
import { propose } from '../../../calc/propose/propose.ts';
import type { Keepout, SiteFile } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';

/** Mazes of rectangles, and whether shapely finds panel and box in one part of the plane: `make.py`. */
const { panel, drop, mazes } = JSON.parse(readFileSync(join(import.meta.dirname, 'mazes.json'), 'utf8')) as {
  readonly panel: readonly [number, number];
  readonly drop: readonly [number, number];
  readonly mazes: readonly {
    readonly walls: readonly (readonly [number, number, number, number])[];
    readonly leads: boolean;
  }[];
};

/** Open ground without steel: a panel, a drop, and keep-outs over all of their height or from grade up. */
function ground(walls: (typeof mazes)[number]['walls'], from?: number): SiteFile {
  return {
    format: 'overrow/site',
    version: 1,
    units: 'ft',
    name: 'maze',
    equipment: [
      {
        id: 'P1',
        kind: 'panelboard',
        at: [...panel],
        size: [0.5, 0.5, 6],
        entry: [...panel, 4],
        volts: 208,
        phases: 3,
        busAmps: 225,
        mainAmps: 225,
        spaces: 42,
      },
    ],
    drops: [{ id: 'D1', box: [...drop, 11], cord: 25 }],
    chargers: [{ id: 'EV1', drop: 'D1', stalls: [], from: 'P1', amps: 32, volts: 208, phases: 1 }],
    keepouts: walls.map(
      ([x0, y0, x1, y1], i): Keepout => ({
        id: `K${i}`,
        outline: [
          [x0, y0],
          [x1, y0],
          [x1, y1],
          [x0, y1],
        ],
        blocks: ['raceway'],
        ...(from !== undefined && { from }),
      }),
    ),
    rules: { branchLimit: 2000 },
  };
}

const proposed = (file: SiteFile): SiteFile =>
  propose(file, { what: 'raceways', cordsADrop: 1, prices: INVENTED_LIST, answers: 0 }).file;
const rulesOf = (file: SiteFile): readonly string[] => plan(toSite(file)).findings.map(({ rule }) => rule);

test('a way is found through a maze of keep-outs wherever one leads, and through none', () => {
  expect(mazes.filter(({ leads }) => leads).length).toBeGreaterThan(15);
  expect(mazes.filter(({ leads }) => !leads).length).toBeGreaterThan(3);
  for (const [i, { walls, leads }] of mazes.entries()) {
    const file = proposed(ground(walls));
    expect([i, plan(toSite(file)).runs[0]!.length !== null]).toEqual([i, leads]);
    expect(rulesOf(file)).not.toContain('keepout-crossed');
  }
});

test('what is shut from grade up is reached in the ground, and comes up at the box in a kind that a car may hit', () => {
  const shut = mazes.find(({ leads }) => !leads)!;
  const file = proposed(ground(shut.walls, 0));
  const { runs, findings } = plan(toSite(file));
  expect(runs[0]!.length).not.toBeNull();
  expect(findings.map(({ rule }) => rule)).not.toContain('keepout-crossed');
  expect(new Set(file.raceways!.map(({ method }) => method))).toEqual(new Set(['PVC40', 'PVC80', 'EMT']));
});
