import { ELEMENT_LISTS, type ElementList } from '../../../routing/site/kinds/kinds.ts';
import type { Finding } from '../../../routing/site/rules/finding.ts';
import type { Site } from '../../../routing/site/site.ts';
import { type PriceList, priceKey } from '../../prices/price-list.ts';
import { type ChangeOrder, changeOrder } from './change-order.ts';
import type { Alternative } from './comparison.ts';

/** An element that one version has and the other has not, or has otherwise. */
export interface ChangedElement {
  readonly list: ElementList;
  readonly id: string;
  readonly change: 'added' | 'removed' | 'moved' | 'changed';
  /** Numbers of the lines of the change order in which it, its circuits or their conduits have a part. */
  readonly lines: readonly number[];
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
  readonly order: ChangeOrder;
  readonly findings: { readonly gone: readonly Finding[]; readonly come: readonly Finding[] };
}

/** The change from one version of a site to another; with the list whose restocking is asked for, if it is. */
export function revision(
  before: Alternative,
  after: Alternative,
  asked: { readonly restocking: PriceList } | undefined = undefined,
): Revision {
  const order = changeOrder(before, after, asked);
  const linesOf = linesByElement(before, after, order);
  return {
    elements: ELEMENT_LISTS.flatMap((list) => changedElements(list, before.site, after.site)).map((one) => ({
      ...one,
      lines: linesOf(one.id),
    })),
    quantities: changedQuantities(before, after),
    cost: { before: before.cost.price, after: after.cost.price },
    order,
    findings: {
      gone: notIn(before.plan.findings, after.plan.findings),
      come: notIn(after.plan.findings, before.plan.findings),
    },
  };
}

/** The lines that an element has a part in: itself, and what lies on the way of its circuits in either version. */
function linesByElement(before: Alternative, after: Alternative, { lines }: ChangeOrder): (id: string) => number[] {
  const numbers = new Map<string, Set<number>>();
  for (const { number, of } of lines)
    for (const id of of) numbers.set(id, (numbers.get(id) ?? new Set<number>()).add(number));
  const besides = new Map<string, Set<string>>();
  const beside = (id: string, other: string): void => {
    besides.set(id, (besides.get(id) ?? new Set<string>()).add(other));
  };
  for (const { site, plan } of [before, after]) {
    const dropOf = new Map(site.chargers.map(({ id, drop }) => [id, drop]));
    for (const [charger, drop] of dropOf) beside(drop, charger);
    for (const { id, circuits, raceways } of plan.conduits) {
      for (const raceway of raceways) beside(raceway, id);
      for (const charger of circuits) {
        beside(charger, id);
        beside(dropOf.get(charger) ?? charger, id);
      }
    }
  }
  return (id) =>
    [...new Set([id, ...(besides.get(id) ?? [])].flatMap((one) => [...(numbers.get(one) ?? [])]))].sort(
      (a, b) => a - b,
    );
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

function changedElements(list: ElementList, before: Site, after: Site): Omit<ChangedElement, 'lines'>[] {
  const old = new Map((before[list] as readonly { readonly id: string }[]).map((one) => [one.id, one]));
  const now = new Map((after[list] as readonly { readonly id: string }[]).map((one) => [one.id, one]));
  const changed: Omit<ChangedElement, 'lines'>[] = [];
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
    rows.set(priceKey(item, spec), { item, spec, unit, before: quantity, after: 0 });
  for (const { item, spec, unit, quantity } of after.plan.takeoff) {
    const was = rows.get(priceKey(item, spec));
    rows.set(
      priceKey(item, spec),
      was ? { ...was, after: quantity } : { item, spec, unit, before: 0, after: quantity },
    );
  }
  return [...rows.values()].filter((row) => Math.abs(row.before - row.after) > 1e-9 * Math.max(1, row.before));
}

function notIn(these: readonly Finding[], others: readonly Finding[]): Finding[] {
  const known = new Set(others.map(({ rule, about, severity }) => [severity, rule, ...about].join('\n')));
  return these.filter(({ rule, about, severity }) => !known.has([severity, rule, ...about].join('\n')));
}
