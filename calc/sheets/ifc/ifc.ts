import { rectangleAt } from '../../../routing/plane/rectangle.ts';
import { fromFeet, METRES_PER_FOOT } from '../../../routing/site/numbers/units.ts';
import { stallRectangle } from '../../../routing/site/place/stall-rectangle.ts';
import type { Equipment, Point2, Point3, Site } from '../../../routing/site/site.ts';
import { footprintOf } from '../../../routing/standing/footprint.ts';
import type { Plan } from '../../plan/plan-shape.ts';
import { CAUTIONS } from '../../words/cautions.ts';
import { gridRecords } from './grid.ts';
import { guidOf } from './guid.ts';
import { racewayDiameterFeet } from './raceway-diameter.ts';
import { placedIn, prism, properties, rod, type ShapeRoom } from './shapes.ts';
import { of, real, type StepValue, stepWriter, text, word } from './step.ts';

type Facts = Readonly<Record<string, string | number | boolean | null | undefined>>;

interface Product {
  readonly entity: string;
  /** Kind and id, from which its global id is made. */
  readonly id: string;
  readonly name: string;
  readonly type: string | null;
  readonly shape: number;
  readonly facts: Facts;
  /** Attributes between the tag and the predefined type, or after it, where the class has them. */
  readonly after?: readonly StepValue[];
}

const BOX = 0.5;

/**
 * The site and what is installed on it as IFC 4 (ISO 16739-1) in a STEP file: conduits as cable carrier segments,
 * circuits as cable segments, boxes, outlets, boards and transformers as the standard's own classes, with the plan's
 * figures as properties; columns, beams, stalls and gridlines beside them. In the site's units.
 */
export function ifc(site: Site, plan: Plan): string {
  const writer = stepWriter();
  const units = unitAssignment(writer, site);
  const origin = writer.add('IFCCARTESIANPOINT', [real(0), real(0), real(0)]);
  const axes = writer.add('IFCAXIS2PLACEMENT3D', of(origin), null, null);
  const context = writer.add(
    'IFCGEOMETRICREPRESENTATIONCONTEXT',
    null,
    text('Model'),
    { whole: 3 },
    real(1e-5),
    of(axes),
    null,
  );
  const placement = writer.add('IFCLOCALPLACEMENT', null, of(axes));
  const project = writer.add(
    'IFCPROJECT',
    text(guidOf(`project ${site.name}`)),
    null,
    text(site.name),
    text(CAUTIONS),
    null,
    null,
    null,
    [of(context)],
    of(units),
  );
  const ground = writer.add(
    'IFCSITE',
    text(guidOf(`site ${site.name}`)),
    null,
    text(site.name),
    null,
    null,
    of(placement),
    null,
    null,
    word('ELEMENT'),
    null,
    null,
    null,
    null,
    null,
  );
  writer.add('IFCRELAGGREGATES', text(guidOf('project site')), null, null, null, of(project), [of(ground)]);
  const room: ShapeRoom = { writer, context, placement, scaled: (feet) => fromFeet(feet, site.units) };

  const stalls: StepValue[] = [];
  const parts: StepValue[] = gridRecords(room, site).map(of);
  for (const product of productsOf(site, plan, room)) {
    const { entity, id, name, type, shape, facts, after = [] } = product;
    const common = [text(guidOf(id)), null, text(name), null, null, of(placedIn(room)), of(shape)];
    const isSpace = entity === 'IFCSPACE';
    const record = isSpace
      ? writer.add(entity, ...common, null, word('ELEMENT'), type ? word(type) : null, null)
      : writer.add(entity, ...common, text(name), type ? word(type) : null, ...after);
    (isSpace ? stalls : parts).push(of(record));
    properties(room, record, { guid: guidOf(`set ${id}`), relation: guidOf(`has ${id}`), name: 'Overrow_Plan' }, facts);
  }
  if (stalls.length > 0)
    writer.add('IFCRELAGGREGATES', text(guidOf('site stalls')), null, null, null, of(ground), stalls);
  if (parts.length > 0)
    writer.add('IFCRELCONTAINEDINSPATIALSTRUCTURE', text(guidOf('site parts')), null, null, null, parts, of(ground));
  return [
    'ISO-10303-21;',
    'HEADER;',
    "FILE_DESCRIPTION(('ViewDefinition [ReferenceView_V1.2]'),'2;1');",
    "FILE_NAME('','',(''),(''),'','','');",
    "FILE_SCHEMA(('IFC4'));",
    'ENDSEC;',
    'DATA;',
    ...writer.lines,
    'ENDSEC;',
    'END-ISO-10303-21;',
    '',
  ].join('\n');
}

function unitAssignment(writer: ReturnType<typeof stepWriter>, site: Site): number {
  const metre = writer.add('IFCSIUNIT', '*', word('LENGTHUNIT'), null, word('METRE'));
  const angle = writer.add('IFCSIUNIT', '*', word('PLANEANGLEUNIT'), null, word('RADIAN'));
  if (site.units === 'm') return writer.add('IFCUNITASSIGNMENT', [of(metre), of(angle)]);
  const length = writer.add('IFCDIMENSIONALEXPONENTS', ...[1, 0, 0, 0, 0, 0, 0].map((whole) => ({ whole })));
  const factor = writer.add(
    'IFCMEASUREWITHUNIT',
    { typed: 'IFCLENGTHMEASURE', value: real(METRES_PER_FOOT) },
    of(metre),
  );
  const foot = writer.add('IFCCONVERSIONBASEDUNIT', of(length), word('LENGTHUNIT'), text('foot'), of(factor));
  return writer.add('IFCUNITASSIGNMENT', [of(foot), of(angle)]);
}

function productsOf(site: Site, plan: Plan, room: ShapeRoom): Product[] {
  const length = (feet: number): number => fromFeet(feet, site.units);
  const circuits = new Map(plan.circuits.map((circuit) => [circuit.charger, circuit]));
  const square = ([x, y]: readonly number[], side: number): readonly Point2[] =>
    rectangleAt([x as number, y as number], [side, side], 0);
  return [
    ...site.stalls.map(
      (stall): Product => ({
        entity: 'IFCSPACE',
        id: `stall ${stall.id}`,
        name: stall.label ?? stall.id,
        type: 'PARKING',
        shape: prism(room, stallRectangle(stall), 0, 0.01),
        facts: { Id: stall.id, Use: stall.use ?? 'standard' },
      }),
    ),
    ...site.columns.map(
      ({ id, at, size, rotation = 0, height = 10 }): Product => ({
        entity: 'IFCCOLUMN',
        id: `column ${id}`,
        name: id,
        type: 'COLUMN',
        shape: prism(room, rectangleAt(at, size, rotation), 0, height),
        facts: {},
      }),
    ),
    ...site.members.map(
      ({ id, from, to }): Product => ({
        entity: 'IFCBEAM',
        id: `member ${id}`,
        name: id,
        type: 'BEAM',
        shape: rod(room, [from, to], 0.25),
        facts: {},
      }),
    ),
    ...site.equipment.map(
      (one): Product => ({
        ...classOf(one),
        id: `equipment ${one.id}`,
        name: one.id,
        shape: prism(room, footprintOf(one), 0, one.size[2]),
        facts: { Kind: one.kind, Volts: one.volts, BusAmps: one.busAmps, MainAmps: one.mainAmps, Kva: one.kva },
      }),
    ),
    ...plan.conduits.map(
      (conduit): Product => ({
        entity: 'IFCCABLECARRIERSEGMENT',
        id: `conduit ${conduit.id}`,
        name: conduit.id,
        type: conduit.method === 'tray' ? 'CABLETRAYSEGMENT' : 'CONDUITSEGMENT',
        shape: rod(room, conduit.path as readonly Point3[], racewayDiameterFeet(conduit) / 2),
        facts: {
          Method: conduit.method,
          TradeSize: conduit.tradeSize,
          Length: length(conduit.length),
          FillPercent: conduit.fillPercent,
          Circuits: conduit.circuits.join(' '),
          From: conduit.from,
          To: conduit.to,
        },
      }),
    ),
    ...plan.runs.flatMap((run): Product[] => {
      const circuit = circuits.get(run.charger);
      if (!circuit || run.length === null || run.conductorLength === null) return [];
      return [
        {
          entity: 'IFCCABLESEGMENT',
          id: `circuit ${run.charger}`,
          name: run.charger,
          type: 'CABLESEGMENT',
          shape: rod(room, run.path, 0.02),
          facts: {
            From: run.from,
            Drop: run.drop,
            RunLength: length(run.length),
            ConductorLength: length(run.conductorLength),
            Conductor: `${circuit.conductor.size} ${circuit.conductor.metal} ${circuit.conductor.insulation}`,
            BreakerAmps: circuit.breakerAmps,
            Phases: circuit.phases,
            BranchDropPercent: circuit.branchDropPercent,
            Conduits: circuit.conduits.join(' '),
          },
        },
      ];
    }),
    ...site.pullpoints.map(
      ({ id, at }): Product => ({
        entity: 'IFCJUNCTIONBOX',
        id: `pull point ${id}`,
        name: id,
        type: 'POWER',
        shape: prism(room, square(at, BOX), at[2] - BOX / 2, BOX),
        facts: {},
      }),
    ),
    ...site.drops.flatMap((drop): Product[] => {
      const end = drop.retractor ?? drop.box;
      return [
        {
          entity: 'IFCJUNCTIONBOX',
          id: `box ${drop.id}`,
          name: `${drop.id} box`,
          type: 'POWER',
          shape: prism(room, square(drop.box, BOX), drop.box[2] - BOX / 2, BOX),
          facts: { Drop: drop.id },
        },
        {
          entity: 'IFCOUTLET',
          id: `outlet ${drop.id}`,
          name: drop.id,
          type: 'POWEROUTLET',
          shape: prism(room, square(end, BOX / 2), end[2] - BOX / 2, BOX / 2),
          facts: { Cord: length(drop.cord), Mount: drop.mount ?? 'overhead' },
        },
      ];
    }),
  ];
}

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
