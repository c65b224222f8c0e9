import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { reachFindings } from '../../../routing/checks/reach-findings.ts';
import type { Point2, Point3 } from '../../../routing/site/site.ts';
import { charger, drop, siteOf } from '../reach/sites.ts';
import { found, lot, only } from './reach-findings-of.ts';

test('a sound layout has no findings', () => {
  expect(reachFindings(siteOf(lot()))).toEqual([]);
});

describe('a drop by itself', () => {
  test('with more cord than the limit fails by the rule of the site, and the cure is the listing', () => {
    const finding = only(found('cord-limit', { drops: [drop('D1', [4.5, 9, 11], { cord: 28 })] }));
    expect(finding).toMatchObject({ severity: 'fail', value: 28, limit: 25, unit: 'ft', about: ['D1'] });
    expect(finding.source).toBe('site rule "longest cord"');
    expect(finding.says).toContain('cable management');
    expect(found('cord-limit', { drops: [drop('D1', [4.5, 9, 11], { cord: 28 })], rules: { cordLimit: 30 } })).toEqual(
      [],
    );
  });

  test('rests its connector from 24 to 48 in: lower fails, higher is a warning', () => {
    const at = (restHeight: number) => found('rest-height', { drops: [drop('D1', [4.5, 9, 11], { restHeight })] });
    expect(at(2)).toEqual([]);
    expect(at(4)).toEqual([]);
    expect(only(at(1.5))).toMatchObject({ severity: 'fail', value: 1.5, limit: 2 });
    expect(only(at(1.5)).source).toBe('site rule "lowest rest of a connector"');
    expect(only(at(4.25))).toMatchObject({ severity: 'warn', value: 4.25, limit: 4 });
  });

  test('over a parked vehicle is named with it; lower than its roof it fails', () => {
    const over = only(found('over-vehicle', { drops: [drop('D1', [0, 9, 10])] }));
    expect(over).toMatchObject({ severity: 'warn', about: ['D1', 'S1'], value: 5 });
    expect(over.says).toContain(`5' 0" above its roof`);
    expect(only(found('over-vehicle', { drops: [drop('D1', [0, 9, 4], { mount: 'pedestal' })] })).severity).toBe(
      'fail',
    );
    // The box alone is over it: what matters is where the cord hangs from.
    const beside = drop('D1', [0, 9, 11], { retractor: [4.5, 9, 10] });
    expect(found('over-vehicle', { drops: [beside] })).toEqual([]);
  });

  test('in a keep-out that blocks drops fails, within its elevations', () => {
    const outline: Point2[] = [
      [4, 8],
      [5, 8],
      [5, 10],
      [4, 10],
    ];
    const keepout = (more: object) => ({ keepouts: [{ id: 'N1', outline, blocks: ['drop' as const], ...more }] });
    expect(only(found('keepout-crossed', keepout({}))).about).toEqual(['D1', 'N1']);
    expect(found('keepout-crossed', keepout({ to: 10.5 }))).toEqual([]);
    expect(found('keepout-crossed', keepout({ blocks: ['raceway'] }))).toEqual([]);
  });
});

describe('drops together', () => {
  test('whose boxes are in one place fail, half a foot apart they do not, nor one above the other', () => {
    const at = (box: Point3) => found('boxes-coincide', { drops: [drop('D1', [4.5, 9, 11]), drop('D2', box)] });
    expect(only(at([4.5, 9.25, 11]))).toMatchObject({ severity: 'fail', about: ['D2', 'D1'], value: 0.25 });
    expect(at([4.5, 9.5, 11])).toEqual([]);
    expect(at([4.5, 9, 12])).toEqual([]);
  });

  test('are told by the first of each place as one of many is dragged about, as from nothing', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(fc.nat(59), fc.nat(40), fc.nat(3)), { maxLength: 50 }), (moves) => {
        let drops = Array.from({ length: 60 }, (_, i) => drop(`D${i}`, [(i % 40) / 4, 20, 11]));
        for (const [i, x, y] of moves) {
          drops = drops.map((one, k) => (k === i ? drop(one.id, [x / 4, 20 + y / 4, 11]) : one));
          const pairs = found('boxes-coincide', { drops, chargers: [] }).map(({ about }) => about.join(' '));
          const first = drops.map((b, k) =>
            drops.slice(0, k).findIndex((a) => Math.hypot(a.box[0] - b.box[0], a.box[1] - b.box[1]) < 0.5),
          );
          const expected = drops.flatMap((a, k) => {
            const others = drops.filter((_, i) => first[i] === k).map(({ id }) => id);
            return others.length === 0 ? [] : [[...others, a.id].join(' ')];
          });
          expect(pairs).toEqual(expected);
        }
      }),
      { numRuns: 20 },
    );
  });

  test('that hold fewer cords than hang from them are a warning', () => {
    const chargers = [charger('C1', 'D1', ['S1']), charger('C2', 'D1', ['S1'])];
    expect(only(found('cords-per-drop', { chargers }))).toMatchObject({
      severity: 'warn',
      about: ['D1', 'C1', 'C2'],
      value: 2,
      limit: 1,
    });
    expect(found('cords-per-drop', { chargers, drops: [drop('D1', [4.5, 9, 11], { holds: 2 })] })).toEqual([]);
  });
});
