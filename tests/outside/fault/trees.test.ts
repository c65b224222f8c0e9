import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { FaultAmps } from '../../../calc/plan-file/supply.ts';
import { ampsOf } from '../../../calc/supply/fault/fault.ts';
import { type FaultCase, faultCases } from '../../../calc/supply/fault/fault-case.ts';
import { endOfBranch, faultLoops } from '../../../calc/supply/fault/fault-loops.ts';
import { type Phasor, scaled } from '../../../calc/supply/load-flow/phasor.ts';
import { supplyModel } from '../../../calc/supply/load-flow/supply-model.ts';
import type { SupplyLines } from '../../../calc/supply/tree/supply-lines.ts';
import { supplyTree } from '../../../calc/supply/tree/supply-tree.ts';
import { impedance, methodRaceway, resistanceShare } from '../../../calc/tables/conductor-of.ts';
import { NEC_2023 as nec } from '../../../calc/tables/nec-2023/nec-2023.ts';
import type { Metal, Method } from '../../../routing/site/schema/vocabulary.ts';
import type { Equipment, Feeder } from '../../../routing/site/site.ts';

interface Branch {
  readonly id: string;
  readonly from: string;
  readonly size: string;
  readonly metal: Metal;
  readonly ground: string;
  readonly raceway: Method;
  readonly length: number;
  readonly phases: 1 | 3;
}
interface Case {
  readonly seed: number;
  readonly coldC: number;
  readonly impedanceTolerance: number;
  readonly site: {
    readonly equipment: readonly Omit<Equipment, 'at' | 'size' | 'entry'>[];
    readonly feeders: readonly (Feeder & { readonly ground: string })[];
    readonly branches: readonly Branch[];
  };
  readonly faults: Readonly<
    Record<string, { most: number; lineToLine: number; lineToNeutral?: number; lineToGround?: number }>
  >;
}

const { cases } = JSON.parse(readFileSync(new URL('trees.json', import.meta.url), 'utf8')) as {
  cases: readonly Case[];
};

const along = (size: string, metal: Metal, raceway: Method, length: number, sets = 1): Phasor => {
  const { r, x } = impedance(nec, size, metal, methodRaceway(raceway));
  return scaled({ re: r, im: x }, length / 1000 / sets);
};

/** Fault currents of a tree by this planner, at each piece of equipment and at the end of each branch. */
function faultsOf({ site, coldC, impedanceTolerance }: Case): ReadonlyMap<string, FaultAmps> {
  const equipment = site.equipment.map((one): Equipment => ({ ...one, at: [0, 0], size: [1, 1, 1], entry: [0, 0, 0] }));
  const tree = supplyTree(
    equipment,
    site.feeders,
    equipment.map(() => undefined),
  );
  const lines: SupplyLines = {
    chargers: new Map(),
    loads: new Map(),
    equipment: new Map(),
    balance: new Map(),
    dealt: new Map(),
  };
  const lengths = tree.nodes.map(({ feeder }) => feeder?.length ?? null);
  const kinds = tree.nodes.map(({ feeder }) => methodRaceway(feeder?.raceway ?? 'PVC40'));
  const model = supplyModel(tree, lines, lengths, kinds, nec);
  const grounds = tree.nodes.map(({ feeder }) => {
    const own = site.feeders.find(({ id }) => id === feeder?.id);
    if (own === undefined) return null;
    return along(own.ground, own.conductor.metal, own.raceway!, own.length!, own.conductor.sets);
  });
  const rules = faultCases({ coldC, impedanceTolerance, motorTimes: 4, tripTimes: 10 });
  const [most, least] = [rules.most, rules.least].map((one) => faultLoops(tree, model, grounds, one, nec));
  const found = new Map<string, FaultAmps>();
  tree.nodes.forEach(({ equipment: { id }, system }, place) => {
    found.set(id, ampsOf(most![place]!, least![place]!, system)!);
  });
  for (const { id, from, size, metal, ground, raceway, length, phases } of site.branches) {
    const place = tree.placeOf.get(from)!;
    const end = (loops: typeof most, { conductorC }: FaultCase) => {
      const warm = ({ re, im }: Phasor): Phasor => ({ re: re * resistanceShare(nec, metal, conductorC), im });
      const [line, back] = [size, ground].map((one) => warm(along(one, metal, raceway, length)));
      return endOfBranch(loops![place]!, line!, back!);
    };
    const { system } = tree.nodes[place]!;
    found.set(id, ampsOf(end(most, rules.most), end(least, rules.least), { ...system, phases })!);
  }
  return found;
}

describe('fault currents agree with a nodal solution by numpy to 1e-5', () => {
  test('trees of every kind are held', () => {
    const equipment = cases.flatMap(({ site }) => site.equipment);
    const among = (kind: string, phases: number): number =>
      equipment.filter((one) => one.kind === kind && one.phases === phases).length;
    for (const kind of ['source', 'panelboard', 'transformer'])
      for (const phases of [1, 3]) expect(among(kind, phases), `${kind} ${phases}`).toBeGreaterThan(0);
    expect(cases.flatMap(({ site }) => site.branches).length).toBeGreaterThan(20);
    const rows = cases.flatMap(({ faults }) => Object.values(faults));
    expect(rows.filter(({ lineToGround }) => lineToGround === undefined).length).toBeGreaterThan(3);
    expect(rows.filter(({ lineToGround }) => lineToGround !== undefined).length).toBeGreaterThan(30);
  });

  test.each(cases)('tree $seed', (one) => {
    const got = faultsOf(one);
    for (const [id, want] of Object.entries(one.faults)) {
      const { most, lineToNeutral, least } = got.get(id)!;
      const near = (mine: number | undefined, theirs: number | undefined, what: string): void => {
        if (theirs === undefined || mine === undefined) expect(mine, `${what} at ${id}`).toBe(theirs);
        else expect(Math.abs(mine / theirs - 1), `${what} at ${id}: ${mine}, ${theirs}`).toBeLessThan(1e-5);
      };
      near(most, want.most, 'most');
      near(lineToNeutral, want.lineToNeutral, 'line to neutral');
      near(least.lineToLine, want.lineToLine, 'line to line');
      near(least.lineToGround, want.lineToGround, 'line to ground');
    }
  });
});
