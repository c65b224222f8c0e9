import { kept } from '../../../routing/kept/kept.ts';
import { addTo } from '../../../routing/lists/grouping.ts';
import { type FeederRoute, feederRoutesOf } from '../../../routing/network/feeder-routes.ts';
import { distance } from '../../../routing/plane/space.ts';
import { printLength } from '../../../routing/site/numbers/feet-inches.ts';
import type { Finding } from '../../../routing/site/rules/finding.ts';
import type { Units } from '../../../routing/site/schema/vocabulary.ts';
import type { Feeder, Point2, Point3, Raceway, Site } from '../../../routing/site/site.ts';
import { counted } from '../../../routing/words/counted.ts';
import type { CodeTables } from '../../tables/code-tables.ts';
import { cited } from '../../tables/sections.ts';

/** From so many loaded ducts side by side on the table of ampacity is no longer that of what lies there. */
const BANK = 3;
/** Ducts nearer than this in plan, ft, warm one another; and so far along it takes. Common practice, no source. */
const SIDE_BY_SIDE = 3;
const ALONG = 10;

/**
 * Conduits of feeders in one trench: the table of ampacity is for one raceway by itself, and three or more that warm one
 * another carry less. What they carry is engineering by others; that nobody worked it is told.
 */
export const ductFindings = (site: Site, tables: CodeTables): readonly Finding[] => {
  const { routes } = feederRoutesOf(site);
  const names = routes.map(({ feeder }) => feeder);
  const ways = routes.map(({ way }) => way);
  return found(site.feeders, names, ways, site.raceways, tables, site.units);
};

const found = kept(
  (
    feeders: readonly Feeder[],
    names: readonly string[],
    ways: readonly FeederRoute['way'][],
    raceways: readonly Raceway[],
    tables: CodeTables,
    units: Units,
  ): readonly Finding[] => [
    ...drawn(feeders, new Map(names.map((name, i) => [name, ways[i]!])), raceways, tables, units),
    ...undrawn(feeders, tables),
  ],
);

interface Trench {
  readonly raceway: Raceway;
  /** Points a foot apart where it is in the ground. */
  readonly points: readonly Point2[];
  readonly feeders: readonly Feeder[];
}

const ducts = (feeders: readonly Feeder[]): number => feeders.reduce((sum, { conductor }) => sum + conductor.sets, 0);

function drawn(
  feeders: readonly Feeder[],
  ways: ReadonlyMap<string, FeederRoute['way']>,
  raceways: readonly Raceway[],
  tables: CodeTables,
  units: Units,
): readonly Finding[] {
  const trenches = raceways.flatMap((raceway): Trench[] => {
    if (raceway.place !== 'underground' || raceway.method === 'tray') return [];
    const own = feeders.filter(({ id }) => ways.get(id)?.raceways.includes(raceway.id) === true);
    return own.length === 0 ? [] : [{ raceway, points: buriedPoints(raceway.path), feeders: own }];
  });
  const told = new Set<string>();
  return trenches
    .map((trench) => [trench, ...trenches.filter((other) => other !== trench && beside(trench, other))])
    .map((bank) => ({ bank, all: [...new Set(bank.flatMap((one) => one.feeders))] }))
    .sort((a, b) => ducts(b.all) - ducts(a.all))
    .flatMap(({ bank, all }): Finding[] => {
      if (ducts(all) < BANK || bank.some(({ raceway }) => told.has(raceway.id))) return [];
      for (const { raceway } of bank) told.add(raceway.id);
      return [
        {
          severity: 'warn',
          rule: 'duct-bank',
          about: [...all.map(({ id }) => id), ...bank.map(({ raceway }) => raceway.id)],
          says: `${counted(ducts(all), 'conduit')} of feeders (${all.map(({ id }) => id).join(', ')}) lie side by side in the ground along ${bank.map(({ raceway }) => raceway.id).join(', ')}: the table by which they are sized is for one by itself, and ${BANK} or more that warm one another carry less. What they carry there, by spacing, soil and load, is engineering by others. Lay them farther apart than ${printLength(SIDE_BY_SIDE, units)}, or have it worked.`,
          value: ducts(all),
          limit: BANK - 1,
          source: `${cited(tables, 'ductBank')}, from memory; distance: common practice, no source`,
        },
      ];
    });
}

/** Feeders of which only the length is known, in three sets or more of a method for the ground. */
function undrawn(feeders: readonly Feeder[], tables: CodeTables): readonly Finding[] {
  const several = feeders.filter(
    ({ length, conductor, raceway, outdoors }) =>
      length !== undefined &&
      conductor.sets >= BANK &&
      outdoors !== false &&
      (raceway === 'PVC40' || raceway === 'PVC80'),
  );
  if (several.length === 0) return [];
  const ids = several.map(({ id }) => id);
  return [
    {
      severity: 'note',
      rule: 'duct-bank',
      about: ids,
      says: `The way of ${ids.join(', ')} is not drawn: where ${ids.length === 1 ? 'its' : 'their'} ${several.map(({ conductor }) => conductor.sets).join(', ')} sets lie side by side in the ground they warm one another and carry less than the table has. What they carry there is engineering by others.`,
      source: `${cited(tables, 'ductBank')}, from memory`,
    },
  ];
}

function buriedPoints(path: readonly Point3[]): readonly Point2[] {
  return path.slice(1).flatMap((to, i): Point2[] => {
    const from = path[i]!;
    if (from[2] >= 0 || to[2] >= 0) return [];
    const steps = Math.max(1, Math.ceil(distance(from, to)));
    return Array.from({ length: steps }, (_, step): Point2 => {
      const share = (step + 0.5) / steps;
      return [from[0] + share * (to[0] - from[0]), from[1] + share * (to[1] - from[1])];
    });
  });
}

/** Whether one lies beside another for long enough: its points, a foot each, that come near to the other's. */
function beside({ points }: Trench, other: Trench): boolean {
  // By cells as wide as the distance, so that long ways cost no more than their length.
  const cell = (x: number, y: number): string => `${Math.floor(x / SIDE_BY_SIDE)} ${Math.floor(y / SIDE_BY_SIDE)}`;
  const cells = new Map<string, Point2[]>();
  for (const point of other.points) {
    const key = cell(point[0], point[1]);
    addTo(cells, key, point);
  }
  const isNear = ([x, y]: Point2): boolean =>
    [-1, 0, 1].some((dx) =>
      [-1, 0, 1].some((dy) =>
        (cells.get(cell(x + dx * SIDE_BY_SIDE, y + dy * SIDE_BY_SIDE)) ?? []).some(
          ([a, b]) => Math.hypot(a - x, b - y) <= SIDE_BY_SIDE,
        ),
      ),
    );
  return points.filter(isNear).length >= Math.min(ALONG, other.points.length);
}
