import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Plan } from '../../../calc/plan/plan-shape.ts';
import type { Conduit } from '../../../calc/plan-file/branches.ts';
import type { SiteFile } from '../../../routing/site/site.ts';
import { planOf } from './conduits-parts.ts';
import { anyLot } from './lots.ts';

const apart = (a: readonly number[], b: readonly number[]): number =>
  Math.hypot(...a.map((value, axis) => value - b[axis]!));
const pulls = (file: SiteFile): ReadonlySet<string> => new Set(file.pullpoints!.map(({ id }) => id));

/** The place at a distance along a path. */
function placeAt(path: readonly (readonly number[])[], distance: number): readonly number[] {
  let left = distance;
  for (let i = 1; i < path.length; i++) {
    const [from, to] = [path[i - 1]!, path[i]!];
    const leg = apart(from, to);
    if (left <= leg && leg > 0) return from.map((value, axis) => value + (left / leg) * (to[axis]! - value));
    left -= leg;
  }
  return path.at(-1)!;
}

/** How far the ends of a conduit's path lie from where the run of one of its circuits is opened, both together. */
function besideRun({ runs, circuits, conduits }: Plan, conduit: Conduit): number {
  const circuit = circuits.find((one) => one.conduits.includes(conduit.id))!;
  const { path } = runs.find(({ charger: id }) => id === circuit.charger)!;
  const ahead = circuit.conduits.slice(0, circuit.conduits.indexOf(conduit.id));
  const start = ahead.reduce((sum, id) => sum + conduits.find((one) => one.id === id)!.length, 0);
  const end = start + conduit.length;
  return apart(conduit.path[0]!, placeAt(path, start)) + apart(conduit.path.at(-1)!, placeAt(path, end));
}

describe('on any lot', () => {
  const near = (a: readonly number[], b: readonly number[]): boolean =>
    a.every((value, axis) => Math.abs(value - b[axis]!) < 1e-6);

  test('the conduits that carry a circuit lie end to end along its run', () => {
    fc.assert(
      fc.property(anyLot({ mostChargers: 14 }), (file) => {
        const { runs, circuits, conduits } = planOf(file);
        const byId = new Map(conduits.map((conduit) => [conduit.id, conduit]));
        for (const circuit of circuits) {
          const run = runs.find(({ charger }) => charger === circuit.charger)!;
          const own = circuit.conduits.map((id) => byId.get(id)!);
          const length = own.reduce((sum, conduit) => sum + conduit.length, 0);
          expect(length).toBeCloseTo(run.length!, 6);
          if (own.length === 0) continue;
          expect(own[0]!.from).toBe(circuit.from);
          // Two drops may have their boxes in one place: the conduit then ends at either.
          const end = file.drops!.find(({ id }) => id === own.at(-1)!.to)!;
          expect(near(end.box, run.path.at(-1)!)).toBe(true);
          expect(near(own[0]!.path[0]!, run.path[0]!)).toBe(true);
          expect(near(own.at(-1)!.path.at(-1)!, run.path.at(-1)!)).toBe(true);
          own.slice(1).forEach((conduit, i) => {
            expect(conduit.from).toBe(own[i]!.to);
            expect(near(conduit.path[0]!, own[i]!.path.at(-1)!)).toBe(true);
          });
          for (const conduit of own) expect(conduit.circuits).toContain(circuit.charger);
        }
      }),
      { numRuns: 150 },
    );
  });

  test('a conduit is as long as its path, save for what leads to a pull point beside its run, holds who says so, and is no fuller than its limit', () => {
    fc.assert(
      fc.property(anyLot({ mostChargers: 14 }), (file) => {
        const planned = planOf(file);
        const { circuits, conduits, findings } = planned;
        for (const conduit of conduits) {
          const developed = conduit.path.slice(1).reduce((sum, to, i) => sum + apart(conduit.path[i]!, to), 0);
          const beside = besideRun(planned, conduit);
          expect(Math.abs(developed - conduit.length)).toBeLessThan(5e-7 + beside);
          // Each is joined within the tolerance of the rules, 3 in. by default; anything else is right on the run.
          const joined = [conduit.from, conduit.to].filter((id) => pulls(file).has(id)).length;
          expect(beside).toBeLessThan(1e-6 + 0.25 * joined);
          const carried = circuits.filter((circuit) => circuit.conduits.includes(conduit.id));
          expect(carried.map(({ charger }) => charger).sort()).toEqual([...conduit.circuits].sort());
          expect(conduit.circuits.length).toBeLessThanOrEqual(file.rules!.circuitsPerConduit!);
          const lines = conduit.conductors.filter(({ use }) => use === 'line');
          const poles = carried.reduce((sum, { phases }) => sum + phases.length, 0);
          expect(lines.reduce((sum, { count }) => sum + count, 0)).toBe(poles);
          if (findings.some(({ rule, about }) => rule === 'conduit-fill' && about[0] === conduit.id)) continue;
          expect(conduit.fillPercent).toBeLessThanOrEqual(conduit.fillLimit + 1e-9);
        }
      }),
      { numRuns: 100 },
    );
  });

  test('moving the whole lot and shuffling its lists change no quantity', () => {
    const shift = ([x, y, z]: readonly number[]): [number, number, number] => [x! + 1000, y! - 500, z!];
    fc.assert(
      fc.property(anyLot({ mostChargers: 12 }), (file) => {
        const moved: SiteFile = {
          ...file,
          raceways: file.raceways!.map((raceway) => ({ ...raceway, path: raceway.path.map(shift) })).reverse(),
          equipment: file
            .equipment!.map((one) => ({
              ...one,
              entry: shift(one.entry),
              at: [one.at[0] + 1000, one.at[1] - 500] as const,
            }))
            .reverse(),
          drops: file.drops!.map((drop) => ({ ...drop, box: shift(drop.box) })).reverse(),
          pullpoints: file.pullpoints!.map((pull) => ({ ...pull, at: shift(pull.at) })).reverse(),
        };
        const totals = (plan: Plan): unknown[] =>
          plan.takeoff
            .filter(({ item }) => item !== 'conductor')
            .map(({ item, spec, quantity }) => [item, spec, Number(quantity.toFixed(6))]);
        expect(totals(planOf(moved))).toEqual(totals(planOf(file)));
      }),
      { numRuns: 60 },
    );
  });
});
