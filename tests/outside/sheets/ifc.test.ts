import { beforeAll, describe, expect, test } from 'vitest';
import * as WebIfc from 'web-ifc';
import { ifc } from '../../../calc/sheets/ifc/ifc.ts';
import { fromFeet } from '../../../routing/site/numbers/units.ts';
import { offGrid } from '../../../routing/site/place/grid-frame.ts';
import type { Point2, SiteFile } from '../../../routing/site/site.ts';
import { nastyLot, plannedSample } from './planned-samples.ts';

type Record = { [name: string]: Record } & { value: number & string };

// Read back by web-ifc, a reader that is not ours.
describe('the IFC file, read by another program', () => {
  const { site, planned } = plannedSample('library-lot');
  const api = new WebIfc.IfcAPI();
  let model = -1;
  beforeAll(async () => {
    await api.Init();
    model = api.OpenModel(ifc(site, planned));
  });
  const all = (type: number): { Name: { value: string }; GlobalId: { value: string }; expressID: number }[] => {
    const ids = api.GetLineIDsWithType(model, type);
    return Array.from({ length: ids.size() }, (_, i) => api.GetLine(model, ids.get(i)));
  };

  test('is IFC 4', () => {
    expect(api.GetModelSchema(model)).toBe('IFC4');
  });
  test('has the conduits, circuits, boxes, outlets and boards of the plan by name', () => {
    const names = (type: number): string[] => all(type).map(({ Name }) => Name.value);
    expect(names(WebIfc.IFCCABLECARRIERSEGMENT)).toEqual(planned.conduits.map(({ id }) => id));
    expect(names(WebIfc.IFCCABLESEGMENT)).toEqual([
      ...site.feeders.map(({ id }) => id),
      ...planned.runs.map(({ charger }) => charger),
    ]);
    const junctions = planned.boxes.filter(({ kind }) => kind === 'junction');
    expect(junctions.length).toBeGreaterThan(0);
    expect(names(WebIfc.IFCJUNCTIONBOX)).toEqual([
      ...site.pullpoints.map(({ id }) => id),
      ...junctions.map(({ id }) => id),
      ...site.drops.map(({ id }) => `${id} box`),
    ]);
    expect(names(WebIfc.IFCELECTRICAPPLIANCE)).toEqual(site.chargers.map(({ id }) => id));
    expect(names(WebIfc.IFCCABLECARRIERFITTING)).toHaveLength(
      planned.conduits.reduce((sum, { bends }) => sum + bends, 0),
    );
    expect(names(WebIfc.IFCOUTLET)).toEqual(site.drops.map(({ id }) => id));
    expect(names(WebIfc.IFCELECTRICDISTRIBUTIONBOARD)).toEqual(['SVC', 'SE1', 'P1']);
    expect(names(WebIfc.IFCSPACE)).toHaveLength(site.stalls.length);
  });
  test('gives every thing a shape and an id of its own', () => {
    let meshes = 0;
    api.StreamAllMeshes(model, () => {
      meshes++;
    });
    const products = [
      WebIfc.IFCCABLECARRIERSEGMENT,
      WebIfc.IFCCABLESEGMENT,
      WebIfc.IFCJUNCTIONBOX,
      WebIfc.IFCOUTLET,
      WebIfc.IFCELECTRICAPPLIANCE,
      WebIfc.IFCCABLECARRIERFITTING,
      WebIfc.IFCELECTRICDISTRIBUTIONBOARD,
      WebIfc.IFCCOLUMN,
      WebIfc.IFCBEAM,
    ].flatMap(all);
    // Spaces are not meshed by this reader.
    expect(meshes).toBe(products.length);
    const ids = products.map(({ GlobalId }) => GlobalId.value);
    expect(new Set(ids).size).toBe(ids.length);
    for (const id of ids) expect(id).toMatch(/^[0-3][0-9A-Za-z_$]{21}$/);
  });
  test('carries the length of each circuit', () => {
    const lengths = all(WebIfc.IFCPROPERTYSINGLEVALUE as number)
      .map((line) => line as unknown as { Name: { value: string }; NominalValue: { value: number } })
      .filter(({ Name }) => Name.value === 'ConductorLength')
      .map(({ NominalValue }) => NominalValue.value);
    expect(lengths).toHaveLength(planned.runs.length);
    lengths.forEach((length, i) => {
      expect(length).toBeCloseTo(planned.runs[i]?.conductorLength as number, 6);
    });
  });
  test('takes names as text', () => {
    const nasty = nastyLot();
    const opened = api.OpenModel(ifc(nasty.site, nasty.planned));
    expect(api.GetAllLines(opened).size()).toBe(api.GetAllLines(model).size());
  });

  const opened = (change: (file: SiteFile) => SiteFile) => {
    const { site: changed, planned: plan } = plannedSample('library-lot', change);
    const id = api.OpenModel(ifc(changed, plan));
    const lines = (type: number): Record[] => {
      const ids = api.GetLineIDsWithType(id, type);
      return Array.from({ length: ids.size() }, (_, i) => api.GetLine(id, ids.get(i), true));
    };
    return { site: changed, lines };
  };
  const list = (record: Record | undefined): Record[] => record as unknown as Record[];
  const pair = (coordinates: Record | undefined): Point2 => [list(coordinates)[0]!.value, list(coordinates)[1]!.value];

  /** Where a point of a placement lies, through the placements that it refers to. */
  function placed(placement: Record | null, [x, y]: Point2): Point2 {
    if (placement === null) return [x, y];
    const { Location, RefDirection } = placement.RelativePlacement!;
    const [ox, oy] = pair(Location!.Coordinates);
    const [cos, sin] = RefDirection ? pair(RefDirection.DirectionRatios) : [1, 0];
    return placed(placement.PlacementRelTo ?? null, [ox + x * cos - y * sin, oy + x * sin + y * cos]);
  }

  test.each([
    ['square to the site', {}],
    ['turned and moved', { rotation: 33, origin: [12.5, -7.25] }],
    ['turned the other way', { rotation: -118.4, origin: [0, 3] }],
  ] as const)('has the gridlines by their labels, %s, each where it stands', (_, frame) => {
    const lot = opened((file) => ({ ...file, gridlines: { ...file.gridlines, ...frame } as never }));
    const [grid, ...more] = lot.lines(WebIfc.IFCGRID);
    expect(more).toEqual([]);
    for (const [axes, lines, which] of [
      [grid!.UAxes, lot.site.gridlines.x, 0],
      [grid!.VAxes, lot.site.gridlines.y, 1],
    ] as const) {
      expect(list(axes).map(({ AxisTag }) => AxisTag!.value)).toEqual(lines.map(({ label }) => label));
      list(axes).forEach(({ AxisCurve, SameSense }, i) => {
        expect((SameSense as Record).value).toBeTruthy();
        const ends = list(AxisCurve!.Points).map(({ Coordinates }) =>
          placed(grid!.ObjectPlacement!, pair(Coordinates)),
        );
        expect(ends).toHaveLength(2);
        // On the line through where it meets the first of the others, the way that they are apart from one another.
        const { at } = lines[i]!;
        const [p, q] = [offGrid(lot.site.gridlines, which === 0 ? [at, 0] : [0, at]), ends] as const;
        const turn = ((lot.site.gridlines.rotation ?? 0) * Math.PI) / 180;
        const normal = which === 0 ? [Math.cos(turn), Math.sin(turn)] : [-Math.sin(turn), Math.cos(turn)];
        const scale = fromFeet(1, lot.site.units);
        for (const [x, y] of q) {
          const off = (x / scale - p[0]) * normal[0]! + (y / scale - p[1]) * normal[1]!;
          expect(Math.abs(off)).toBeLessThan(1e-6);
        }
        expect(Math.hypot(q[1]![0] - q[0]![0], q[1]![1] - q[0]![1])).toBeGreaterThan(16 * scale);
      });
    }
  });

  test('of a metric site has them in metres', () => {
    const lot = opened((file) => ({
      ...file,
      units: 'm',
      gridlines: {
        x: [
          { label: '1', at: 0 },
          { label: '2', at: 9.144 },
        ],
        y: [{ label: 'A', at: 2.5 }],
      },
    }));
    const [grid] = lot.lines(WebIfc.IFCGRID);
    const start = ({ AxisCurve }: Record): Point2 => pair(list(AxisCurve!.Points)[0]!.Coordinates);
    expect(start(list(grid!.UAxes)[1]!)[0]).toBeCloseTo(9.144, 6);
    expect(start(list(grid!.VAxes)[0]!)[1]).toBeCloseTo(2.5, 6);
  });

  test('leaves lines of one way as annotations, for a grid has both', () => {
    const lot = opened((file) => ({ ...file, gridlines: { x: file.gridlines!.x ?? [], y: [] } }));
    expect(lot.lines(WebIfc.IFCGRID)).toEqual([]);
    const names = lot.lines(WebIfc.IFCANNOTATION).map(({ Name }) => Name!.value);
    expect(names).toEqual(lot.site.gridlines.x.map(({ label }) => label));
  });

  test('places everything within the site, each by a placement of its own, and contains all of it', () => {
    const { lines, site: lot } = opened((file) => file);
    const [ground] = lines(WebIfc.IFCSITE);
    const products = [
      WebIfc.IFCGRID,
      WebIfc.IFCCABLECARRIERSEGMENT,
      WebIfc.IFCCABLESEGMENT,
      WebIfc.IFCJUNCTIONBOX,
      WebIfc.IFCOUTLET,
      WebIfc.IFCELECTRICAPPLIANCE,
      WebIfc.IFCCABLECARRIERFITTING,
      WebIfc.IFCELECTRICDISTRIBUTIONBOARD,
      WebIfc.IFCCOLUMN,
      WebIfc.IFCBEAM,
      WebIfc.IFCSPACE,
    ].flatMap(lines);
    const id = (record: Record): number => (record as unknown as { expressID: number }).expressID;
    const placements = products.map(({ ObjectPlacement }) => ObjectPlacement!);
    for (const { PlacementRelTo } of placements) expect(id(PlacementRelTo!)).toBe(id(ground!.ObjectPlacement!));
    expect(new Set(placements.map(id)).size).toBe(products.length);
    const contained = lines(WebIfc.IFCRELCONTAINEDINSPATIALSTRUCTURE).flatMap(({ RelatedElements }) =>
      list(RelatedElements).map(id),
    );
    expect(contained.sort()).toEqual(
      products
        .slice(0, products.length - lot.stalls.length)
        .map(id)
        .sort(),
    );
  });
});
