import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { plan } from '../../../calc/plan/plan.ts';
import type { PlannedBox } from '../../../calc/plan-file/branches.ts';
import type { Point3, SiteFile } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { box, charger, panel } from '../../routing/network/sites.ts';
import { anyLot, trunkLot } from './lots.ts';

const boxesOf = (file: SiteFile): readonly PlannedBox[] => plan(toSite(file)).boxes;
const brief = ({ id, kind, volume, box, length }: PlannedBox): unknown[] => [id, kind, volume, box, length];

describe('boxes by volume (314.16)', () => {
  test('at the last box two 8 AWG end and the cord begins: 4 x 3.00, and 2.50 for the 10 AWG grounding conductors', () => {
    expect(boxesOf(trunkLot([50])).map(brief)).toEqual([['D1', 'drop', 14.5, '4 x 1-1/4 square', null]]);
  });

  test('a pilot is two more conductors of 14 AWG there, 2.00 each', () => {
    const chargers = [charger('C1', 'D1', 'P1', { pilot: true })];
    expect(boxesOf(trunkLot([50], { chargers })).map(brief)).toEqual([['D1', 'drop', 18.5, '4 x 1-1/2 square', null]]);
  });

  test('conductors that go on to the next box count once', () => {
    // Two pass, 2 x 3.00; two end, 4 x 3.00; grounding 2.50 for three of 10 AWG. 3/4 in. raceway asks for 1-1/2 depth.
    expect(boxesOf(trunkLot([50, 60])).map(brief)).toContainEqual(['D1', 'drop', 20.5, '4 x 1-1/2 square', null]);
  });

  test('a pull point has what passes it, of all panels', () => {
    const file = trunkLot([50, 60], {
      equipment: [panel('P1', [0, 0, 10]), panel('P2', [70, 0, 10])],
      chargers: [charger('C1', 'D2', 'P1'), charger('C2', 'D1', 'P2')],
      pullpoints: [{ id: 'PB1', at: [55, 0, 10] }],
    });
    // Four 8 AWG, 12.00; four grounding conductors of 10 AWG, one allowance of 2.50.
    expect(boxesOf(file).map(brief)).toContainEqual(['PB1', 'pullpoint', 14.5, '4 x 1-1/4 square', null]);
  });

  test('more than the largest square box holds has a volume and no box', () => {
    const file = trunkLot([50, 50, 50, 50, 50, 50], { pullpoints: [{ id: 'PB1', at: [20, 0, 10] }] });
    // 12 of 8 AWG are 36.00, and grounding 2.50 for four: 38.5, in 1 in. raceway a 4-11/16 x 2-1/8.
    expect(boxesOf(file).map(brief)).toContainEqual(['PB1', 'pullpoint', 38.5, '4-11/16 x 2-1/8 square', null]);
    const larger = { ...file, chargers: file.chargers!.map((one) => ({ ...one, pilot: true })) };
    expect(boxesOf(larger).map(brief)).toContainEqual(['PB1', 'pullpoint', 50.5, null, null]);
  });
});

describe('a pull point by a tap, or beside the raceway', () => {
  const drawn = (at: Point3, file: SiteFile) => {
    const { boxes, conduits } = plan(toSite({ ...file, pullpoints: [{ id: 'PB1', at }] }));
    const paths = conduits.map(({ from, to, length, path }) => [from, to, length, path]);
    return { at: boxes.filter(({ id }) => id === 'PB1').map((one) => one.at), paths };
  };
  const tapped = trunkLot([50, 60], { drops: [box('D1', [50, 0, 7]), box('D2', [60, 0, 7])] });

  test('past the tap all conduits end in its box, and are as long as the runs', () => {
    const past: Point3 = [50.25, 0, 10];
    expect(drawn(past, tapped)).toEqual({
      at: [past],
      paths: [
        ['P1', 'PB1', 50, [[0, 0, 10], [50, 0, 10], past]],
        ['PB1', 'D1', 3, [past, [50, 0, 10], [50, 0, 7]]],
        ['PB1', 'D2', 13, [past, [60, 0, 10], [60, 0, 7]]],
      ],
    });
  });

  test('above the raceway the conduits go up to its box', () => {
    const above: Point3 = [20, 0, 10.2];
    expect(drawn(above, trunkLot([50]))).toEqual({
      at: [above],
      paths: [
        ['P1', 'PB1', 20, [[0, 0, 10], [20, 0, 10], above]],
        ['PB1', 'D1', 30, [above, [20, 0, 10], [50, 0, 10]]],
      ],
    });
  });

  test('of two panels there is one box, where it is drawn', () => {
    const file = trunkLot([50, 60], {
      equipment: [panel('P1', [0, 0, 10]), panel('P2', [70, 0, 10])],
      drops: [box('D1', [50, 0, 7]), box('D2', [60, 0, 10])],
      chargers: [charger('C1', 'D2', 'P1'), charger('C2', 'D1', 'P1'), charger('C3', 'D1', 'P2')],
    });
    const past: Point3 = [50.2, 0, 10];
    const { at, paths } = drawn(past, file);
    expect(at).toEqual([past]);
    for (const [from, to, , path] of paths as [string, string, number, Point3[]][]) {
      if (from === 'PB1') expect(path[0]).toEqual(past);
      if (to === 'PB1') expect(path.at(-1)).toEqual(past);
    }
  });
});

describe('boxes by raceways (314.28)', () => {
  const big = [charger('C1', 'D1', 'P1', { amps: 80 })];

  test('a straight pull is 8 times the raceway', () => {
    // Two 3 AWG and an 8 AWG are 0.2312 in²: 1 in. EMT (0.346 at 40%).
    const file = trunkLot([50], { chargers: big, pullpoints: [{ id: 'PB1', at: [20, 0, 10] }] });
    expect(boxesOf(file).map(brief)).toContainEqual(['PB1', 'pullpoint', null, null, 8]);
  });

  test('where the branch ends, and where it turns, 6 times', () => {
    expect(boxesOf(trunkLot([50], { chargers: big })).map(brief)).toEqual([['D1', 'drop', null, null, 6]]);
  });
});

test('on any lot every drop with a circuit and every junction has one box, and its conduits end there', () => {
  fc.assert(
    fc.property(anyLot({ mostChargers: 12 }), (file) => {
      const { boxes, conduits, circuits, runs } = plan(toSite(file));
      expect(new Set(boxes.map(({ id }) => id)).size).toBe(boxes.length);
      for (const box of boxes) {
        expect(box.conduits.length).toBeGreaterThan(0);
        if (box.kind === 'pullpoint') expect(box.at).toEqual(file.pullpoints!.find(({ id }) => id === box.id)!.at);
        for (const id of box.conduits) {
          const conduit = conduits.find((one) => one.id === id)!;
          expect([conduit.from, conduit.to]).toContain(box.id);
          const end = conduit.to === box.id ? conduit.path.at(-1)! : conduit.path[0]!;
          expect(Math.hypot(...end.map((value, axis) => value - box.at[axis]!))).toBeLessThan(1e-6);
        }
      }
      const drops = new Set(
        circuits
          .filter((one) => one.conduits.length > 0)
          .map(({ charger: id }) => runs.find((run) => run.charger === id)!.drop),
      );
      const at = (id: string) => file.drops!.find((drop) => drop.id === id)!.box;
      const boxed = boxes.filter(({ kind }) => kind === 'drop').map(({ id }) => at(id));
      for (const drop of drops) expect(boxed).toContainEqual(at(drop));
    }),
    { numRuns: 80 },
  );
});
