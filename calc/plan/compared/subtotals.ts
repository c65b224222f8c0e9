import { kept } from '../../../routing/kept/kept.ts';
import { addTo } from '../../../routing/lists/grouping.ts';
import { REACH } from '../../../routing/propose/rows/row-way.ts';
import { wholeRows } from '../../../routing/propose/rows/rows-of.ts';
import type { Site } from '../../../routing/site/site.ts';
import type { CostRow } from '../../takeoff/bid/cost.ts';
import { partsOfRow } from '../../takeoff/bid/cost-parts.ts';
import { sumOf } from '../../takeoff/bid/money.ts';
import { phaseOf } from '../../takeoff/phases.ts';
import type { Plan } from '../plan-shape.ts';
import type { Alternative } from './comparison.ts';

/** Ways in which a bill is summed. */
export const SUBTOTALS = ['system', 'phase', 'panel', 'area'] as const;
export type SubtotalBy = (typeof SUBTOTALS)[number];

export interface Subtotal {
  readonly name: string;
  readonly material: number;
  readonly labor: number;
  readonly hours: number;
  readonly cost: number;
}

/** What more than one panel, or more than one row of stalls, has a part in. */
export const SHARED = 'shared';

/**
 * The bill by system, by phase of the work, by the panel that feeds it, or by the row of stalls that it serves: all add up
 * to the same, to the cent. An element that several panels or rows share, or that is none's, is under `shared`.
 */
export function subtotals({ site, plan, cost }: Alternative, by: SubtotalBy): readonly Subtotal[] {
  // These go by the row, whatever it is made of.
  if (by === 'system' || by === 'phase') {
    const place = placesIn({ site, plan }, by);
    return summed(cost.rows.map((row) => ({ name: place(row, ''), ...row })));
  }
  const place = placesIn({ site, plan }, by);
  return summed(cost.rows.flatMap((row) => partsOfRow(row).map((part) => ({ name: place(row, part.of), ...part }))));
}

/** Where a part of a row belongs, in one of the ways in which a bill is summed. */
export function placesIn(
  { site, plan }: Pick<Alternative, 'site' | 'plan'>,
  by: SubtotalBy,
): (row: Pick<CostRow, 'item' | 'system'>, element: string) => string {
  if (by === 'system') return ({ system }) => system;
  if (by === 'phase') return ({ item }) => phaseOf(item);
  const placed = by === 'panel' ? panelOf(plan, site) : areaOf(plan, site);
  return (_, element) => placed.get(element) ?? SHARED;
}

function summed(parts: readonly Omit<Subtotal, 'cost'>[]): readonly Subtotal[] {
  const groups = new Map<string, Omit<Subtotal, 'cost'>[]>();
  for (const part of parts) {
    addTo(groups, part.name, part);
  }
  return [...groups].map(([name, of]): Subtotal => {
    const material = sumOf(of.map((part) => part.material));
    const labor = sumOf(of.map((part) => part.labor));
    const hours = of.reduce((sum, part) => sum + part.hours, 0);
    return { name, material, labor, hours, cost: sumOf([material, labor]) };
  });
}

type Places = ReadonlyMap<string, string>;

/** Where each element belongs: by what its chargers have in common, by itself where it is equipment or a feeder. */
function placesOf(plan: Plan, site: Site, ofCharger: Places): Map<string, string> {
  const places = new Map<string, string>();
  const put = (id: string, name: string | undefined): void => {
    if (name === undefined) return;
    const so = places.get(id);
    places.set(id, so === undefined || so === name ? name : SHARED);
  };
  for (const { id, drop } of site.chargers) {
    put(id, ofCharger.get(id));
    put(drop, ofCharger.get(id));
  }
  for (const { id, from, to, circuits, raceways } of plan.conduits)
    for (const charger of circuits)
      for (const one of new Set([id, from, to, ...raceways])) put(one, ofCharger.get(charger));
  return places;
}

/** The panel of each element; equipment is its own, a feeder that of what it feeds. */
const panelOf = kept((plan: Plan, site: Site): Places => {
  const places = placesOf(plan, site, new Map(plan.runs.map(({ charger, from }) => [charger, from])));
  for (const { id, to } of site.feeders) places.set(id, to);
  for (const { id, from } of site.loads) places.set(id, from);
  for (const { id } of site.equipment) places.set(id, id);
  return places;
});

/** The row of stalls of each element, named by its first and last; what serves several rows is shared. */
const areaOf = kept((plan: Plan, site: Site): Places => {
  const { stalls, chargers } = site;
  const depth = Math.max(0, ...stalls.map((stall) => stall.depth));
  const label = new Map(stalls.map((stall) => [stall.id, stall.label ?? stall.id]));
  const rowOf = new Map<string, string>();
  for (const row of wholeRows(stalls, new Set(stalls.map(({ id }) => id)), REACH * depth)) {
    const [first, last] = [row[0]!, row.at(-1)!].map((id) => label.get(id)!);
    for (const id of row) rowOf.set(id, first === last ? `stall ${first}` : `stalls ${first} to ${last}`);
  }
  const ofCharger = new Map<string, string>();
  for (const { id, stalls: served } of chargers) {
    const rows = new Set(served.map((stall) => rowOf.get(stall) ?? SHARED));
    ofCharger.set(id, rows.size === 1 ? [...rows][0]! : SHARED);
  }
  const places = placesOf(plan, site, ofCharger);
  for (const { id } of site.equipment) places.set(id, SHARED);
  return places;
});
