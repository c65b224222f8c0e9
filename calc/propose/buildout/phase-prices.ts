import type { Alternative } from '../../plan/compared/comparison.ts';
import { partsOfRow } from '../../takeoff/bid/cost-parts.ts';
import { dealtOut, sumOf } from '../../takeoff/bid/money.ts';
import { buildPhases, chargerPhases, phasesOf } from './build-phases.ts';

/** What a phase of a build-out costs, dollars of the bid. */
export interface PhasePrice {
  readonly phase: number;
  readonly price: number;
  /** Of that, empty conduits, boxes and hangers for circuits of later phases; the rest serves this one too. */
  readonly forLater: number;
}

/** What of a drop comes with its charger, not with the box. */
const WITH_CHARGER: ReadonlySet<string> = new Set(['retractor']);

/** The bid of a lot by the phases in which its parts are bought and laid: they add up to it, to the cent. */
export function phasePrices({ site, plan, cost }: Alternative): readonly PhasePrice[] {
  const phases = phasesOf(site);
  const laid = buildPhases(site, plan);
  const own = chargerPhases(site);
  const needed = new Map<string, number>();
  for (const { id, drop } of site.chargers)
    needed.set(drop, Math.min(needed.get(drop) ?? Number.POSITIVE_INFINITY, own.get(id)!));
  for (const { id, circuits } of plan.conduits) needed.set(id, Math.min(...circuits.map((one) => own.get(one) ?? 1)));
  const of = new Map(phases.map((phase) => [phase, { all: [] as number[], later: [] as number[] }]));
  for (const row of cost.rows)
    for (const part of partsOfRow(row)) {
      const wanted = needed.get(part.of) ?? laid.get(part.of) ?? 1;
      const phase = WITH_CHARGER.has(row.item) ? wanted : (laid.get(part.of) ?? 1);
      const sums = of.get(phase)!;
      sums.all.push(part.material, part.labor);
      if (wanted > phase) sums.later.push(part.material, part.labor);
    }
  const costs = phases.map((phase) => sumOf(of.get(phase)!.all));
  const prices = dealtOut(cost.price, costs);
  return phases.map((phase, i) => {
    const { later } = of.get(phase)!;
    const share = costs[i]! > 0 ? sumOf(later) / costs[i]! : 0;
    return { phase, price: prices[i]!, forLater: Math.round(100 * prices[i]! * share) / 100 };
  });
}
