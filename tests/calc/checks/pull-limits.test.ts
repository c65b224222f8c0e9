import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { pullPlaces } from '../../../calc/branches/pulls/pull-places.ts';
import { plan } from '../../../calc/plan/plan.ts';
import type { Plan } from '../../../calc/plan/plan-shape.ts';
import { stretchesOf } from '../../../calc/supply/feeders/stretches.ts';
import { feederRoutesOf } from '../../../routing/network/feeder-routes.ts';
import type { Point3, SiteFile } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { panel, raceway } from '../../routing/network/sites.ts';
import { anyLot, trunkLot } from '../branches/lots.ts';

const about = ({ findings }: Plan) => findings.filter(({ rule }) => rule === 'bends' || rule === 'pull-length');

/** Conduits from opening to opening: those that are only coupled in the ground are pulled as one. */
function pulledAsOne({ conduits }: Plan): readonly { id: string; path: readonly Point3[] }[] {
  const isCoupling = (end: string) => /\.C\d+$/.test(end);
  return conduits
    .filter(({ from }) => !isCoupling(from))
    .map((first) => {
      const path = [...first.path];
      for (let last = first; isCoupling(last.to); ) {
        last = conduits.find(({ from }) => from === last.to)!;
        path.push(...last.path.slice(1));
      }
      return { id: first.id, path };
    });
}

/** The site with pull points where the plan of it says that they would do. */
function cured(file: SiteFile, round = 0): SiteFile {
  const site = toSite(file);
  const named = new Set(about(plan(site)).flatMap((finding) => finding.about));
  const seen = new Map<string, Point3>();
  for (const { id, path } of pulledAsOne(plan(site)))
    if (named.has(id)) for (const { at } of pullPlaces(path, site.rules)) seen.set(at.join(), at);
  const fresh = [...seen.values()].map((at, i) => ({ id: `NEW${round}-${i}`, at }));
  return { ...file, pullpoints: [...(file.pullpoints ?? []), ...fresh] };
}

/** A way that goes 20 ft east and 20 ft north in turn. */
const stairs = (corners: number): Point3[] =>
  Array.from({ length: corners + 2 }, (_, i): Point3 => [20 * Math.ceil(i / 2), 20 * Math.floor(i / 2), 10]);

const stairLot = (corners: number, more: Partial<SiteFile> = {}): SiteFile => {
  const path = stairs(corners);
  return trunkLot([0], {
    raceways: [raceway('R1', path)],
    drops: [{ id: 'D1', box: path.at(-1)!, cord: 25 }],
    rules: { branchLimit: 9999, pullLimit: 9999, dropLimit: { branch: 99, total: 99 } },
    ...more,
  });
};

describe('too much bend between two openings', () => {
  test('says where a pull point goes, from the gridlines and along the conduit', () => {
    const gridlines = { x: [{ label: '4', at: 57 }], y: [{ label: 'B', at: 40 }] };
    const [finding] = about(plan(toSite(stairLot(5, { gridlines }))));
    expect(finding).toMatchObject({ severity: 'fail', rule: 'bends', value: 450, limit: 360 });
    expect(finding!.says).toContain(
      `A pull point would do: 3' 0" past line 4, on line B, 10' 0" above grade (100' 0" from P1).`,
    );
  });

  test.each([5, 9, 10, 14])('of %i corners is gone with the pull points that it names', (corners) => {
    const file = stairLot(corners);
    expect(about(plan(toSite(file)))).toHaveLength(1);
    const after = cured(file);
    // Four quarter bends to a stretch, and one in each box.
    expect(after.pullpoints).toHaveLength(Math.ceil((corners - 4) / 5));
    expect(about(plan(toSite(after)))).toEqual([]);
  });
});

test('too long a pull is gone with the pull points that it names', () => {
  const file = trunkLot([450], { rules: { branchLimit: 9999, dropLimit: { branch: 99, total: 99 } } });
  expect(about(plan(toSite(file)))).toMatchObject([{ rule: 'pull-length', value: 450, limit: 200 }]);
  const after = cured(file);
  expect(after.pullpoints).toHaveLength(2);
  expect(about(plan(toSite(after)))).toEqual([]);
});

// With pull points circuits may be grouped otherwise, and other stretches come of it: a few rounds settle it.
test('on any lot the pull points that findings name leave none', () => {
  fc.assert(
    fc.property(anyLot({ mostChargers: 6 }), (lot) => {
      let file: SiteFile = { ...lot, rules: { ...lot.rules, bendLimit: 180, pullLimit: 70 } };
      for (let round = 0; round < 8 && about(plan(toSite(file))).length > 0; round++) file = cured(file, round);
      // A tap of up to 6 ft is opened at its ends alone.
      const left = about(plan(toSite(file))).filter(({ rule, value }) => rule === 'bends' || value! > 70 + 6);
      expect(left).toEqual([]);
    }),
    { numRuns: 60 },
  );
});

describe('a feeder along the raceways', () => {
  const path = stairs(5);
  const lot = (more: Partial<SiteFile> = {}): SiteFile => ({
    format: 'overrow/site',
    version: 1,
    units: 'ft',
    name: 'feeder',
    raceways: [raceway('R1', path)],
    equipment: [panel('SVC', path[0]!, { kind: 'source' }), panel('P1', path.at(-1)!)],
    feeders: [
      {
        id: 'F1',
        from: 'SVC',
        to: 'P1',
        conductor: { size: '3/0', metal: 'copper', sets: 1, insulation: 'THWN-2' },
        breakerAmps: 200,
      },
    ],
    rules: { pullLimit: 9999 },
    ...more,
  });

  test('is checked like a conduit, and cured by the pull point that it names', () => {
    const [finding, ...others] = about(plan(toSite(lot())));
    expect(others).toEqual([]);
    expect(finding).toMatchObject({ rule: 'bends', about: ['F1'], value: 450 });
    const site = toSite(lot());
    const [place] = pullPlaces(feederRoutesOf(site).routes[0]!.way!.path, site.rules);
    expect(about(plan(toSite(lot({ pullpoints: [{ id: 'PB1', at: place!.at }] }))))).toEqual([]);
  });

  test('that stands already is left alone', () => {
    const [feeder] = lot().feeders!;
    expect(about(plan(toSite(lot({ feeders: [{ ...feeder!, existing: true }] }))))).toEqual([]);
  });
});

describe('stretches of a path', () => {
  const path = stairs(3);

  test('lie end to end and are as long as the path', () => {
    const cuts = stretchesOf(
      path,
      [
        { id: 'B', at: [20, 5, 10] },
        { id: 'A', at: [4, 0, 10.1] },
      ],
      0.25,
    );
    expect(cuts.map(({ from, to }) => [from, to])).toEqual([
      [null, 'A'],
      ['A', 'B'],
      ['B', null],
    ]);
    expect(cuts.map(({ path: part }) => part)).toEqual([
      [path[0], [4, 0, 10]],
      [[4, 0, 10], path[1], [20, 5, 10]],
      [[20, 5, 10], ...path.slice(2)],
    ]);
  });

  test('are not cut where a pull point is off the path, or at its very start', () => {
    expect(
      stretchesOf(
        path,
        [
          { id: 'A', at: [10, 1, 10] },
          { id: 'B', at: [0.1, 0, 10] },
        ],
        0.25,
      ),
    ).toEqual([{ path, from: null, to: null }]);
  });
});
