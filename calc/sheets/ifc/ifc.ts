import { fromFeet } from '../../../routing/site/numbers/units.ts';
import type { Site } from '../../../routing/site/site.ts';
import type { Plan } from '../../plan/plan-shape.ts';
import { CAUTIONS } from '../../words/cautions.ts';
import { ByteText } from '../byte-text.ts';
import { boundaryRecords } from './boundaries.ts';
import { addGeoreference, compoundAngle, trueNorth } from './georeference.ts';
import { gridRecords } from './grid.ts';
import { guidOf } from './guid.ts';
import { branchProducts, openingProducts } from './products/branches.ts';
import type { Product } from './products/product.ts';
import { structureProducts } from './products/structure.ts';
import { supplyProducts } from './products/supply.ts';
import { addPropertySet, addQuantities } from './property-sets.ts';
import { placedIn, type ShapeRoom } from './shapes.ts';
import { of, real, type StepValue, type StepWriter, stepText, stepWriter, word } from './step.ts';
import { addSystems } from './systems.ts';
import { unitAssignment } from './units.ts';

/**
 * The site and what is installed on it as IFC 4 (ISO 16739-1) in a STEP file, its bytes: conduits and their bends as cable carriers,
 * circuits and feeders as cables, boxes, outlets, chargers, boards and transformers as the standard's own classes, with
 * its sets of properties and the plan's figures (`Overrow_Plan`); systems and circuits with ports from source to sink;
 * columns, beams, stalls, gridlines and boundaries beside them. In the site's units; on the ground where the site says
 * where it lies.
 */
export function ifc(site: Site, plan: Plan): Uint8Array<ArrayBuffer> {
  const writer = stepWriter();
  const { ground, ...room } = headRecords(writer, site);
  const stalls: StepValue[] = [];
  const parts: StepValue[] = [...gridRecords(room, site), ...boundaryRecords(room, site)].map(of);
  const records = new Map<string, number>();
  const products = [
    ...structureProducts(site, room),
    ...supplyProducts(site, plan, room),
    ...branchProducts(plan, room),
    ...openingProducts(site, plan, room),
  ];
  for (const product of products) {
    const record = addProduct(room, product);
    records.set(product.id, record);
    (product.entity === 'IFCSPACE' ? stalls : parts).push(of(record));
  }
  if (stalls.length > 0)
    writer.add('IFCRELAGGREGATES', stepText(guidOf('site stalls')), null, null, null, of(ground), stalls);
  if (parts.length > 0)
    writer.add(
      'IFCRELCONTAINEDINSPATIALSTRUCTURE',
      stepText(guidOf('site parts')),
      null,
      null,
      null,
      parts,
      of(ground),
    );
  addSystems(room, site, plan, records, ground);
  const head = [
    'ISO-10303-21;',
    'HEADER;',
    "FILE_DESCRIPTION(('ViewDefinition [ReferenceView_V1.2]'),'2;1');",
    "FILE_NAME('','',(''),(''),'','','');",
    "FILE_SCHEMA(('IFC4'));",
    'ENDSEC;',
    'DATA;',
  ];
  const whole = new ByteText();
  whole.add(`${head.join('\n')}\n`);
  whole.addAll(writer.records);
  whole.add('ENDSEC;\nEND-ISO-10303-21;\n');
  return whole.bytes;
}

/** Project, site and the frame of their shapes. */
function headRecords(writer: StepWriter, site: Site): ShapeRoom & { readonly ground: number } {
  const { georef, units } = site;
  const assigned = unitAssignment(writer, units);
  const origin = writer.add('IFCCARTESIANPOINT', [real(0), real(0), real(0)]);
  const axes = writer.add('IFCAXIS2PLACEMENT3D', of(origin), null, null);
  const context = writer.add(
    'IFCGEOMETRICREPRESENTATIONCONTEXT',
    null,
    stepText('Model'),
    { whole: 3 },
    real(1e-5),
    of(axes),
    trueNorth(writer, georef),
  );
  if (georef) addGeoreference(writer, context, georef, units);
  const placement = writer.add('IFCLOCALPLACEMENT', null, of(axes));
  const project = writer.add(
    'IFCPROJECT',
    stepText(guidOf(`project ${site.name}`)),
    null,
    stepText(site.name),
    stepText(CAUTIONS),
    null,
    null,
    null,
    [of(context)],
    of(assigned),
  );
  const ground = writer.add(
    'IFCSITE',
    stepText(guidOf(`site ${site.name}`)),
    null,
    stepText(site.name),
    null,
    null,
    of(placement),
    null,
    null,
    word('ELEMENT'),
    georef ? compoundAngle(georef.lat) : null,
    georef ? compoundAngle(georef.lon) : null,
    null,
    null,
    null,
  );
  writer.add('IFCRELAGGREGATES', stepText(guidOf('project site')), null, null, null, of(project), [of(ground)]);
  return { writer, context, placement, ground, scaled: (feet) => fromFeet(feet, units) };
}

function addProduct(room: ShapeRoom, product: Product): number {
  const { entity, id, name, type, what, shape, facts, sets = [], quantities } = product;
  const { writer } = room;
  const named = [stepText(guidOf(id)), null, stepText(name), null, what === undefined ? null : stepText(what)];
  const placed = [of(placedIn(room)), of(shape)];
  const kind = type === null ? null : word(type);
  const record =
    entity === 'IFCSPACE'
      ? writer.add(entity, ...named, ...placed, null, word('ELEMENT'), kind, null)
      : writer.add(entity, ...named, ...placed, stepText(name), kind);
  for (const set of [{ name: 'Overrow_Plan', properties: facts }, ...sets]) {
    const guids = { guid: guidOf(`set ${set.name} ${id}`), relation: guidOf(`has ${set.name} ${id}`) };
    addPropertySet(writer, record, guids, set);
  }
  if (quantities)
    addQuantities(
      writer,
      record,
      { guid: guidOf(`quantities ${id}`), relation: guidOf(`has quantities ${id}`) },
      quantities,
    );
  return record;
}
