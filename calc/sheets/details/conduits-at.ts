import { addTo } from '../../../routing/lists/grouping.ts';
import { distance } from '../../../routing/plane/space.ts';
import type { Method } from '../../../routing/site/schema/vocabulary.ts';
import type { Point3, Site } from '../../../routing/site/site.ts';
import type { Plan } from '../../plan/plan-shape.ts';
import { outsideOf } from '../../steel/trapeze.ts';
import { feederConduits } from '../../supply/feeders/feeder-conduit.ts';
import { tablesOf } from '../../tables/editions.ts';

/** A conduit that passes a place. */
export interface PassingConduit {
  readonly id: string;
  readonly method: Method;
  readonly tradeSize: string | null;
  /** Outside diameter, feet. */
  readonly across: number;
  readonly existing: boolean;
}

/** A path this near to a place passes it, feet. */
const NEAR = 0.05;

/** The conduits of branches and feeders that pass a place, one for each set of a feeder. */
export function conduitsAt(site: Site, plan: Plan, at: Point3): readonly PassingConduit[] {
  const passes = (path: readonly Point3[]): boolean =>
    path.some((b, i) => i > 0 && distance(path[i - 1]!, at) + distance(at, b) - distance(path[i - 1]!, b) <= NEAR);
  const branches = plan.conduits
    .filter(({ path }) => passes(path))
    .map(({ id, method, tradeSize }): PassingConduit => passing(id, method, tradeSize, false));
  const feeders = feederConduits(site, tablesOf(site.rules)).flatMap(({ feeder, method, tradeSize, path }) =>
    path === null || !passes(path)
      ? []
      : Array.from({ length: feeder.conductor.sets }, () =>
          passing(feeder.id, method, tradeSize, feeder.existing === true),
        ),
  );
  return [...branches, ...feeders];
}

const passing = (id: string, method: Method, tradeSize: string | null, existing: boolean): PassingConduit => ({
  id,
  method,
  tradeSize,
  across: outsideOf({ method, tradeSize }) / 12,
  existing,
});

/** `2 PVC40 1 in: P1-1.1, P1-2.1`. */
export function passingWords(conduits: readonly PassingConduit[]): string {
  const groups = new Map<string, string[]>();
  for (const { id, method, tradeSize, existing } of conduits) {
    const words = `${method}${tradeSize === null ? '' : ` ${tradeSize} in`}${existing ? ' (E)' : ''}`;
    addTo(groups, words, id);
  }
  return [...groups].map(([words, ids]) => `${ids.length} ${words}: ${fewOf(ids)}`).join('; ');
}

/** As many names as are read at a glance. */
export const fewOf = (ids: readonly string[]): string =>
  ids.length > 4 ? `${ids.slice(0, 3).join(', ')} and ${ids.length - 3} more` : ids.join(', ');
