import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import * as WebIfc from 'web-ifc';
import { ifc } from '../../../calc/sheets/ifc/ifc.ts';
import { lonLatOf } from '../../../routing/site/place/georef.ts';
import { utmOf } from '../../../routing/site/place/utm.ts';
import { plannedSample } from './planned-samples.ts';

type Line = { readonly [name: string]: Line } & { readonly value: number & string; readonly expressID: number };

/** Attributes of each entity of IFC 4 in their order, as the library's own declarations have them. */
function attributesOfIfc4(): ReadonlyMap<string, number> {
  const text = readFileSync(join(import.meta.dirname, '../../../node_modules/web-ifc/ifc-schema.d.ts'), 'utf8');
  const from = text.indexOf('namespace IFC4 {');
  const schema = text.slice(from, text.indexOf('namespace IFC4X3 {'));
  expect(from).toBeGreaterThan(0);
  const counts = new Map<string, number>();
  for (const [, name, parameters] of schema.matchAll(/class (Ifc\w+) extends [^{]+\{[^}]*?constructor\(([^\n]*)\);/g))
    counts.set(name!.toUpperCase(), parameters!.trim() === '' ? 0 : parameters!.split(/, (?=\w+: )/).length);
  return counts;
}

/** Entities of a STEP file with the number of attributes that each record has. */
function recordsOf(text: string): { readonly entity: string; readonly count: number }[] {
  return [...text.matchAll(/^#\d+=(IFC\w+)\((.*)\);$/gm)].map(([, entity, inside]) => {
    let [depth, count, quoted] = [0, 1, false];
    for (const sign of inside!) {
      if (sign === "'") quoted = !quoted;
      else if (quoted) continue;
      else if (sign === '(') depth++;
      else if (sign === ')') depth--;
      else if (sign === ',' && depth === 0) count++;
    }
    return { entity: entity!, count };
  });
}

describe.each(['library-lot', 'library-pedestals', 'fleet-yard'])('the model of %s', (name) => {
  const { site, planned } = plannedSample(name);
  const bytes = ifc(site, planned);
  const text = new TextDecoder().decode(bytes);
  const api = new WebIfc.IfcAPI();
  let model = -1;
  beforeAll(async () => {
    await api.Init();
    model = api.OpenModel(bytes);
  });
  const all = (type: number): Line[] => {
    const ids = api.GetLineIDsWithType(model, type);
    return Array.from({ length: ids.size() }, (_, i) => api.GetLine(model, ids.get(i)));
  };
  const names = (lines: readonly Line[]) => lines.map(({ Name }) => Name!.value);
  const list = (line: Line | undefined): Line[] => line as unknown as Line[];

  test('has as many attributes in each record as IFC 4 gives its entity, and each id once', () => {
    const counts = attributesOfIfc4();
    const records = recordsOf(text);
    expect(records.length).toBeGreaterThan(500);
    for (const { entity, count } of records)
      if (entity !== 'IFCSIUNIT') expect([entity, count]).toEqual([entity, counts.get(entity)]);
    const ids = [...text.matchAll(/^#\d+=IFC\w+\('([0-3][0-9A-Za-z_$]{21})'/gm)].map(([, id]) => id);
    expect(new Set(ids).size).toBe(ids.length);
  });

  test('has feeders, chargers and all that is on the plan, in number', () => {
    expect(all(WebIfc.IFCCABLESEGMENT)).toHaveLength(site.feeders.length + planned.circuits.length);
    expect(all(WebIfc.IFCELECTRICAPPLIANCE)).toHaveLength(site.chargers.length);
    expect(all(WebIfc.IFCCABLECARRIERSEGMENT)).toHaveLength(planned.conduits.length);
    const junctions = planned.boxes.filter(({ kind }) => kind === 'junction').length;
    expect(all(WebIfc.IFCJUNCTIONBOX)).toHaveLength(site.drops.length + site.pullpoints.length + junctions);
  });

  test('has a system for each piece of equipment that feeds, with a circuit for each charger and feeder', () => {
    const feeding = new Set([...site.feeders.map(({ from }) => from), ...planned.runs.map(({ from }) => from)]);
    expect(new Set(names(all(WebIfc.IFCDISTRIBUTIONSYSTEM)))).toEqual(feeding);
    const circuits = all(WebIfc.IFCDISTRIBUTIONCIRCUIT);
    expect(names(circuits)).toEqual([
      ...site.feeders.map(({ id }) => id),
      ...planned.circuits.map(({ charger }) => charger),
    ]);
    const inSystems = all(WebIfc.IFCRELAGGREGATES).flatMap(({ RelatedObjects }) => list(RelatedObjects));
    const circuitIds = new Set(circuits.map(({ expressID }) => expressID));
    expect(inSystems.filter(({ value }) => circuitIds.has(value))).toHaveLength(circuits.length);
    // A circuit holds its own conduits, box and charger.
    const [{ charger, conduits }] = planned.circuits as [(typeof planned.circuits)[number]];
    const circuit = circuits.find(({ Name }) => Name!.value === charger)!;
    const group = all(WebIfc.IFCRELASSIGNSTOGROUP).find(
      ({ RelatingGroup }) => RelatingGroup!.value === circuit.expressID,
    )!;
    const members = list(group.RelatedObjects).map(({ value }) => api.GetLine(model, value).Name.value as string);
    expect(members).toEqual(expect.arrayContaining([charger, ...conduits]));
  });

  test('leads from the source to every charger, port by port', () => {
    const owner = new Map<number, number>();
    for (const { RelatingObject, RelatedObjects } of all(WebIfc.IFCRELNESTS))
      for (const { value } of list(RelatedObjects)) owner.set(value, RelatingObject!.value);
    expect(owner.size).toBe(all(WebIfc.IFCDISTRIBUTIONPORT).length);
    const feeds = new Map<number, number[]>();
    for (const { RelatingPort, RelatedPort } of all(WebIfc.IFCRELCONNECTSPORTS)) {
      const [a, b] = [api.GetLine(model, RelatingPort!.value), api.GetLine(model, RelatedPort!.value)] as [Line, Line];
      if (a.PredefinedType!.value !== 'CABLE') continue;
      expect([a.FlowDirection!.value, b.FlowDirection!.value]).toEqual(['SOURCE', 'SINK']);
      const from = owner.get(a.expressID)!;
      feeds.set(from, [...(feeds.get(from) ?? []), owner.get(b.expressID)!]);
    }
    const fed = new Set(site.feeders.map(({ to }) => to));
    const sources = new Set(site.equipment.flatMap(({ id }) => (fed.has(id) ? [] : [id])));
    const boards = [WebIfc.IFCELECTRICDISTRIBUTIONBOARD, WebIfc.IFCTRANSFORMER, WebIfc.IFCSWITCHINGDEVICE].flatMap(all);
    const reached = new Set<number>();
    const way = boards.filter(({ Name }) => sources.has(Name!.value)).map(({ expressID }) => expressID);
    for (let next = way.pop(); next !== undefined; next = way.pop()) {
      if (reached.has(next)) continue;
      reached.add(next);
      way.push(...(feeds.get(next) ?? []));
    }
    for (const { expressID, Name } of all(WebIfc.IFCELECTRICAPPLIANCE))
      expect([Name!.value, reached.has(expressID)]).toEqual([Name!.value, true]);
  });

  test('has the sets of the standard beside its own', () => {
    expect(new Set(names(all(WebIfc.IFCPROPERTYSET)))).toEqual(
      new Set([
        'Overrow_Plan',
        'Pset_SpaceCommon',
        'Pset_ColumnCommon',
        ...(site.members.length > 0 ? ['Pset_BeamCommon'] : []),
        'Pset_ElectricDistributionBoardTypeCommon',
        ...(site.equipment.some(({ kind }) => kind === 'transformer') ? ['Pset_TransformerTypeCommon'] : []),
        ...(site.equipment.some(({ kind }) => kind === 'disconnect') ? ['Pset_SwitchingDeviceTypeCommon'] : []),
        'Pset_ElectricalDeviceCommon',
        'Pset_CableSegmentTypeCommon',
        'Pset_CableSegmentOccurrence',
        'Pset_CableCarrierSegmentTypeCommon',
        'Pset_CableCarrierSegmentTypeConduitSegment',
        'Pset_CableCarrierFittingTypeCommon',
        'Pset_JunctionBoxTypeCommon',
        'Pset_OutletTypeCommon',
        'Pset_ElectricApplianceTypeCommon',
      ]),
    );
  });

  test('says where on the ground it lies: a corner of the lot by its map conversion is where its degrees put it', () => {
    const georef = { lon: -98.5, lat: 39.8, bearing: 12.5 };
    const opened = api.OpenModel(ifc({ ...site, georef }, planned));
    const one = (type: number): Line => api.GetLine(opened, api.GetLineIDsWithType(opened, type).get(0), true);
    const conversion = one(WebIfc.IFCMAPCONVERSION);
    expect(conversion.TargetCRS!.Name!.value).toBe('EPSG:32614');
    const { Eastings, Northings, XAxisAbscissa, XAxisOrdinate, Scale } = conversion;
    const [a, o, k] = [XAxisAbscissa!.value, XAxisOrdinate!.value, Scale!.value];
    const unit = site.units === 'm' ? 0.3048 : 1;
    for (const [x, y] of [
      [0, 0],
      [200, 0],
      [0, 150],
    ] as const) {
      const { easting, northing } = utmOf(...lonLatOf(georef, [x, y]));
      expect(Math.abs(Eastings!.value + k * unit * (a * x - o * y) - easting)).toBeLessThan(0.01);
      expect(Math.abs(Northings!.value + k * unit * (o * x + a * y) - northing)).toBeLessThan(0.01);
    }
    const angles = /=IFCSITE\(.*?,\.ELEMENT\.,\(([-\d,]+)\),\(([-\d,]+)\),/.exec(
      new TextDecoder().decode(ifc({ ...site, georef }, planned)),
    )!;
    const degrees = (angle: string): number =>
      angle.split(',').reduce((sum, part, i) => sum + Number(part) / [1, 60, 3600, 3600e6][i]!, 0);
    expect(degrees(angles[1]!)).toBeCloseTo(39.8, 9);
    expect(degrees(angles[2]!)).toBeCloseTo(-98.5, 9);
  });
});

// Flinders Peak in zone 55 (Geoscience Australia, GDA technical manual, section 5; GRS 80, which differs by less than a millimetre).
test('a published place in its UTM zone', () => {
  const { zone, isSouth, easting, northing, convergence, scale } = utmOf(
    144 + 25 / 60 + 29.5244 / 3600,
    -(37 + 57 / 60 + 3.7203 / 3600),
  );
  expect([zone, isSouth]).toEqual([55, true]);
  expect(easting).toBeCloseTo(273_741.297, 2);
  expect(northing).toBeCloseTo(5_796_489.777, 2);
  expect(scale).toBeCloseTo(1.000_230_56, 8);
  expect(Math.abs(convergence)).toBeCloseTo(1 + 35 / 60 + 3.65 / 3600, 5);
});
