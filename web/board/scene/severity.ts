import { changedPlaces } from '../../../routing/kept/changed-places.ts';
import { kept } from '../../../routing/kept/kept.ts';
import { addTo } from '../../../routing/lists/grouping.ts';
import type { Finding, Severity } from '../../../routing/site/rules/finding.ts';
import type { Site } from '../../../routing/site/site.ts';

const RANK: Readonly<Record<Severity, number>> = { fail: 2, warn: 1, note: 0 };
/** A finding about more chargers than these speaks of what feeds them, and marks that. */
const MOST_CHARGERS = 3;
/** With more findings that are other ones, going on from an old index costs more than a new one. */
const MOST_CHANGED = 200;

type ByThing = ReadonlyMap<string, readonly Finding[]>;

/** Findings by what they mark. */
interface Index {
  readonly findings: readonly Finding[];
  readonly chargers: Site['chargers'];
  readonly byThing: ByThing;
}

/** What of a list of findings an index does not say. */
interface Difference {
  readonly gone: ReadonlySet<Finding>;
  readonly come: ByThing;
}

const chargerIds = kept((chargers: Site['chargers']): ReadonlySet<string> => new Set(chargers.map(({ id }) => id)));

// While something is dragged the findings of each step are nearly those of the last: one index serves them all.
const atHand = kept((_chargers: Site['chargers']): { index: Index | null } => ({ index: null }));

/** The worst severity with which findings speak of a thing; null where none does. */
export function severityAmong(findings: readonly Finding[], chargers: Site['chargers'], id: string): Severity | null {
  const one = atHand(chargers);
  one.index ??= indexOf(findings, chargers);
  const { index } = one;
  const since = differenceOf(findings, index);
  let worst: Severity | null = null;
  const take = (severity: Severity): void => {
    if (worst === null || RANK[severity] > RANK[worst]) worst = severity;
  };
  for (const finding of index.byThing.get(id) ?? []) if (!since.gone.has(finding)) take(finding.severity);
  for (const finding of since.come.get(id) ?? []) take(finding.severity);
  return worst;
}

/** To be called before many are asked for, as when the whole board is drawn: makes a new index of one that is old. */
export function renewIndex(findings: readonly Finding[], chargers: Site['chargers']): void {
  const one = atHand(chargers);
  if (one.index !== null && differenceOf(findings, one.index).gone.size <= MOST_CHANGED) return;
  one.index = indexOf(findings, chargers);
}

const indexOf = (findings: readonly Finding[], chargers: Site['chargers']): Index => ({
  findings,
  chargers,
  byThing: byThing(findings, chargers),
});

function byThing(findings: readonly Finding[], chargers: Site['chargers']): ByThing {
  const isCharger = chargerIds(chargers);
  const found = new Map<string, Finding[]>();
  for (const finding of findings) {
    const { about } = finding;
    const many = about.length > MOST_CHARGERS && about.filter((id) => isCharger.has(id)).length > MOST_CHARGERS;
    for (const id of about) {
      if (many && isCharger.has(id)) continue;
      addTo(found, id, finding);
    }
  }
  return found;
}

/** What has come and gone since an index was made. */
const differenceOf = kept((findings: readonly Finding[], since: Index): Difference => {
  const gone = new Set<Finding>();
  const come: Finding[] = [];
  const was = since.findings;
  if (findings.length === was.length)
    for (const i of changedPlaces(findings, was)) {
      gone.add(was[i]!);
      come.push(findings[i]!);
    }
  // Lists of one length that begin to differ in the middle are more likely shifted than full of other findings.
  if (findings.length !== was.length || gone.size > MOST_CHANGED) {
    gone.clear();
    for (const finding of was) gone.add(finding);
    come.length = 0;
    for (const finding of findings) if (!gone.delete(finding)) come.push(finding);
  }
  return { gone, come: byThing(come, since.chargers) };
});
