import type { Finding } from '../../../routing/site/rules/finding.ts';
import { greatestLine, ratingOf } from '../../supply/panels/demand.ts';
import { ampsAt, placeOfLoad, placesBeyond, servicesOf } from '../../supply/service/services.ts';
import { ampsText, type SupplyFacts } from '../../supply/supply-facts.ts';

/**
 * Services that feed something already: its measured demand and the new load against their rating, and whether a measured
 * demand may be gone by.
 */
export const serviceFindings = (facts: SupplyFacts): readonly Finding[] =>
  facts.tree.nodes.flatMap(({ parent, equipment }, root) =>
    parent >= 0 || equipment.existingAmps === undefined ? [] : measured(facts, root, equipment.existingAmps),
  );

function measured(facts: SupplyFacts, root: number, existingAmps: number): Finding[] {
  const { tree, model, state, chargers, loads, tables } = facts;
  const { id } = tree.nodes[root]!.equipment;
  const { factor, source } = tables.existingDemand;
  const services = servicesOf(tree, root);
  const drawing = [...chargers, ...loads].flatMap(({ from }) => tree.placeOf.get(from) ?? []);
  const at = placeOfLoad(tree, services, root, drawing);
  const about = [id, ...services.map((place) => tree.nodes[place]!.equipment.id)];
  const behind = placesBeyond(tree, root);
  const generates = loads.some(
    ({ from, va, generation }) => generation === true && va > 0 && behind.has(tree.placeOf.get(from) ?? -1),
  );
  const generation: Finding[] = generates
    ? [
        {
          severity: 'warn',
          rule: 'service-load',
          about,
          says: `The load of ${id} goes by a measured demand of ${ampsText(existingAmps)}, and generation is drawn behind it: a measured demand may not be gone by where generation or storage has shaved it. A demand measured before it was there, or the load of what stands already calculated.`,
          value: existingAmps,
          unit: 'A',
          source,
        },
      ]
    : [];
  const ratings = services.flatMap((place) => {
    const rating = ratingOf(tree, place);
    return rating === undefined ? [] : [ampsAt(tree, rating, place, at)];
  });
  if (ratings.length === 0 || ratings.length < services.length) return generation;
  const bus = model.loadBus[at]!;
  const fresh = Math.max(greatestLine(state.demand.out, bus), greatestLine(state.unitDemand.out, bus));
  const existing = ampsAt(tree, existingAmps, root, at);
  const value = factor * existing + fresh;
  const limit = ratings.reduce((sum, one) => sum + one, 0);
  if (value <= limit * (1 + 1e-9)) return generation;
  return [
    {
      severity: 'fail',
      rule: 'service-load',
      about,
      says: `${factor * 100}% of the measured demand of what ${id} feeds already, ${ampsText(factor * existing)}, and the new load, ${ampsText(fresh)}, come to ${ampsText(value)} at ${tree.nodes[at]!.equipment.id}; the service is rated ${ampsText(limit)}. Energy management that holds the chargers lower, fewer of them, or a larger service.`,
      value,
      limit,
      unit: 'A',
      source,
    },
    ...generation,
  ];
}
