import { expect, test } from 'vitest';
import * as WebIfc from 'web-ifc';
import { ifc } from '../../../calc/sheets/ifc/ifc.ts';
import type { SiteFile } from '../../../routing/site/site.ts';
import { NASTY, plannedSample } from './planned-samples.ts';

type Line = { readonly [name: string]: Line } & { readonly value: number & string; readonly expressID: number };

const BOUNDARIES: NonNullable<SiteFile['boundaries']> = [
  {
    id: 'BL1',
    path: [
      [-40, -30],
      [60, -30],
      [60.5, 61.25],
      [-40, -30],
    ],
    setback: 4.5,
  },
  {
    id: 'BL2',
    path: [
      [-40, -35],
      [60, -35],
    ],
    kind: 'right-of-way',
    name: NASTY[6]!,
  },
  {
    id: 'BL3',
    path: [
      [10, -30],
      [10, 60],
    ],
    kind: 'easement',
    name: '充電 easement',
    setback: 0,
  },
  {
    id: 'BL4',
    path: [
      [-40, -60],
      [0, -62],
      [60, -60],
    ],
    kind: 'street',
    name: 'Alder Street',
  },
];

/** The trade's word for each kind. */
const WORDS = ['property line', 'right-of-way line', 'easement line', 'street centerline'];

test.each(['ft', 'm'] as const)(
  'the IFC has each boundary where it lies, with its kind, as web-ifc reads it: %s',
  async (units) => {
    const { site, planned } = plannedSample('library-lot', (file) => ({ ...file, units, boundaries: BOUNDARIES }));
    const api = new WebIfc.IfcAPI();
    await api.Init();
    const model = api.OpenModel(ifc(site, planned));
    const all = (type: number): Line[] => {
      const ids = api.GetLineIDsWithType(model, type);
      return Array.from({ length: ids.size() }, (_, i) => api.GetLine(model, ids.get(i), true));
    };
    const list = (line: Line | undefined): Line[] => line as unknown as Line[];
    const lines = all(WebIfc.IFCANNOTATION);
    expect(lines).toHaveLength(site.boundaries.length);
    expect(lines.map(({ Name }) => Name!.value)).toEqual(BOUNDARIES.map(({ id }) => id));
    expect(lines.map(({ ObjectType }) => ObjectType!.value)).toEqual(WORDS);
    expect(new Set(lines.map(({ GlobalId }) => GlobalId!.value)).size).toBe(4);

    // Every shape is one open or closed line of the file's own numbers, in the placement of the site.
    const [ground] = all(WebIfc.IFCSITE);
    const paths = lines.map(({ Representation, ObjectPlacement }) => {
      expect(ObjectPlacement!.PlacementRelTo!.expressID).toBe(ground!.ObjectPlacement!.expressID);
      const [shape] = list(Representation!.Representations);
      const [set] = list(shape!.Items);
      const [curve, ...more] = list(set!.Elements);
      expect(more).toEqual([]);
      return list(curve!.Points).map(({ Coordinates }) => list(Coordinates).map(({ value }) => value as number));
    });
    paths.forEach((path, i) => {
      const wanted = BOUNDARIES[i]!.path;
      expect(path).toHaveLength(wanted.length);
      path.forEach((point, k) => {
        expect(point).toHaveLength(2);
        point.forEach((value, axis) => {
          expect(value).toBeCloseTo(wanted[k]![axis]!, 6);
        });
      });
    });

    const sets = all(WebIfc.IFCRELDEFINESBYPROPERTIES);
    const told = lines.map(({ expressID }) => {
      const [own, ...more] = sets.filter(({ RelatedObjects }) =>
        list(RelatedObjects).some((one) => one.expressID === expressID),
      );
      expect(more).toEqual([]);
      const properties = list(own!.RelatingPropertyDefinition!.HasProperties);
      return Object.fromEntries(properties.map(({ Name, NominalValue }) => [Name!.value, NominalValue!.value]));
    });
    expect(told).toEqual([
      { Kind: WORDS[0], Setback: expect.closeTo(4.5, 6) },
      { Kind: WORDS[1], Name: NASTY[6] },
      { Kind: WORDS[2], Name: '充電 easement', Setback: 0 },
      { Kind: WORDS[3], Name: 'Alder Street' },
    ]);
    const contained = all(WebIfc.IFCRELCONTAINEDINSPATIALSTRUCTURE).flatMap(({ RelatedElements }) =>
      list(RelatedElements).map(({ expressID }) => expressID),
    );
    for (const { expressID } of lines) expect(contained).toContain(expressID);
  },
);
