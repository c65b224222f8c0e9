import { describe, expect, test } from 'vitest';
import { plan } from '../../../calc/plan/plan.ts';
import { whyCircuit, whyConduit } from '../../../calc/why/why.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { trunkLot } from '../branches/lots.ts';

const site = toSite(trunkLot([50, 60, 244]));
const { circuits, conduits } = plan(site);

describe('the steps of a circuit', () => {
  test.each(circuits)('end in what the plan says of $charger', (circuit) => {
    const steps = whyCircuit(site, circuit.charger);
    const result = (find: string) => steps.findLast((step) => step.find === find)?.result;
    expect(result('ambient')).toBe(circuit.ambientC);
    expect(result('breaker')).toBe(circuit.breakerAmps);
    expect(result('voltage drop of the branch')).toBe(circuit.branchDropPercent);
    expect(result('ambient factor')).toBe(circuit.factors.ambient);
    expect(result('bundling factor')).toBe(circuit.factors.bundling);
    expect(result('conductor grown for voltage drop') ?? circuit.conductor.size).toBe(circuit.conductor.size);
  });

  test('each name their source', () => {
    for (const { charger } of circuits) for (const step of whyCircuit(site, charger)) expect(step.source).not.toBe('');
  });

  test('are none for a charger without a circuit', () => {
    expect(whyCircuit(site, 'nobody')).toEqual([]);
  });
});

test('the steps of a conduit end in its fill', () => {
  for (const conduit of conduits) {
    const steps = whyConduit(site, conduit.id);
    expect(steps.at(-1)!.result).toBe(conduit.fillPercent);
    expect(steps.at(-1)!.values.raceway).toBe(`EMT ${conduit.tradeSize}`);
  }
  expect(whyConduit(site, 'nothing')).toEqual([]);
});
