import fc from 'fast-check';
import { expect, test } from 'vitest';
import { branchAt, chargersAnew, phasesAt } from '../../../calc/plan/compared/plan-difference.ts';
import type { Plan } from '../../../calc/plan/plan-shape.ts';
import type { Charger } from '../../../routing/site/site.ts';

interface Own {
  readonly run: object;
  readonly circuit: object | null;
  readonly lines: string;
  readonly cords: readonly object[];
}

/** A plan and its chargers of stand-ins, which are told apart by identity alone. */
function standIn(owns: readonly Own[]): { plan: Plan; chargers: readonly Charger[] } {
  const chargers = owns.map((_, i) => ({ id: `EV${i}`, from: `P${i % 3}` }));
  return {
    plan: {
      runs: owns.map(({ run }) => run),
      branches: [0, 1, 2].slice(0, owns.length).map((part) => ({
        circuits: owns.filter((_, i) => i % 3 === part).map(({ circuit }) => circuit),
      })),
      phases: [0, 1, 2]
        .slice(0, owns.length)
        .map((part) => owns.filter((_, i) => i % 3 === part).map(({ lines }) => lines)),
      reach: owns.flatMap(({ cords }) => cords),
    } as unknown as Plan,
    chargers: chargers as unknown as readonly Charger[],
  };
}
const thing = (i: number): object => ({ charger: `EV${i}` });
const own = (i: number, hasCircuit: boolean, cords: number): Own => ({
  run: thing(i),
  circuit: hasCircuit ? thing(i) : null,
  lines: 'AB',
  cords: Array.from({ length: cords }, () => thing(i)),
});

const before = fc.array(fc.tuple(fc.boolean(), fc.nat(3)), { maxLength: 40 });
const changes = fc.array(fc.constantFrom('nothing', 'nothing', 'run', 'circuit', 'lines', 'cords'), {
  minLength: 40,
  maxLength: 40,
});

test('the chargers that are told as changed are those of which anything is another object, circuits that come and go too', () => {
  fc.assert(
    fc.property(before, changes, (was, how) => {
      const owns = was.map(([hasCircuit, cords], i) => own(i, hasCircuit, cords));
      const expected = new Set<number>();
      const now = owns.map((each, i): Own => {
        const change = how[i]!;
        if (change === 'nothing' || (change === 'cords' && each.cords.length === 0)) return each;
        expected.add(i);
        if (change === 'lines') return { ...each, lines: 'BC' };
        if (change === 'run') return { ...each, run: thing(i) };
        if (change === 'cords') return { ...each, cords: each.cords.map(() => thing(i)) };
        return { ...each, circuit: each.circuit && i % 2 === 0 ? null : thing(i) };
      });
      const { chargers, plan: last } = standIn(owns);
      const { plan } = standIn(now);
      expect(chargersAnew(plan, last, chargers)).toEqual(expected);
      now.forEach(({ circuit, lines }, i) => {
        expect(phasesAt(plan, chargers, i)).toBe(circuit && lines);
        expect(branchAt(plan, chargers, i)).toBe(circuit);
      });
    }),
    { numRuns: 500 },
  );
});

test('plans that do not lie side by side are not compared', () => {
  const { plan, chargers } = standIn([own(0, true, 1), own(1, true, 1)]);
  const { plan: other } = standIn([own(0, true, 1)]);
  const { plan: corded } = standIn([own(0, true, 1), own(1, true, 2)]);
  expect(chargersAnew(plan, other, chargers)).toBeNull();
  expect(chargersAnew(plan, corded, chargers)).toBeNull();
});
