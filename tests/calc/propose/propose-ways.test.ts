import { expect, test } from 'vitest';
import { plan } from '../../../calc/plan/plan.ts';
import { inTheGround } from '../../../calc/propose/panels/panel-source.ts';
import type { What } from '../../../calc/propose/propose.ts';
import { weightOf } from '../../../calc/propose/volts/held-feeders.ts';
import { byId } from '../../../routing/site/look-up.ts';
import type { SiteFile } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { libraryLot } from '../../bench/samples/library-lot.ts';
import { bare, FEW_ANSWERS, failing, proposed as proposedOf } from './propose-parts.ts';

const proposed = (file: SiteFile, what: What) => proposedOf(file, what, 1, { answers: FEW_ANSWERS });

test('raceways that bend too much on their way get pull points: where walls are passed one after the other', () => {
  const lot = libraryLot();
  const behind = lot.chargers!.filter(({ drop }) => drop === 'D08');
  /** Walls that reach past the middle line, from one side and the other by turns; no way leads over or under. */
  const walls = [12, 24, 36, 48, 60].map((x, i): NonNullable<SiteFile['keepouts']>[number] => {
    const [low, high] = i % 2 === 0 ? [-300, 10] : [-10, 300];
    const outline = [
      [x, low],
      [x + 1, low],
      [x + 1, high],
      [x, high],
    ] as const;
    return { id: `W${i}`, outline, from: -20, to: 60, blocks: ['raceway'] };
  });
  const laid = proposed({ ...lot, chargers: behind, raceways: [], pullpoints: [], keepouts: walls }, 'raceways').file;
  const rules = plan(toSite(laid)).findings.map(({ rule }) => rule);
  expect(laid.pullpoints!.length).toBeGreaterThan(0);
  expect(rules.filter((rule) => ['bends', 'pull-length', 'no-run'].includes(rule))).toEqual([]);
  const without = plan(toSite({ ...laid, pullpoints: [] })).findings.map(({ rule }) => rule);
  expect(without).toContain('bends');
});

test('a feeder that is long gets larger conductors than its breaker asks for, so that the drop holds', () => {
  const ground = bare(libraryLot());
  const far: SiteFile = {
    ...ground,
    equipment: ground.equipment!.map((one) => ({ ...one, at: [-520, 0], entry: [-520, 0, 0] })),
  };
  const { file, parts } = proposed(far, 'all');
  const [feeder] = file.feeders!;
  const { rules } = toSite(file);
  const asked = inTheGround(rules, feeder!.breakerAmps);
  const laid = byId(toSite(file).feeders).get(feeder!.id)!;
  expect(weightOf(rules, laid.conductor)).toBeGreaterThan(weightOf(rules, asked));
  expect(parts[1]!.says).toContain(
    'F01 has larger conductors, or more in parallel, than the breaker asks for, to hold the drop.',
  );
  expect(failing(file)).toEqual([]);
  // As its breaker asks for, or with branches that lose what the rule lets them, it would not do.
  expect(failing({ ...file, feeders: [{ ...feeder!, conductor: asked }] })).toHaveLength(1);
  expect(failing({ ...file, chargers: file.chargers!.map(({ branchDrop: _, ...one }) => one) })).toHaveLength(1);
});

test('an open lot without steel, and a canopy that is a valley, are planned whole', () => {
  const ground = bare(libraryLot());
  const open = proposed({ ...ground, columns: [], members: [] }, 'all').file;
  expect(failing(open)).toEqual([]);
  const low = (y: number): number => 12 + Math.abs(y) * Math.tan((5 * Math.PI) / 180);
  const valley: SiteFile = {
    ...ground,
    members: ground.members!.map((one) => ({
      ...one,
      from: [one.from[0], one.from[1], low(one.from[1])],
      to: [one.to[0], one.to[1], low(one.to[1])],
    })),
  };
  expect(failing(proposed(valley, 'all').file)).toEqual([]);
});

/** The ground of a lot turned about the origin, its gridlines with it. */
function turned(file: SiteFile, degrees: number): SiteFile {
  const [c, s] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
  const flat = ([x, y]: readonly [number, number]): [number, number] => [x * c - y * s, x * s + y * c];
  const space = ([x, y, z]: readonly [number, number, number]): [number, number, number] => [...flat([x, y]), z];
  return {
    ...file,
    stalls: file.stalls!.map((one) => ({ ...one, at: flat(one.at), heading: one.heading + degrees })),
    columns: file.columns!.map((one) => ({ ...one, at: flat(one.at), rotation: (one.rotation ?? 0) + degrees })),
    members: file.members!.map((one) => ({ ...one, from: space(one.from), to: space(one.to) })),
    aisles: file.aisles!.map((one) => ({ ...one, outline: one.outline.map(flat) })),
    equipment: file.equipment!.map((one) => ({
      ...one,
      at: flat(one.at),
      entry: space(one.entry),
      rotation: (one.rotation ?? 0) + degrees,
    })),
    gridlines: { ...file.gridlines!, rotation: degrees },
    keepouts: [],
  };
}

test('a lot that lies aslant gets raceways along it and square to it, as the same lot does that lies straight', () => {
  const straight: SiteFile = { ...bare(libraryLot()), keepouts: [] };
  const aslant = proposed(turned(straight, 30), 'all').file;
  expect(failing(aslant)).toEqual([]);
  const feet = (file: SiteFile): number => plan(toSite(file)).runs.reduce((sum, { length }) => sum + length!, 0);
  // Places of a grid that is turned with the lot are not quite those of one that is not.
  expect(feet(aslant) / feet(proposed(straight, 'all').file)).toBeCloseTo(1, 1);
  for (const { path } of aslant.raceways!)
    path.slice(1).forEach(([x, y], i) => {
      const way = (Math.atan2(y - path[i]![1], x - path[i]![0]) * 180) / Math.PI - 30;
      if (Math.hypot(x - path[i]![0], y - path[i]![1]) > 0.5)
        expect(Math.abs(way - 90 * Math.round(way / 90))).toBeLessThan(0.1);
    });
});
