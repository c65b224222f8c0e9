import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { plan } from '../../../calc/plan/plan.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { trunkLot } from '../../calc/branches/lots.ts';
import { charger } from '../../routing/network/sites.ts';

/** Branches designed by a Python script with its own tables, `design.py` beside this file. */
const { cases } = JSON.parse(readFileSync(new URL('./cases.json', import.meta.url), 'utf8')) as {
  readonly cases: readonly {
    readonly amps: number;
    readonly phases: 1 | 3;
    readonly volts: number;
    readonly feet: number;
    readonly together: number;
    readonly ambient: number;
    readonly powerFactor: number;
    readonly limit: number;
    readonly answer: {
      readonly breakerAmps: number;
      readonly conductor: string;
      readonly grounding: string;
      readonly tradeSize: string;
      readonly fillPercent: number;
      readonly dropPercent: number;
      readonly ampacity: number;
    };
  }[];
};

let compared = 0;

describe('the branch that the planner designs is that of an independent script', () => {
  test.each(cases)(
    '$together of $amps A, $phases-phase $volts V, $feet ft at $ambient °C, $limit%',
    ({ amps, phases, volts, feet, together, ambient, powerFactor, limit, answer }) => {
      const count = Array.from({ length: together }, (_, i) => i + 1);
      // Boxes in one place: the circuits share their conduit all the way, or cost more.
      const site = toSite(
        trunkLot([feet - 6], {
          chargers: count.map((n) => charger(`C${n}`, 'D1', 'P1', { amps, phases, volts })),
          rules: {
            ambientC: ambient,
            powerFactor,
            dropLimit: { branch: limit },
            circuitsPerConduit: together,
          },
        }),
      );
      const { circuits, conduits } = plan(site);
      const shared = conduits.filter((conduit) => conduit.circuits.length === together);
      // Where separate conduits are cheaper, those are what was designed, and this case says nothing.
      if (shared.length !== 1) return;
      compared++;
      for (const circuit of circuits) {
        expect([circuit.breakerAmps, circuit.conductor.size, circuit.grounding.size]).toEqual([
          answer.breakerAmps,
          answer.conductor,
          answer.grounding,
        ]);
        expect(circuit.ampacity).toBeCloseTo(answer.ampacity, 9);
        expect(circuit.branchDropPercent).toBeCloseTo(answer.dropPercent, 9);
      }
      expect(shared[0]!.tradeSize).toBe(answer.tradeSize);
      expect(shared[0]!.fillPercent).toBeCloseTo(answer.fillPercent, 9);
    },
  );

  test('so it is where each charger has the limit of its own, whatever the rule is', () => {
    for (const { amps, phases, volts, feet, ambient, powerFactor, limit, answer } of cases.filter(
      ({ together }) => together === 1,
    )) {
      const own = charger('C1', 'D1', 'P1', { amps, phases, volts, branchDrop: limit });
      for (const branch of [0.2, 99]) {
        const rules = { ambientC: ambient, powerFactor, dropLimit: { branch }, circuitsPerConduit: 1 };
        const { circuits, conduits } = plan(toSite(trunkLot([feet - 6], { chargers: [own], rules })));
        expect(circuits[0]!.conductor.size).toBe(answer.conductor);
        expect(circuits[0]!.branchDropPercent).toBeCloseTo(answer.dropPercent, 9);
        expect(conduits[0]!.tradeSize).toBe(answer.tradeSize);
      }
    }
  });

  test('in most of the cases', () => {
    expect(compared).toBeGreaterThan(0.6 * cases.length);
  });
});
