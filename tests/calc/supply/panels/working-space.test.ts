import { describe, expect, test } from 'vitest';
import { CALC_KINDS } from '../../../../calc/cli/kinds/index.ts';
import { workingNeeds } from '../../../../calc/supply/panels/working-needs.ts';
import { NEC_2023 } from '../../../../calc/tables/nec-2023/nec-2023.ts';
import { explained } from '../../../../calc/words/explain.ts';
import { equipmentFindings } from '../../../../routing/checks/equipment/equipment-findings.ts';
import type { Finding } from '../../../../routing/site/rules/finding.ts';
import type { Equipment, SiteFile } from '../../../../routing/site/site.ts';
import { toSite } from '../../../../routing/site/to-site.ts';
import { fleetYard } from '../../../bench/samples/fleet-yard.ts';

const board = (id: string, volts: number, at: readonly [number, number], rest: Partial<Equipment> = {}): Equipment => ({
  id,
  kind: 'panelboard',
  at: [...at],
  size: [3, 1, 6],
  entry: [...at, 6],
  volts,
  ...rest,
});

const found = (parts: Partial<SiteFile>): readonly Finding[] => {
  const site = toSite({ format: 'overrow/site', version: 1, units: 'ft', name: 'boards', ...parts } as SiteFile);
  return equipmentFindings(site, workingNeeds(site, NEC_2023));
};

/** A board at the origin, its face at y = -0.5 looking to -y, and something so many feet before it. */
const column = (off: number) => [{ id: 'C', at: [0, -0.5 - off - 0.5], size: [1, 1] }] as const;
const facing = (volts: number, off: number, rest: Partial<Equipment> = {}): Equipment =>
  board('Q', volts, [0, -0.5 - off - 0.5], { rotation: 180, ...rest });

describe('depth by volts to ground and by what stands opposite: Table 110.26(A)(1)', () => {
  test('two boards face to face at 480 V, 277 V to ground, need 4 ft; 3.2 ft are found, at 208 V they do', () => {
    const both = found({ equipment: [board('P', 480, [0, 0]), facing(480, 3.2)] });
    expect(both.map(({ about, value, limit }) => [about, value, limit])).toEqual([
      [['P', 'Q'], expect.closeTo(3.2, 9), 4],
      [['Q', 'P'], expect.closeTo(3.2, 9), 4],
    ]);
    expect(both[0]!.source).toContain('277 V to ground, condition 3');
    expect(found({ equipment: [board('P', 480, [0, 0]), facing(480, 4)] })).toEqual([]);
    expect(found({ equipment: [board('P', 208, [0, 0]), facing(208, 3.2)] })).toEqual([]);
  });

  test('a column or a wall is grounded: 3 1/2 ft at 480 V, 3 ft at 208 V', () => {
    expect(found({ equipment: [board('P', 480, [0, 0])], columns: [...column(3.2)] })).toMatchObject([{ limit: 3.5 }]);
    expect(found({ equipment: [board('P', 480, [0, 0])], columns: [...column(3.5)] })).toEqual([]);
    expect(found({ equipment: [board('P', 208, [0, 0])], columns: [...column(3.2)] })).toEqual([]);
    const outline = [
      [-5, -6],
      [5, -6],
      [5, -3.7],
      [-5, -3.7],
    ] as [number, number][];
    const wall = { id: 'W', outline, blocks: ['equipment' as const] };
    expect(found({ equipment: [board('P', 480, [0, 0])], keepouts: [wall] })).toMatchObject([{ limit: 3.5 }]);
  });

  test('the back of a board, and a transformer, are grounded parts', () => {
    const beside = (rest: Partial<Equipment>) =>
      found({ equipment: [board('P', 480, [0, 0]), facing(480, 3.7, rest)] }).filter(({ about }) => about[0] === 'P');
    expect(beside({})).toMatchObject([{ limit: 4 }]);
    expect(beside({ rotation: 0 })).toEqual([]);
    expect(beside({ kind: 'transformer', primaryVolts: 480, secondaryVolts: 208 })).toEqual([]);
  });

  test('a parked car is neither: 3 ft', () => {
    const stall = (off: number) => [{ id: 'S', at: [0, -0.5 - off], width: 9, depth: 18, heading: 270 }] as const;
    expect(found({ equipment: [board('P', 480, [0, 0])], stalls: [...stall(3.1)] })).toEqual([]);
    expect(found({ equipment: [board('P', 480, [0, 0])], stalls: [...stall(2.9)] })).toMatchObject([{ limit: 3 }]);
  });

  test('240 V of three wires has no grounded line: 240 V to ground', () => {
    expect(found({ equipment: [board('P', 240, [0, 0])], columns: [...column(3.2)] })).toMatchObject([{ limit: 3.5 }]);
    const single = board('P', 240, [0, 0], { phases: 1 });
    expect(found({ equipment: [single], columns: [...column(3.2)] })).toEqual([]);
  });

  test('a transformer goes by the higher of its sides', () => {
    const t = board('T', 208, [0, 0], { kind: 'transformer', primaryVolts: 480, secondaryVolts: 208 });
    expect(found({ equipment: [t], columns: [...column(3.2)] })).toMatchObject([{ limit: 3.5 }]);
  });

  test('a condition that the site gives holds in place of the drawn one', () => {
    const at = (condition: 1 | 2 | 3) => board('P', 480, [0, 0], { condition });
    expect(found({ equipment: [at(3)], columns: [...column(3.7)] })).toMatchObject([{ limit: 4 }]);
    expect(found({ equipment: [at(1)], columns: [...column(3.2)] })).toEqual([]);
  });
});

describe('a depth that the site gives', () => {
  test('of 1 ft on every piece of the yard fails wherever it stands', () => {
    const file = fleetYard();
    const equipment = file.equipment!.map((one) => ({ ...one, workingSpace: 1 }));
    const findings = found({ ...file, equipment });
    expect(findings.map(({ about, value, limit }) => [about[0], value, limit])).toEqual(
      ['SVC', 'SE1', 'T1', 'SB1', 'P1', 'P2'].map((id) => [id, 1, 3]),
    );
    expect(findings[0]!.says).toContain('1\' 0" deep and is to be 3\' 0"');
    expect(found(file)).toEqual([]);
  });

  test('is held against the condition that is drawn, and one that is more stands', () => {
    const at = (workingSpace: number) => board('P', 480, [0, 0], { workingSpace });
    expect(found({ equipment: [at(3)], columns: [...column(3.3)] }).map(({ limit }) => limit)).toEqual([3.5, 3.5]);
    expect(found({ equipment: [at(3)], columns: [...column(8)] })).toEqual([]);
    expect(found({ equipment: [at(5)], columns: [...column(4.5)] })).toMatchObject([{ limit: 5 }]);
  });
});

describe('a depth in metres', () => {
  test('that is the least one to the millimetre is enough; one less by two is not', () => {
    const at = (workingSpace: number) =>
      found({ units: 'm', equipment: [board('P', 208, [0, 0], { workingSpace, size: [0.5, 0.2, 1.8] })] });
    expect(at(0.914)).toEqual([]);
    expect(at(0.912)).toMatchObject([{ limit: 3 }]);
  });
});

describe('two entrances: 110.26(C)(2)', () => {
  const large = (rest: Partial<Equipment> = {}) =>
    board('MSB', 480, [0, 0], { kind: 'switchboard', size: [10, 2, 7], busAmps: 4000, ...rest });
  const opposite = { id: 'C', at: [0, -6], size: [1, 1] } as const;
  const atEnd = { id: 'E', at: [6, -2], size: [1, 1] } as const;
  const about = (parts: Partial<SiteFile>) =>
    found(parts)
      .filter(({ source }) => source.includes('(C)(2)'))
      .map((finding) => finding.about);

  test('something at an end and something within twice the depth', () => {
    expect(about({ equipment: [large()], columns: [opposite, atEnd] })).toEqual([['MSB', 'E']]);
    expect(about({ equipment: [large()], columns: [atEnd] })).toEqual([]);
    expect(about({ equipment: [large()], columns: [opposite] })).toEqual([]);
  });

  test('not below 1200 A, and not to 6 ft of width', () => {
    const columns = [opposite, atEnd];
    expect(about({ equipment: [large({ busAmps: 1000 })], columns })).toEqual([]);
    const narrow = { ...atEnd, at: [4, -2] as [number, number] };
    expect(about({ equipment: [large({ size: [6, 2, 7] })], columns: [opposite, narrow] })).toEqual([]);
    expect(about({ equipment: [large({ size: [6.5, 2, 7] })], columns: [opposite, narrow] })).toHaveLength(1);
  });
});

describe('calc working-space', () => {
  const depth = (voltsToGround: number, condition: number): unknown => {
    const { result } = explained((tell) => CALC_KINDS.get('working-space')!({ voltsToGround, condition }, tell));
    return result.ok ? (result.value as { depth: number }).depth : result.errors[0]!.place;
  };
  test.each([
    // Table 110.26(A)(1): 0 to 150, 151 to 600, 601 to 1000 V to ground.
    [120, 3, 3, 3],
    [150, 3, 3, 3],
    [277, 3, 3.5, 4],
    [600, 3, 3.5, 4],
    [601, 3, 4, 5],
    [1000, 3, 4, 5],
  ])('%d V: %d, %d, %d ft', (volts, ...depths) => {
    expect([1, 2, 3].map((condition) => depth(volts, condition))).toEqual(depths);
  });
  test('past 1000 V the table ends', () => expect(depth(7200, 1)).toBe('voltsToGround'));
});
