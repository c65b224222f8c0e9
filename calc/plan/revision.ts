import { ELEMENT_LISTS, type ElementList } from '../../routing/site/kinds/kinds.ts';
import type { Finding } from '../../routing/site/rules/finding.ts';
import type { Site } from '../../routing/site/site.ts';
import { keyOf } from '../prices/price-list.ts';
import type { Alternative } from './comparison.ts';

/** An element that one version has and the other has not, or has otherwise. */
export interface ChangedElement {
  readonly list: ElementList;
  readonly id: string;
  readonly change: 'added' | 'removed' | 'moved' | 'changed';
}

export interface ChangedQuantity {
  readonly item: string;
  readonly spec: string;
  readonly unit: string;
  readonly before: number;
  readonly after: number;
}

/** What a revision changes: elements for the drawing's clouds, quantities and cost for the estimator, findings for all. */
export interface Revision {
  readonly elements: readonly ChangedElement[];
  readonly quantities: readonly ChangedQuantity[];
  readonly cost: { readonly before: number; readonly after: number };
  readonly findings: { readonly gone: readonly Finding[]; readonly come: readonly Finding[] };
}

/** The change from one version of a site to another. */
export function revision(before: Alternative, after: Alternative): Revision {
  return {
    elements: ELEMENT_LISTS.flatMap((list) => changedElements(list, before.site, after.site)),
    quantities: changedQuantities(before, after),
    cost: { before: before.cost.price, after: after.cost.price },
    findings: {
      gone: notIn(before.plan.findings, after.plan.findings),
      come: notIn(after.plan.findings, before.plan.findings),
    },
  };
}

/** Fields that say where an element is; a change of these alone is a move. */
const PLACES: ReadonlySet<string> = new Set([
  'at',
  'from',
  'to',
  'path',
  'outline',
  'box',
  'retractor',
  'entry',
  'heading',
  'rotation',
  'offset',
]);

function changedElements(list: ElementList, before: Site, after: Site): ChangedElement[] {
  const old = new Map((before[list] as readonly { readonly id: string }[]).map((one) => [one.id, one]));
  const now = new Map((after[list] as readonly { readonly id: string }[]).map((one) => [one.id, one]));
  const changed: ChangedElement[] = [];
  for (const [id, one] of now) {
    const was = old.get(id);
    if (!was) changed.push({ list, id, change: 'added' });
    else if (JSON.stringify(was) !== JSON.stringify(one))
      changed.push({ list, id, change: onlyMoved(was, one) ? 'moved' : 'changed' });
  }
  for (const id of old.keys()) if (!now.has(id)) changed.push({ list, id, change: 'removed' });
  return changed;
}

/** A feeder's or load's `from` and `to` are names, not places. */
function onlyMoved(was: object, now: object): boolean {
  const [a, b] = [was as Record<string, unknown>, now as Record<string, unknown>];
  return [...new Set([...Object.keys(a), ...Object.keys(b)])].every(
    (field) =>
      JSON.stringify(a[field]) === JSON.stringify(b[field]) || (PLACES.has(field) && typeof a[field] !== 'string'),
  );
}

function changedQuantities(before: Alternative, after: Alternative): ChangedQuantity[] {
  const rows = new Map<string, ChangedQuantity>();
  for (const { item, spec, unit, quantity } of before.plan.takeoff)
    rows.set(keyOf(item, spec), { item, spec, unit, before: quantity, after: 0 });
  for (const { item, spec, unit, quantity } of after.plan.takeoff) {
    const was = rows.get(keyOf(item, spec));
    rows.set(keyOf(item, spec), was ? { ...was, after: quantity } : { item, spec, unit, before: 0, after: quantity });
  }
  return [...rows.values()].filter((row) => Math.abs(row.before - row.after) > 1e-9 * Math.max(1, row.before));
}

function notIn(these: readonly Finding[], others: readonly Finding[]): Finding[] {
  const known = new Set(others.map(({ rule, about, severity }) => [severity, rule, ...about].join('\n')));
  return these.filter(({ rule, about, severity }) => !known.has([severity, rule, ...about].join('\n')));
}
