import { kept } from '../../../routing/kept/kept.ts';
import { bendsOf } from '../../../routing/network/bends.ts';
import { distance } from '../../../routing/plane/space.ts';
import type { Pullpoint, Rules, Site } from '../../../routing/site/site.ts';
import { NO_BOXES } from '../../branches/boxes/boxes.ts';
import { pullBox } from '../../branches/boxes/pull-box.ts';
import type { PlannedBox } from '../../plan-file/branches.ts';
import { racewaySpec } from '../../prices/spec.ts';
import type { CodeTables } from '../../tables/code-tables.ts';
import type { FeederConduit } from './feeder-conduit.ts';
import { pathLength, stretchesOf } from './stretches.ts';

/** Feeders that pass a pull point: what of them goes straight through it, and what turns. */
interface Passing {
  readonly straight: string[];
  readonly turning: string[];
  readonly raceways: string[];
  readonly of: string[];
  under: PlannedBox['under'];
}

/**
 * Boxes at the pull points that new feeders pass, each long enough for all feeders there: straight or angle pulls, by
 * whether the way turns there. Their conduits are the feeders, by their ids. Where circuits come to a box there too
 * (`shared`), feeders have one of their own beside it, `PB1.F`: they are not mixed in one. Common practice.
 */
export const feederBoxesOf = (
  { feeders, pullpoints, rules }: Site,
  conduits: readonly FeederConduit[],
  shared: readonly PlannedBox[],
  tables: CodeTables,
): readonly PlannedBox[] =>
  pullpoints.length === 0 || feeders.length === 0
    ? NO_BOXES
    : atPullpoints(pullpoints, conduits, shared, tables, rules);

const atPullpoints = kept(
  (
    pullpoints: readonly Pullpoint[],
    conduits: readonly FeederConduit[],
    shared: readonly PlannedBox[],
    tables: CodeTables,
    rules: Rules,
  ): readonly PlannedBox[] => {
    const boxes = feederBoxes(conduits, pullpoints, new Set(shared.map(({ id }) => id)), tables, rules);
    return boxes.length === 0 ? NO_BOXES : boxes;
  },
);

function feederBoxes(
  conduits: readonly FeederConduit[],
  pullpoints: readonly Pullpoint[],
  passed: ReadonlySet<string>,
  tables: CodeTables,
  { joinTolerance: tolerance, boxLocation }: Rules,
): readonly PlannedBox[] {
  const passing = new Map<string, Passing>();
  for (const conduit of conduits) {
    const { feeder, path, method, tradeSize, like } = conduit;
    if (feeder.existing === true || path === null || tradeSize === null) continue;
    const stretches = stretchesOf(path, pullpoints, tolerance);
    let feet = 0;
    stretches.forEach(({ to, path: before }, i) => {
      feet += pathLength(before);
      const after = stretches[i + 1];
      if (to === null || after === undefined) return;
      const turns = bendsOf([before.at(-2)!, before.at(-1)!, after.path[1]!]).length > 0;
      const here = passing.get(to) ?? { straight: [], turning: [], raceways: [], of: [], under: null };
      passing.set(to, here);
      const { sets } = feeder.conductor;
      for (let set = 0; set < sets; set++) {
        (turns ? here.turning : here.straight).push(tradeSize);
        here.raceways.push(racewaySpec(method, tradeSize), racewaySpec(method, tradeSize));
      }
      here.of.push(feeder.id);
      if (before.at(-1)![2] < 0) here.under = like[legAt(path, feet)]?.surface ?? 'asphalt';
    });
  }
  return pullpoints.flatMap((pull): PlannedBox[] => {
    const here = passing.get(pull.id);
    if (here === undefined) return [];
    const { straight, turning, raceways, of, under } = here;
    const { length } = pullBox(tables, { straight, rows: turning.length > 0 ? [turning] : [] });
    const location = under === null ? boxLocation : 'wet';
    const { at } = pull;
    const id = passed.has(pull.id) ? `${pull.id}.F` : pull.id;
    return [{ id, kind: 'pullpoint', at, conduits: of, raceways, volume: null, box: null, length, under, location }];
  });
}

function legAt(path: FeederConduit['path'] & object, feet: number): number {
  let passed = 0;
  for (let leg = 0; leg + 1 < path.length; leg++) {
    passed += distance(path[leg]!, path[leg + 1]!);
    if (passed >= feet - 1e-6) return leg;
  }
  return path.length - 2;
}
