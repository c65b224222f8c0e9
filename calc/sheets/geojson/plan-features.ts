import { feederRoutesOf } from '../../../routing/network/feeder-routes.ts';
import { byId } from '../../../routing/site/look-up.ts';
import { fromFeet } from '../../../routing/site/numbers/units.ts';
import type { Feeder, Site } from '../../../routing/site/site.ts';
import type { Plan } from '../../plan/plan-shape.ts';
import type { Feature, PlaceOf, WrittenPosition } from './feature.ts';

/**
 * What the plan puts on a site, as features: each circuit along its run, each conduit with its size and circuits, each
 * feeder along its way or straight where it has none, each junction box and handhole. Lengths in the site's units.
 */
export function planFeatures(site: Site, plan: Plan, place: PlaceOf): Feature[] {
  const length = (feet: number | null): number | null => (feet === null ? null : fromFeet(feet, site.units));
  const { units } = site;
  return [
    ...circuitFeatures(site, plan, place, length),
    ...plan.conduits.flatMap((conduit) =>
      along(`conduit ${conduit.id}`, conduit.path.map(place), {
        list: 'conduits',
        units,
        name: conduit.id,
        method: conduit.method,
        tradeSize: conduit.tradeSize === null ? null : `${conduit.tradeSize} in`,
        length: length(conduit.length),
        fillPercent: conduit.fillPercent,
        circuits: conduit.circuits,
        from: conduit.from,
        to: conduit.to,
      }),
    ),
    ...feederFeatures(site, plan, place, length),
    ...boxFeatures(site, plan, place),
  ];
}

type LengthOf = (feet: number | null) => number | null;

function circuitFeatures(site: Site, plan: Plan, place: PlaceOf, length: LengthOf): Feature[] {
  const circuits = new Map(plan.circuits.map((circuit) => [circuit.charger, circuit]));
  return plan.runs.flatMap((run) => {
    const circuit = circuits.get(run.charger);
    return along(`circuit ${run.charger}`, run.path.map(place), {
      list: 'circuits',
      units: site.units,
      charger: run.charger,
      drop: run.drop,
      from: run.from,
      runLength: length(run.length),
      conductorLength: length(run.conductorLength),
      ...(circuit && {
        breakerAmps: circuit.breakerAmps,
        phases: circuit.phases,
        conductor: `${circuit.conductor.size} ${circuit.conductor.metal} ${circuit.conductor.insulation}`,
        grounding: circuit.grounding.size,
        branchDropPercent: circuit.branchDropPercent,
        conduits: circuit.conduits,
      }),
    });
  });
}

function feederFeatures(site: Site, plan: Plan, place: PlaceOf, length: LengthOf): Feature[] {
  const equipment = byId(site.equipment);
  const routes = new Map(feederRoutesOf(site).routes.map(({ feeder, way }) => [feeder, way]));
  const solved = new Map(plan.supply.feeders.map((one) => [one.id, one]));
  const pointsOf = ({ id, from, to }: Feeder): WrittenPosition[] => {
    const way = routes.get(id);
    if (way) return way.path.map(place);
    return [from, to].flatMap((end) => {
      const one = equipment.get(end);
      return one ? [place(one.entry)] : [];
    });
  };
  return site.feeders.flatMap((feeder) => {
    const { id, from, to, conductor, raceway, existing = false } = feeder;
    return along(`feeder ${id}`, pointsOf(feeder), {
      list: 'ways',
      units: site.units,
      name: id,
      from,
      to,
      isWayDrawn: routes.has(id),
      existing,
      size: conductor.size,
      sets: conductor.sets,
      metal: conductor.metal,
      insulation: conductor.insulation,
      method: raceway,
      length: length(solved.get(id)?.length ?? feeder.length ?? null),
      breakerAmps: solved.get(id)?.breakerAmps,
      dropPercent: solved.get(id)?.dropPercent,
    });
  });
}

/** Pull points and drops are elements of the site, and features of their own; these are what the plan adds. */
function boxFeatures(site: Site, plan: Plan, place: PlaceOf): Feature[] {
  const handholes = byId(plan.handholes);
  return plan.boxes
    .filter(({ kind }) => kind === 'junction')
    .map(
      ({ id, at, box, conduits, volume }): Feature => ({
        type: 'Feature',
        id: `box ${id}`,
        geometry: { type: 'Point', coordinates: place(at) },
        properties: {
          list: 'boxes',
          units: site.units,
          name: id,
          conduits,
          size: handholes.get(id)?.size ?? box,
          cubicInches: volume,
          elevation: fromFeet(at[2], site.units),
        },
      }),
    );
}

/** Nothing where it has no two points that are apart. */
function along(id: string, coordinates: WrittenPosition[], properties: Feature['properties']): Feature[] {
  const apart = coordinates.filter(([x, y], i) => {
    const last = coordinates[i - 1];
    return last === undefined || last[0] !== x || last[1] !== y;
  });
  if (apart.length < 2) return [];
  return [{ type: 'Feature', id, geometry: { type: 'LineString', coordinates: apart }, properties }];
}
