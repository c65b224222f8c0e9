import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { isEasyPull, pullTension, weightPerFoot } from '../../../calc/branches/pulls/pull-tension.ts';
import type { ConduitConductor } from '../../../calc/plan-file/branches.ts';
import { NEC_2023 } from '../../../calc/tables/nec-2023/nec-2023.ts';
import type { Point3 } from '../../../routing/site/site.ts';

const lines = (size: string, count: number): ConduitConductor[] => [{ use: 'line', size, insulation: 'THWN-2', count }];

describe('the pull of a conduit', () => {
  test('weighs its conductors: 500 kcmil copper is 1,544 lb per 1000 ft bare, and its insulation', () => {
    // Copper is 0.3216 lb/in³ at 20 °C; the bare weight of 500 kcmil is a handbook figure, from memory.
    const weight = weightPerFoot(NEC_2023, lines('500', 1), 'copper');
    const insulation = 12 * (0.7073 - (Math.PI / 4) * 0.5) * 0.049;
    expect(weight - insulation).toBeCloseTo(1.544, 1);
  });

  test('on a level straight is weight x length x friction, and may be 0.008 lb a circular mil', () => {
    const conductors = lines('500', 3);
    const pull = pullTension(
      NEC_2023,
      [
        [0, 0, 0],
        [200, 0, 0],
      ],
      '3',
      conductors,
      'copper',
    );
    expect(pull.tension).toBeCloseTo(200 * 0.5 * weightPerFoot(NEC_2023, conductors, 'copper'), 9);
    expect(pull.mostTension).toBeCloseTo(0.008 * 3 * 500_000, 6);
  });

  test('is taken from the end that asks for less: a bend comes first, where the tension is small', () => {
    const path: Point3[] = [
      [0, 0, 0],
      [10, 0, 0],
      [10, 190, 0],
    ];
    const conductors = lines('500', 3);
    const perFoot = 0.5 * weightPerFoot(NEC_2023, conductors, 'copper');
    const expected = 10 * perFoot * Math.exp(0.5 * (Math.PI / 2)) + 190 * perFoot;
    for (const way of [path, [...path].reverse()])
      expect(pullTension(NEC_2023, way, '3', conductors, 'copper').tension).toBeCloseTo(expected, 6);
  });

  test('is never called easy where it is past a limit', () => {
    const leg = fc.record({ axis: fc.constantFrom(0, 1, 2), by: fc.integer({ min: -150, max: 150 }) });
    fc.assert(
      fc.property(
        fc.array(leg, { minLength: 1, maxLength: 6 }),
        fc.constantFrom('12', '8', '3', '4/0'),
        fc.constantFrom(2, 3, 6),
        (legs, size, count) => {
          const path: Point3[] = [[0, 0, 0]];
          let length = 0;
          for (const { axis, by } of legs) {
            const next: [number, number, number] = [...path.at(-1)!];
            next[axis]! += by;
            path.push(next);
            length += Math.abs(by);
          }
          const conductors = lines(size, count);
          const pull = pullTension(NEC_2023, path, '2', conductors, 'copper');
          const bendDegrees = 180 * legs.length;
          if (!isEasyPull(NEC_2023, { length, bendDegrees, conductors }, 'copper')) return;
          expect(pull.tension).toBeLessThanOrEqual(pull.mostTension);
          expect(pull.sidewall).toBeLessThanOrEqual(pull.mostSidewall);
        },
      ),
    );
  });
});
