import { beforeAll, describe, expect, test } from 'vitest';
import * as WebIfc from 'web-ifc';
import { ifc } from '../../../calc/sheets/ifc.ts';
import { nastyLot, plannedSample } from './planned-samples.ts';

// Read back by web-ifc, a reader that is not ours.
describe('the IFC file, read by another program', () => {
  const { site, planned } = plannedSample('library-lot');
  const api = new WebIfc.IfcAPI();
  let model = -1;
  beforeAll(async () => {
    await api.Init();
    model = api.OpenModel(new TextEncoder().encode(ifc(site, planned)));
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
    expect(names(WebIfc.IFCCABLESEGMENT)).toEqual(planned.runs.map(({ charger }) => charger));
    expect(names(WebIfc.IFCJUNCTIONBOX)).toHaveLength(site.drops.length + site.pullpoints.length);
    expect(names(WebIfc.IFCOUTLET)).toEqual(site.drops.map(({ id }) => id));
    expect(names(WebIfc.IFCELECTRICDISTRIBUTIONBOARD)).toEqual(['SVC', 'P1']);
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
    const opened = api.OpenModel(new TextEncoder().encode(ifc(nasty.site, nasty.planned)));
    expect(api.GetAllLines(opened).size()).toBe(api.GetAllLines(model).size());
  });
});
