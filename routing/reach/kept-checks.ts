import type { Finding } from '../site/finding.ts';
import type { Drop, Raceway, Stall } from '../site/site.ts';
import { dropHeadroom, racewayHeadroom } from './clear-height.ts';
import { dropFindings } from './drop-checks.ts';
import { type Field, touched } from './field.ts';
import { listMemo } from './list-memo.ts';
import type { Now } from './now.ts';
import type { Shared } from './shared.ts';

interface Checked<T> {
  readonly of: T;
  readonly shared: Shared;
  readonly findings: readonly Finding[];
  // Brought forward while nothing under the element changes.
  field: Field;
  stalls: readonly Stall[];
}

/** Findings of each drop by itself, kept while nothing under it changes. */
export const keptDropChecks = listMemo<Drop, Now, Checked<Drop>>(
  (drop, { field, shared, site: { stalls } }) => ({
    of: drop,
    shared,
    findings: [...dropFindings(drop, field, shared), ...dropHeadroom(drop, { shared, stalls })],
    field,
    stalls,
  }),
  (kept, { field, shared, site, changesSince }) => {
    if (kept.shared !== shared) return false;
    if (kept.stalls !== site.stalls && belowStalls(kept.of, shared)) return false;
    if (kept.field !== field) {
      const [x, y] = kept.of.retractor ?? kept.of.box;
      if (touched({ minX: x, minY: y, maxX: x, maxY: y }, changesSince(kept.field))) return false;
    }
    kept.field = field;
    kept.stalls = site.stalls;
    return true;
  },
);

/** Findings of each raceway over the ground under it. */
export const keptRacewayChecks = listMemo<Raceway, Now, Omit<Checked<Raceway>, 'field'>>(
  (raceway, { shared, site: { stalls } }) => ({
    of: raceway,
    shared,
    findings: racewayHeadroom(raceway, { shared, stalls }),
    stalls,
  }),
  (kept, { shared, site }) => kept.shared === shared && (kept.stalls === site.stalls || kept.of.place !== 'overhead'),
);

/** A drop so low that the stalls under it matter. */
function belowStalls({ box, retractor }: Drop, { rules }: Shared): boolean {
  const { stall, van } = rules.clearHeight;
  return Math.min(box[2], retractor?.[2] ?? box[2]) < Math.max(stall, van);
}
