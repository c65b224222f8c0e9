import { changedPlaces } from '../../kept/changed-places.ts';
import type { Now } from '../../reach/now.ts';
import type { Shared } from '../../reach/shared.ts';
import type { Finding } from '../../site/rules/finding.ts';
import type { Drop, Raceway } from '../../site/site.ts';
import { dropHeadroom, racewayHeadroom } from './clear-height.ts';
import { dropFindings } from './drop-findings.ts';

/** The findings of an element by itself, and what on the site they hang on. */
interface Checked {
  readonly findings: readonly Finding[];
  /** The point of the plan at which a vehicle matters; null where none does. */
  readonly at: readonly [x: number, y: number] | null;
  /** It is so low that the stalls under it matter. */
  readonly low: boolean;
}

/**
 * The findings of all elements of a list, kept by the element's identity and place for as long as nothing under it
 * changes. In flat lists, so that going through thousands of elements opens none of them.
 */
function keptFindings<T>(check: (element: T, now: Now) => Checked) {
  let elements: readonly T[] = [];
  let findings: (readonly Finding[])[] = [];
  let all: readonly Finding[] = [];
  let at = new Float64Array(0);
  let low = new Uint8Array(0);
  let then: Now | null = null;

  /** Places of the elements to be checked again; null for all. */
  const stalePlaces = (now: Now, list: readonly T[]): Iterable<number> | null => {
    if (!then || then.shared !== now.shared || list.length !== elements.length) return null;
    const changes = then.field === now.field ? [] : now.changesSince(then.field);
    if (changes === null) return null;
    const stale = new Set(changedPlaces(list, elements));
    if (then.site.stalls !== now.site.stalls)
      for (let i = low.indexOf(1); i >= 0; i = low.indexOf(1, i + 1)) stale.add(i);
    // Not a number where no vehicle matters: no comparison holds.
    for (const { minX, minY, maxX, maxY } of changes)
      for (let i = 0; i < list.length; i++)
        if (at[2 * i]! >= minX && at[2 * i]! <= maxX && at[2 * i + 1]! >= minY && at[2 * i + 1]! <= maxY) stale.add(i);
    return stale;
  };

  return (list: readonly T[], now: Now): readonly Finding[] => {
    const stale = stalePlaces(now, list);
    if (stale === null) {
      findings = new Array(list.length);
      at = new Float64Array(2 * list.length);
      low = new Uint8Array(list.length);
    }
    // Should a check throw, nothing of this call is taken to stand.
    then = null;
    let isNew = stale === null;
    for (const i of stale ?? list.keys()) {
      const checked = check(list[i]!, now);
      isNew ||= checked.findings.length > 0 || findings[i]!.length > 0;
      findings[i] = checked.findings;
      at[2 * i] = checked.at?.[0] ?? Number.NaN;
      at[2 * i + 1] = checked.at?.[1] ?? Number.NaN;
      low[i] = checked.low ? 1 : 0;
    }
    if (isNew) all = findings.flat();
    then = now;
    elements = list;
    return all;
  };
}

const lowest = ({ rules }: Shared): number => Math.max(rules.clearHeight.stall, rules.clearHeight.van);

/** Findings of the drops, each by itself. */
export const dropChecks = keptFindings<Drop>((drop, { field, shared, site: { stalls } }) => {
  const [x, y, z] = drop.retractor ?? drop.box;
  return {
    findings: [...dropFindings(drop, field, shared), ...dropHeadroom(drop, { shared, stalls })],
    at: [x, y],
    low: Math.min(z, drop.box[2]) < lowest(shared),
  };
});

/** Findings of the raceways over the ground under them. */
export const racewayChecks = keptFindings<Raceway>((raceway, { shared, site: { stalls } }) => ({
  findings: racewayHeadroom(raceway, { shared, stalls }),
  at: null,
  low: raceway.place === 'overhead' && raceway.path.some(([, , z]) => z < lowest(shared)),
}));
