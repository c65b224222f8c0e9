import { describe, expect, test } from 'vitest';
import { type Pulled, pullingNotes, tallestRise } from '../../../calc/checks/conduits/pulling-notes.ts';
import type { ConduitConductor } from '../../../calc/plan-file/branches.ts';
import { NEC_2023 } from '../../../calc/tables/nec-2023/nec-2023.ts';
import type { Point3 } from '../../../routing/site/site.ts';

const lines = (size: string, count = 3): ConduitConductor => ({ use: 'line', size, insulation: 'THHN', count });
const ground: ConduitConductor = { use: 'grounding', size: '8', insulation: 'THHN', count: 1 };

const BENT: readonly Point3[] = [
  [0, 0, 0],
  [50, 0, 0],
  [50, 50, 0],
];

const pulled = (more: Partial<Pulled> = {}): Pulled => ({
  what: () => 'Conduit P1-1.1',
  about: () => ['P1-1.1'],
  method: 'EMT',
  tradeSize: '1',
  path: BENT,
  conductors: [lines('3'), ground],
  metal: 'copper',
  ...more,
});

const notes = (more: Partial<Pulled>) => pullingNotes(pulled(more), NEC_2023, 'ft');

describe('three lines that may jam', () => {
  // 1 in. EMT is 1.049 in. inside (Table 4) and a 3 AWG THHN 0.352 in. across (Table 5): 2.98, between 2.8 and 3.2.
  test('are noted with their ratio', () => {
    expect(notes({})).toMatchObject([{ severity: 'note', rule: 'jam-ratio', about: ['P1-1.1'] }]);
    expect(notes({})[0]!.value).toBeCloseTo(1.049 / 0.352, 9);
  });

  test('are not in a conduit that is straight, nor where they are not three alike', () => {
    expect(notes({ path: BENT.slice(0, 2) })).toEqual([]);
    for (const conductors of [[lines('3', 2)], [lines('3', 4)], [lines('3', 2), lines('4', 1)]])
      expect(notes({ conductors })).toEqual([]);
  });

  test('are not a trade size up: 1.380 / 0.352 is 3.92', () => {
    expect(notes({ tradeSize: '1-1/4' })).toEqual([]);
  });
});

describe('conductors in a riser', () => {
  const up = (feet: number): readonly Point3[] => [
    [0, 0, 0],
    [0, 0, feet],
    [40, 0, feet],
  ];

  // NEC Table 300.19(A): 250 kcmil copper 60 ft, aluminum 135 ft; 8 AWG and smaller 100 ft.
  test('are supported where it is taller than the table has them hang', () => {
    const large = { conductors: [lines('250', 4)], tradeSize: '4' };
    expect(notes({ ...large, path: up(60) })).toEqual([]);
    expect(notes({ ...large, path: up(61) })).toMatchObject([{ rule: 'vertical-support', value: 61, limit: 60 }]);
    expect(notes({ ...large, path: up(61), metal: 'aluminum' })).toEqual([]);
    expect(notes({ conductors: [lines('8', 2)], path: up(100) })).toEqual([]);
  });

  test('the largest of them decides', () => {
    expect(notes({ conductors: [lines('8', 2), lines('250', 2)], path: up(70) })).toMatchObject([{ limit: 60 }]);
  });

  test('rise as far as the way goes on upright, or down', () => {
    expect(tallestRise([...up(30), [40, 0, -30]])).toBe(60);
    expect(
      tallestRise([
        [0, 0, 0],
        [0, 0, 30],
        [1, 0, 70],
        [9, 0, 71],
        [9, 0, 100],
      ]),
    ).toBe(70);
  });
});
