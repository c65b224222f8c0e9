import { feederRoutesOf } from '../../../../routing/network/feeder-routes.ts';
import { byId } from '../../../../routing/site/look-up.ts';
import type { Equipment, Point3, Site } from '../../../../routing/site/site.ts';
import { footprintOf } from '../../../../routing/standing/footprint.ts';
import type { Plan } from '../../../plan/plan-shape.ts';
import { amps, common, type PropertySet, volts } from '../property-sets.ts';
import { prism, rod, type ShapeRoom } from '../shapes.ts';
import type { Product } from './product.ts';

/** Half of the thickness that a feeder is drawn with, feet. */
const FEEDER = 0.06;

/** Equipment of the supply as boards, transformers and switches, and the feeders between them as cables. */
export const supplyProducts = (site: Site, plan: Plan, room: ShapeRoom): Product[] => [
  ...site.equipment.map(
    (one): Product => ({
      ...classOf(one),
      id: `equipment ${one.id}`,
      name: one.id,
      shape: prism(room, footprintOf(one), 0, one.size[2]),
      facts: { Kind: one.kind, Volts: one.volts, BusAmps: one.busAmps, MainAmps: one.mainAmps, Kva: one.kva },
      sets: equipmentSets(one),
    }),
  ),
  ...feeders(site, plan, room),
];

const CLASSES: Readonly<Record<Equipment['kind'], { readonly entity: string; readonly type: string }>> = {
  source: { entity: 'IFCELECTRICDISTRIBUTIONBOARD', type: 'SWITCHBOARD' },
  service: { entity: 'IFCELECTRICDISTRIBUTIONBOARD', type: 'SWITCHBOARD' },
  panelboard: { entity: 'IFCELECTRICDISTRIBUTIONBOARD', type: 'DISTRIBUTIONBOARD' },
  switchboard: { entity: 'IFCELECTRICDISTRIBUTIONBOARD', type: 'SWITCHBOARD' },
  transformer: { entity: 'IFCTRANSFORMER', type: 'VOLTAGE' },
  disconnect: { entity: 'IFCSWITCHINGDEVICE', type: 'SWITCHDISCONNECTOR' },
  inverter: { entity: 'IFCTRANSFORMER', type: 'INVERTER' },
};

const classOf = ({ kind }: Equipment) => CLASSES[kind];

const COMMON: Readonly<Record<string, string>> = {
  IFCELECTRICDISTRIBUTIONBOARD: 'Pset_ElectricDistributionBoardTypeCommon',
  IFCTRANSFORMER: 'Pset_TransformerTypeCommon',
  IFCSWITCHINGDEVICE: 'Pset_SwitchingDeviceTypeCommon',
};

function equipmentSets(one: Equipment): readonly PropertySet[] {
  const { entity } = classOf(one);
  const transformed =
    one.kind === 'transformer'
      ? {
          PrimaryVoltage: volts(one.primaryVolts),
          SecondaryVoltage: volts(one.secondaryVolts),
          PrimaryApparentPower:
            one.kva === undefined ? undefined : ({ measure: 'IFCPOWERMEASURE', value: one.kva * 1000 } as const),
        }
      : {};
  return [
    { name: COMMON[entity]!, properties: { ...common(one.kind, one.existing), ...transformed } },
    {
      name: 'Pset_ElectricalDeviceCommon',
      properties: {
        RatedCurrent: amps(one.busAmps ?? one.mainAmps),
        NumberOfPoles:
          one.phases === undefined ? undefined : { measure: 'IFCINTEGER', value: one.phases === 3 ? 3 : 2 },
        HasProtectiveEarth: true,
      },
    },
  ];
}

function feeders(site: Site, plan: Plan, room: ShapeRoom): Product[] {
  const equipment = byId(site.equipment);
  const routes = new Map(feederRoutesOf(site).routes.map(({ feeder, way }) => [feeder, way]));
  const solved = byId(plan.supply.feeders);
  return site.feeders.flatMap((feeder): Product[] => {
    const { id, from, to, conductor, raceway, breakerAmps, existing = false } = feeder;
    const way = routes.get(id);
    const ends = [from, to].flatMap((end): Point3[] => {
      const one = equipment.get(end);
      return one ? [one.entry] : [];
    });
    const path: readonly Point3[] = way ? way.path : ends;
    if (path.length < 2) return [];
    const feet = solved.get(id)?.length ?? feeder.length;
    const length = feet === undefined ? undefined : room.scaled(feet);
    return [
      {
        entity: 'IFCCABLESEGMENT',
        id: `feeder ${id}`,
        name: id,
        type: 'CABLESEGMENT',
        shape: rod(room, path, FEEDER),
        facts: {
          From: from,
          To: to,
          Length: length,
          WayDrawn: way !== null && way !== undefined,
          Conductor: `${conductor.size} ${conductor.metal} ${conductor.insulation}`,
          Sets: conductor.sets,
          Raceway: raceway,
          BreakerAmps: breakerAmps,
          DropPercent: solved.get(id)?.dropPercent,
        },
        sets: [
          { name: 'Pset_CableSegmentTypeCommon', properties: common('feeder', existing) },
          {
            name: 'Pset_CableSegmentOccurrence',
            properties: { NumberOfParallelCircuits: { measure: 'IFCINTEGER', value: conductor.sets } },
          },
          { name: 'Pset_ElectricalDeviceCommon', properties: { RatedCurrent: amps(breakerAmps) } },
        ],
        ...(length !== undefined && {
          quantities: { name: 'Qto_CableSegmentBaseQuantities', lengths: { Length: length } },
        }),
      },
    ];
  });
}
