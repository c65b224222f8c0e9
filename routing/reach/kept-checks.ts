import type { Finding } from '../site/finding.ts';
import type { Drop, Raceway } from '../site/site.ts';
import { dropHeadroom, racewayHeadroom } from './clear-height.ts';
import { dropFindings } from './drop-checks.ts';
import { NO_FINDINGS } from './kept-reach.ts';
import type { Now } from './now.ts';
import type { Shared } from './shared.ts';

/** The findings of an element by itself, and what on the site they hang on. */
interface Checked {
  readonly findings: readonly Finding[];
  /** The point of the plan at which a vehicle matters; null where none does. */
  readonly at: readonly [x: number, y: number] | null;
  /** It is so low that the stalls under it matter. */
  readonly low: boolean;
}

/**
 * The findings of each element of a list, kept by the element's identity and place for as long as nothing under it
 * changes. In flat lists, so that going through thousands of elements opens none of them.
 */
function keptFindings<T>(check: (element: T, now: Now) => Checked) {
  let elements: T[] = [];
  let findings: (readonly Finding[])[] = [];
  let at = new Float64Array(0);
  let low = new Uint8Array(0);
  let then: Now | null = null;
  let checkedList: readonly T[] | null = null;

  const forget = (now: Now, list: readonly T[]): Uint8Array => {
    const stale = new Uint8Array(list.length);
    const changes = then && then.field !== now.field ? now.changesSince(then.field) : [];
    if (!then || then.shared !== now.shared || changes === null) return stale.fill(1);
    for (let i = 0; i < list.length; i++) if (!Object.is(list[i], elements[i])) stale[i] = 1;
    if (then.site.stalls !== now.site.stalls) for (let i = 0; i < list.length; i++) if (low[i] === 1) stale[i] = 1;
    // Not a number where no vehicle matters: no comparison holds.
    for (const { minX, minY, maxX, maxY } of changes)
      for (let i = 0; i < list.length; i++)
        if (at[2 * i]! >= minX && at[2 * i]! <= maxX && at[2 * i + 1]! >= minY && at[2 * i + 1]! <= maxY) stale[i] = 1;
    return stale;
  };

  return (list: readonly T[], now: Now): readonly (readonly Finding[])[] => {
    if (list.length !== elements.length) {
      elements = [];
      findings = new Array(list.length);
      at = new Float64Array(2 * list.length);
      low = new Uint8Array(list.length);
    }
    if (list === checkedList && then && then.shared === now.shared && then.field === now.field)
      if (then.site.stalls === now.site.stalls) return findings;
    const stale = forget(now, list);
    // Should a check throw, nothing of this call is taken to stand.
    then = null;
    checkedList = null;
    for (let i = 0; i < list.length; i++) {
      if (stale[i] === 0) continue;
      const checked = check(list[i]!, now);
      elements[i] = list[i]!;
      findings[i] = checked.findings.length === 0 ? NO_FINDINGS : checked.findings;
      at[2 * i] = checked.at?.[0] ?? Number.NaN;
      at[2 * i + 1] = checked.at?.[1] ?? Number.NaN;
      low[i] = checked.low ? 1 : 0;
    }
    then = now;
    checkedList = list;
    return findings;
  };
}

const lowest = ({ rules }: Shared): number => Math.max(rules.clearHeight.stall, rules.clearHeight.van);

/** Findings of each drop by itself. */
export const dropChecks = keptFindings<Drop>((drop, { field, shared, site: { stalls } }) => {
  const [x, y, z] = drop.retractor ?? drop.box;
  return {
    findings: [...dropFindings(drop, field, shared), ...dropHeadroom(drop, { shared, stalls })],
    at: [x, y],
    low: Math.min(z, drop.box[2]) < lowest(shared),
  };
});

/** Findings of each raceway over the ground under it. */
export const racewayChecks = keptFindings<Raceway>((raceway, { shared, site: { stalls } }) => ({
  findings: racewayHeadroom(raceway, { shared, stalls }),
  at: null,
  low: raceway.place === 'overhead' && raceway.path.some(([, , z]) => z < lowest(shared)),
}));
