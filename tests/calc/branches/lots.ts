import fc from 'fast-check';
import { METHODS } from '../../../routing/site/schema/vocabulary.ts';
import type { Point3, Raceway, SiteFile } from '../../../routing/site/site.ts';
import { box, charger, panel } from '../../routing/network/sites.ts';

/** A panel at the origin, a trunk along x at 10 ft, and a box on it at each distance. */
export function trunkLot(taps: readonly number[], parts: Partial<SiteFile> = {}): SiteFile {
  return {
    format: 'overrow/site',
    version: 1,
    units: 'ft',
    name: 'trunk',
    raceways: [
      {
        id: 'R1',
        path: [
          [0, 0, 10],
          [Math.max(...taps) + 10, 0, 10],
        ],
        method: 'EMT',
        place: 'overhead',
      },
    ],
    equipment: [panel('P1', [0, 0, 10])],
    drops: taps.map((x, i) => box(`D${i + 1}`, [x, 0, 10])),
    chargers: taps.map((_, i) => charger(`C${i + 1}`, `D${i + 1}`, 'P1')),
    ...parts,
  };
}

type Axis = 0 | 1 | 2;

const step = (from: Point3, axis: Axis, by: number): Point3 => {
  const to: [number, number, number] = [...from];
  to[axis] += by;
  return to;
};

export interface LotWish {
  readonly mostChargers: number;
  readonly circuitsPerConduit?: number;
}

/** Random lots: a tree of raceways from one or two panels, boxes beside them, chargers of all sizes, pull points. */
export const anyLot = ({ mostChargers, circuitsPerConduit }: LotWish): fc.Arbitrary<SiteFile> => {
  const branch = fc.record({
    on: fc.nat(20),
    at: fc.nat(3),
    legs: fc.array(
      fc.record({
        axis: fc.constantFrom<Axis>(0, 1, 2),
        by: fc.integer({ min: 3, max: 60 }),
        back: fc.boolean(),
      }),
      { minLength: 1, maxLength: 4 },
    ),
    method: fc.constantFrom(...METHODS),
  });
  const spot = fc.record({
    on: fc.nat(20),
    leg: fc.nat(3),
    share: fc.constantFrom(0, 0.25, 0.5, 0.75, 1),
    off: fc.constantFrom<Point3>([0, 0, 0], [0, 0, -1], [2, 0, 0], [0, -4, 0]),
  });
  const outlet = fc.record({
    spot,
    second: fc.boolean(),
    amps: fc.constantFrom(16, 32, 40, 48, 80),
    phases: fc.constantFrom<1 | 3>(1, 1, 1, 3),
    pilot: fc.boolean(),
  });
  return fc
    .record({
      branches: fc.array(branch, { minLength: 1, maxLength: 6 }),
      outlets: fc.array(outlet, { minLength: 1, maxLength: mostChargers }),
      pulls: fc.array(spot, { maxLength: 4 }),
      perConduit: circuitsPerConduit === undefined ? fc.integer({ min: 1, max: 4 }) : fc.constant(circuitsPerConduit),
    })
    .map(({ branches, outlets, pulls, perConduit }): SiteFile => {
      const raceways: Raceway[] = [];
      branches.forEach(({ on, at, legs, method }, i) => {
        const parent = raceways[on % Math.max(1, raceways.length)];
        const path: Point3[] = [parent === undefined ? [0, 0, 10] : parent.path[at % parent.path.length]!];
        for (const { axis, by, back } of legs) path.push(step(path.at(-1)!, axis, back ? -by : by));
        raceways.push({ id: `R${i + 1}`, path, method, place: i % 3 === 2 ? 'underground' : 'overhead' });
      });
      const placeOf = ({ on, leg, share, off }: (typeof pulls)[number]): Point3 => {
        const { path } = raceways[on % raceways.length]!;
        const from = path[leg % (path.length - 1)]!;
        const to = path[(leg % (path.length - 1)) + 1]!;
        const along = (axis: Axis): number => from[axis] + share * (to[axis] - from[axis]) + off[axis];
        return [along(0), along(1), along(2)];
      };
      return {
        format: 'overrow/site',
        version: 1,
        units: 'ft',
        name: 'any',
        raceways,
        equipment: [panel('P1', [0, 0, 10]), panel('P2', raceways[0]!.path.at(-1)!)],
        drops: outlets.map(({ spot: at }, i) => box(`D${i + 1}`, placeOf(at))),
        chargers: outlets.map(({ second, amps, phases, pilot }, i) =>
          charger(`C${i + 1}`, `D${i + 1}`, second ? 'P2' : 'P1', { amps, phases, pilot }),
        ),
        pullpoints: pulls.map((at, i) => ({ id: `PB${i + 1}`, at: placeOf({ ...at, off: [0, 0, 0] }) })),
        rules: { circuitsPerConduit: perConduit },
      };
    });
};
