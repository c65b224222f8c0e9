import { bendsOf } from '../../../../routing/network/bends.ts';
import type { Point3, Site } from '../../../../routing/site/site.ts';
import type { Plan } from '../../../plan/plan-shape.ts';
import type { Conduit } from '../../../plan-file/branches.ts';
import { amps, common } from '../property-sets.ts';
import { prism, rod, type ShapeRoom } from '../shapes.ts';
import { BOX, type Product, squareAt } from './product.ts';

/** Half of the thickness that the conductors of a circuit are drawn with, feet. */
const WIRE = 0.02;
/** How far a bend reaches along either leg, diameters of the conduit. */
const BEND = 4;

/** Conduits as cable carriers with a fitting at each bend, and the conductors of each circuit as a cable. */
export function branchProducts(plan: Plan, room: ShapeRoom): Product[] {
  return [
    ...plan.conduits.flatMap((conduit) => [conduitProduct(conduit, room), ...bends(conduit, room)]),
    ...circuits(plan, room),
  ];
}

const isTray = ({ method }: Conduit): boolean => method === 'tray';

function conduitProduct(conduit: Conduit, room: ShapeRoom): Product {
  const length = room.scaled(conduit.length);
  const diameter = racewayDiameterFeet(conduit);
  return {
    entity: 'IFCCABLECARRIERSEGMENT',
    id: `conduit ${conduit.id}`,
    name: conduit.id,
    type: isTray(conduit) ? 'CABLETRAYSEGMENT' : 'CONDUITSEGMENT',
    shape: rod(room, conduit.path as readonly Point3[], diameter / 2),
    facts: {
      Method: conduit.method,
      TradeSize: conduit.tradeSize,
      Length: length,
      FillPercent: conduit.fillPercent,
      Circuits: conduit.circuits.join(' '),
      From: conduit.from,
      To: conduit.to,
    },
    sets: [
      { name: 'Pset_CableCarrierSegmentTypeCommon', properties: common(sizeOf(conduit)) },
      ...(isTray(conduit)
        ? []
        : [
            {
              name: 'Pset_CableCarrierSegmentTypeConduitSegment',
              properties: {
                ConduitShapeType: { listed: 'CIRCULAR' },
                NominalWidth: { measure: 'IFCLENGTHMEASURE', value: room.scaled(diameter) },
                NominalHeight: { measure: 'IFCLENGTHMEASURE', value: room.scaled(diameter) },
              },
            } as const,
          ]),
    ],
    quantities: { name: 'Qto_CableCarrierSegmentBaseQuantities', lengths: { Length: length } },
  };
}

const sizeOf = ({ method, tradeSize }: Conduit): string => (tradeSize === null ? method : `${method} ${tradeSize} in`);

/** A fitting over each bend of a conduit, that reaches a little way along both legs. */
function bends(conduit: Conduit, room: ShapeRoom): Product[] {
  const path = conduit.path as readonly Point3[];
  const diameter = racewayDiameterFeet(conduit);
  return bendsOf(path).map(({ at, degrees }, i): Product => {
    const corner = path[at]!;
    return {
      entity: 'IFCCABLECARRIERFITTING',
      id: `bend ${conduit.id} ${i + 1}`,
      name: `${conduit.id} bend ${i + 1}`,
      type: 'BEND',
      shape: rod(
        room,
        [towards(corner, path[at - 1]!, BEND * diameter), corner, towards(corner, path[at + 1]!, BEND * diameter)],
        0.55 * diameter,
      ),
      facts: { Conduit: conduit.id, Degrees: Math.round(degrees * 100) / 100 },
      sets: [{ name: 'Pset_CableCarrierFittingTypeCommon', properties: common(sizeOf(conduit)) }],
    };
  });
}

/** So many feet from one point to another, and no more than half of the way. */
function towards(from: Point3, to: Point3, feet: number): Point3 {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1], to[2] - from[2]);
  const share = length === 0 ? 0 : Math.min(0.5, feet / length);
  return [0, 1, 2].map((i) => from[i]! + share * (to[i]! - from[i]!)) as unknown as Point3;
}

function circuits(plan: Plan, room: ShapeRoom): Product[] {
  const byCharger = new Map(plan.circuits.map((circuit) => [circuit.charger, circuit]));
  return plan.runs.flatMap((run): Product[] => {
    const circuit = byCharger.get(run.charger);
    if (!circuit || run.length === null || run.conductorLength === null) return [];
    return [
      {
        entity: 'IFCCABLESEGMENT',
        id: `circuit ${run.charger}`,
        name: run.charger,
        type: 'CABLESEGMENT',
        shape: rod(room, run.path, WIRE),
        facts: {
          From: run.from,
          Drop: run.drop,
          RunLength: room.scaled(run.length),
          ConductorLength: room.scaled(run.conductorLength),
          Conductor: `${circuit.conductor.size} ${circuit.conductor.metal} ${circuit.conductor.insulation}`,
          BreakerAmps: circuit.breakerAmps,
          Phases: circuit.phases,
          BranchDropPercent: circuit.branchDropPercent,
          Conduits: circuit.conduits.join(' '),
        },
        sets: [
          { name: 'Pset_CableSegmentTypeCommon', properties: common('branch circuit') },
          {
            name: 'Pset_CableSegmentOccurrence',
            properties: {
              DesignAmbientTemperature: { measure: 'IFCTHERMODYNAMICTEMPERATUREMEASURE', value: circuit.ambientC },
              UserCorrectionFactor: circuit.factors.ambient * circuit.factors.bundling,
              CurrentCarryingCapasity: amps(circuit.ampacity),
            },
          },
        ],
        quantities: {
          name: 'Qto_CableSegmentBaseQuantities',
          lengths: { Length: room.scaled(run.conductorLength) },
        },
      },
    ];
  });
}

/** Boxes of drops, pull points and junctions, outlets that cords hang from, and chargers. */
export function openingProducts(site: Site, plan: Plan, room: ShapeRoom): Product[] {
  const handholes = new Map(plan.handholes.map((one) => [one.id, one]));
  const planned = new Map(plan.boxes.map((one) => [one.id, one]));
  const box = (id: string, key: string, name: string, at: Point3, facts: Product['facts']): Product => {
    const hole = handholes.get(id);
    const found = planned.get(id);
    const size = hole?.size ?? found?.box ?? null;
    return {
      entity: 'IFCJUNCTIONBOX',
      id: key,
      name,
      ...(hole ? { type: 'USERDEFINED', what: 'HANDHOLE' } : { type: 'POWER' }),
      shape: prism(room, squareAt(at, BOX), at[2] - BOX / 2, BOX),
      facts: {
        ...facts,
        Size: size,
        CubicInches: found?.volume,
        Conduits: found?.conduits.join(' '),
        Rating: hole?.rating,
      },
      sets: [{ name: 'Pset_JunctionBoxTypeCommon', properties: { ...common(size ?? 'box'), IsExternal: true } }],
    };
  };
  const circuits = new Map(plan.circuits.map((circuit) => [circuit.charger, circuit]));
  const drops = new Map(site.drops.map((drop) => [drop.id, drop]));
  const places = new Map<string, number>();
  return [
    ...site.pullpoints.map(({ id, at }) => box(id, `pull point ${id}`, id, at, {})),
    ...plan.boxes
      .filter(({ kind }) => kind === 'junction')
      .map(({ id, at }) => box(id, `junction ${id}`, id, at as Point3, {})),
    ...site.drops.flatMap((drop): Product[] => {
      const end = drop.retractor ?? drop.box;
      const { id, mount = 'overhead', cord } = drop;
      return [
        box(id, `box ${id}`, `${id} box`, drop.box, { Drop: id }),
        {
          entity: 'IFCOUTLET',
          id: `outlet ${id}`,
          name: id,
          type: 'POWEROUTLET',
          shape: prism(room, squareAt(end, BOX / 2), end[2] - BOX / 2, BOX / 2),
          facts: { Cord: room.scaled(cord), Mount: mount },
          sets: [{ name: 'Pset_OutletTypeCommon', properties: { ...common(mount), IsPluggableOutlet: true } }],
        },
      ];
    }),
    ...site.chargers.flatMap((charger): Product[] => {
      const drop = drops.get(charger.drop);
      if (!drop) return [];
      // Chargers of one drop stand over one another.
      const above = places.get(charger.drop) ?? 0;
      places.set(charger.drop, above + 1);
      const [x, y, z] = drop.box;
      return [
        {
          entity: 'IFCELECTRICAPPLIANCE',
          id: `charger ${charger.id}`,
          name: charger.id,
          type: 'USERDEFINED',
          what: 'EV CHARGER',
          shape: prism(room, squareAt([x, y], BOX), z + BOX * (0.6 + 1.1 * above), BOX),
          facts: {
            Drop: charger.drop,
            From: charger.from,
            Stalls: charger.stalls.join(' '),
            Amps: charger.amps,
            Volts: charger.volts,
            Phases: charger.phases,
            BreakerAmps: circuits.get(charger.id)?.breakerAmps,
          },
          sets: [
            { name: 'Pset_ElectricApplianceTypeCommon', properties: common('EV charger') },
            {
              name: 'Pset_ElectricalDeviceCommon',
              properties: {
                RatedCurrent: amps(charger.amps),
                NumberOfPoles: { measure: 'IFCINTEGER', value: charger.phases === 3 ? 3 : 2 },
                HasProtectiveEarth: true,
              },
            },
          ],
        },
      ];
    }),
  ];
}

/** Outside of a tray drawn as a rod, feet. */
const TRAY = 0.5;

/** Trade size of a conduit in feet, near enough its inside diameter for a model; a tray is drawn six inches thick. */
export function racewayDiameterFeet({ tradeSize }: Conduit): number {
  if (tradeSize === null) return TRAY;
  const inches = tradeSize.split('-').reduce((sum, part) => {
    const [over = 0, under = 1] = part.split('/').map(Number);
    return sum + over / under;
  }, 0);
  return inches / 12;
}
