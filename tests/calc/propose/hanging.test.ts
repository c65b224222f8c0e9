import { expect, test } from 'vitest';
import { plan } from '../../../calc/plan/plan.ts';
import { INVENTED_LIST } from '../../../calc/prices/invented-list.ts';
import { propose } from '../../../calc/propose/propose.ts';
import type { Raceway, SiteFile } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';

const CANOPY: SiteFile['members'] = [
  ...[0, 27, 54, 81, 108].map((x, i) => ({ id: `B${i + 1}`, from: [x, -18, 13] as const, to: [x, 18, 13] as const })),
  ...[-15, -9, -3, 3, 9, 15].map((y) => ({ id: `PU${y}`, from: [0, y, 13.5] as const, to: [108, y, 13.5] as const })),
];

/** Twenty-four stalls under a canopy, and their panel beyond the drive aisle, 24 ft wide. */
const lot = (raceways: readonly Raceway[], members = CANOPY): SiteFile => ({
  format: 'overrow/site',
  version: 1,
  units: 'ft',
  name: 'over the aisle',
  stalls: [1, -1].flatMap((side) =>
    Array.from({ length: 12 }, (_, i) => ({
      id: `S${side > 0 ? 'N' : 'S'}${i + 1}`,
      at: [i * 9 + 4.5, side * 18] as const,
      width: 9,
      depth: 18,
      heading: side > 0 ? 270 : 90,
    })),
  ),
  columns: [0, 27, 54, 81, 108].map((x, i) => ({ id: `C${i + 1}`, at: [x, 0], size: [1, 1], height: 13 })),
  members,
  aisles: [
    {
      id: 'A1',
      outline: [
        [-10, 18],
        [120, 18],
        [120, 42],
        [-10, 42],
      ],
    },
  ],
  equipment: [
    {
      id: 'P1',
      kind: 'panelboard',
      at: [0, 50],
      size: [3, 1, 6],
      entry: [0, 50, 2],
      volts: 208,
      phases: 3,
      busAmps: 800,
      mainAmps: 800,
      spaces: 84,
    },
  ],
  raceways,
});

const BURIED: Raceway = {
  id: 'U1',
  path: [
    [0, 50, 2],
    [0, 50, -2],
    [0, 0, -2],
    [0, 0, 2],
  ],
  method: 'PVC40',
  place: 'underground',
};
const TRUNK: Raceway = {
  id: 'T1',
  path: [
    [0, 0, 2],
    [0, 0, 11],
    [108, 0, 11],
  ],
  method: 'EMT',
  place: 'overhead',
};

const proposed = (file: SiteFile) => propose(file, { what: 'all', cordsADrop: 1, prices: INVENTED_LIST });
const unsupported = (file: SiteFile): string[] =>
  plan(toSite(file)).findings.flatMap(({ rule, about }) => (rule === 'unsupported' ? (about[0] ?? 'all') : []));

test('what is proposed hangs from steel and goes under the aisle by the conduit that is there, not over it', () => {
  const { file } = proposed(lot([BURIED, TRUNK]));
  expect(unsupported(file)).toEqual([]);
  const fresh = file.raceways!.slice(2);
  expect(fresh.length).toBeGreaterThan(0);
  // Nothing new beyond the canopy, and nothing that hangs comes down into the ground.
  for (const { path } of fresh)
    for (const [, y, z] of path) {
      expect(Math.abs(y)).toBeLessThanOrEqual(18);
      expect(z).toBeGreaterThanOrEqual(0);
    }
  const runs = plan(toSite(file)).runs;
  expect(runs.every(({ ok, raceways }) => ok && raceways.includes('U1') && raceways.includes('T1'))).toBe(true);
});

test('where only air leads to the canopy, the proposal says how far it hangs from nothing', () => {
  const { file, parts } = proposed(lot([]));
  const loose = unsupported(file);
  expect(loose).toHaveLength(1);
  const said = parts.find(({ what }) => what === 'raceways')!.says;
  expect(said.some((says) => says.startsWith(`Raceway ${loose[0]} hangs from nothing over`))).toBe(true);
});

test('on a site without steel the proposal says that nothing is drawn to hang from', () => {
  const { parts } = proposed(lot([], []));
  expect(parts.find(({ what }) => what === 'raceways')!.says.at(-1)).toContain('No steel is drawn');
});
