import { describe, expect, test } from 'vitest';
import { equipmentFindings } from '../../../routing/checks/equipment/equipment-findings.ts';
import { workingSpaceOf, workingSpaceSize } from '../../../routing/site/place/working-space.ts';
import type { Equipment, SiteFile, Stall } from '../../../routing/site/site.ts';
import { LEAST_ALONE, LEAST_SPACE, panel, siteOf } from '../network/sites.ts';

// NEC 110.26(A): depth from Table 110.26(A)(1); 30 in wide or the equipment, 6 1/2 ft high or the equipment, from memory.
describe('the working space of a piece of equipment', () => {
  test('lies before its front, which faces -y until it is turned', () => {
    const p1 = panel('P1', [10, 0, 6], { size: [3, 1, 6], workingSpace: 3.5 });
    expect(workingSpaceOf(p1, LEAST_SPACE)).toEqual([
      [8.5, -4],
      [11.5, -4],
      [11.5, -0.5],
      [8.5, -0.5],
    ]);
    // Turned a quarter counter-clockwise the front faces +x.
    expect(workingSpaceOf({ ...p1, rotation: 90 }, LEAST_SPACE)).toEqual([
      [14, -1.5],
      [14, 1.5],
      [10.5, 1.5],
      [10.5, -1.5],
    ]);
    expect(workingSpaceOf({ ...p1, rotation: 180 }, LEAST_SPACE)).toEqual([
      [11.5, 4],
      [8.5, 4],
      [8.5, 0.5],
      [11.5, 0.5],
    ]);
  });
  test('is at least 30 in wide and 6 1/2 ft high', () => {
    expect(workingSpaceSize(panel('P1', [0, 0, 6], { size: [1.5, 1, 4] }), LEAST_SPACE)).toEqual({
      width: 2.5,
      depth: 3,
      height: 6.5,
    });
    expect(workingSpaceSize(panel('P1', [0, 0, 6], { size: [8, 1, 7.5] }), LEAST_SPACE)).toEqual({
      width: 8,
      depth: 3,
      height: 7.5,
    });
  });
  test('is taken as 3 ft deep where the site gives none, save for the source', () => {
    expect(workingSpaceSize(panel('T1', [0, 0, 6], { kind: 'transformer' }), LEAST_SPACE)!.depth).toBe(3);
    expect(workingSpaceSize(panel('S', [0, 0, 6], { kind: 'source' }), LEAST_SPACE)).toBeNull();
    expect(workingSpaceOf(panel('S', [0, 0, 6], { kind: 'source' }), LEAST_SPACE)).toBeNull();
    expect(workingSpaceSize(panel('S', [0, 0, 6], { kind: 'source', workingSpace: 4 }), LEAST_SPACE)!.depth).toBe(4);
  });
});

describe('working space that is obstructed', () => {
  const p1 = panel('P1', [0, 0, 6], { workingSpace: 3.5 });
  const found = (parts: Partial<SiteFile>, own: Equipment = p1) =>
    equipmentFindings(siteOf({ equipment: [own], ...parts }), LEAST_ALONE);
  const stall = (id: string, x: number, y: number): Stall => ({ id, at: [x, y], width: 9, depth: 18, heading: 270 });

  test('by a stall in front says how much is clear', () => {
    const [finding, ...more] = found({ stalls: [stall('S1', 0, -2), stall('S2', 40, 0)] });
    expect(more).toEqual([]);
    expect(finding).toMatchObject({
      severity: 'fail',
      rule: 'working-space',
      about: ['P1', 'S1'],
      value: 1.5,
      limit: 3.5,
      unit: 'ft',
    });
    expect(finding!.says).toContain(`a car in stall S1: 1' 6" is clear`);
    expect(finding!.source).toBe('code: depth as the site gives it for P1; width and height code from memory');
  });
  test('by a stall that ends where it begins is not', () => {
    expect(found({ stalls: [stall('S1', 0, -4)] })).toEqual([]);
    expect(found({ stalls: [stall('S1', 6, 0)] })).toEqual([]);
  });
  test('by a column, turned or not', () => {
    expect(found({ columns: [{ id: 'C1', at: [1, -2], size: [1, 1] }] })).toMatchObject([
      { about: ['P1', 'C1'], value: 1 },
    ]);
    // On its corner, the near corner stands half a diagonal from the middle.
    const turned = found({ columns: [{ id: 'C1', at: [1, -2], size: [1, 1], rotation: 45 }] });
    expect(turned[0]!.value).toBeCloseTo(1.5 - Math.SQRT1_2, 9);
    expect(found({ columns: [{ id: 'C1', at: [2, -2], size: [1, 1] }] })).toEqual([]);
  });
  test('by other equipment, each told of the other where they face', () => {
    const facing = panel('P2', [0, -3, 6], { rotation: 180 });
    const both = equipmentFindings(siteOf({ equipment: [p1, facing] }), LEAST_ALONE);
    expect(both.map(({ about, value }) => [about, value])).toEqual([
      [['P1', 'P2'], 2],
      [['P2', 'P1'], 2],
    ]);
    expect(both[1]!.says).toContain('as the site gives none');
  });
  test('by a keep-out that blocks equipment, at the height of a person', () => {
    const outline = [
      [-1, -3],
      [1, -3],
      [1, -2],
      [-1, -2],
    ] as const;
    const keepout = { id: 'K1', outline, blocks: ['equipment'] } as const;
    expect(found({ keepouts: [keepout] })).toMatchObject([{ about: ['P1', 'K1'], value: 1.5 }]);
    expect(found({ keepouts: [{ ...keepout, from: 6.5 }] })).toEqual([]);
    expect(found({ keepouts: [{ ...keepout, blocks: ['raceway'] }] })).toEqual([]);
  });
  test('by several names them, and tells the least that is clear', () => {
    const columns = [-1, 0, 1].map((x, i) => ({
      id: `C${i}`,
      at: [x, -1.5 - i / 2] as const,
      size: [0.2, 0.2] as const,
    }));
    const [finding] = found({ columns, stalls: [stall('S1', 0, -3), stall('S2', 2, -3)] });
    expect(finding!.about).toEqual(['P1', 'S1', 'S2', 'C0', 'C1', 'C2']);
    expect(finding!.value).toBeCloseTo(0.9, 9);
    expect(finding!.says).toContain('and 2 more');
  });
  test('is found again when a column moves, and cleared when it moves away', () => {
    const site = siteOf({ equipment: [p1], columns: [{ id: 'C1', at: [30, 0], size: [1, 1] }] });
    const at = (x: number) =>
      equipmentFindings({ ...site, columns: [{ ...site.columns[0]!, at: [x, -2] }] }, LEAST_ALONE);
    expect([equipmentFindings(site, LEAST_ALONE), at(0).length, at(30).length, at(0.5).length]).toEqual([[], 1, 0, 1]);
  });
});
