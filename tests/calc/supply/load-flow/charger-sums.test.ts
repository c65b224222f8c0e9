import fc from 'fast-check';
import { expect, test } from 'vitest';
import { supplyWork } from '../../../../calc/supply/supply.ts';
import { NEC_2023 } from '../../../../calc/tables/nec-2023/nec-2023.ts';
import type { Run } from '../../../../routing/network/run.ts';
import { chargers, feeder, panel, siteOf, source } from '../small-site.ts';

const parts = {
  equipment: [source(208), panel('P1'), panel('P2')],
  feeders: [feeder('SVC', 'P1'), feeder('SVC', 'P2')],
  chargers: [...chargers('P1', 7, { amps: 31.7 }), ...chargers('P2', 5, { amps: 12.3 })],
};
const numbers = 12;

test('while runs come and go the sums are those of the chargers that have one, to the last digit', () => {
  const site = siteOf(parts);
  const runsOf = (there: readonly boolean[]): Run[] =>
    site.chargers.map(({ id }, i) => ({ charger: id, length: there[i] === true ? 90 : null }) as Run);
  const lists = fc.array(fc.array(fc.boolean(), { minLength: numbers, maxLength: numbers }), { minLength: 2 });
  fc.assert(
    fc.property(lists, (steps) => {
      for (const there of steps) {
        const { sums } = supplyWork(site, runsOf(there), NEC_2023).state;
        // A site read once more has no memory of what was before.
        const anew = supplyWork(siteOf(parts), runsOf(there), NEC_2023);
        expect(sums.amps).toEqual(anew.state.sums.amps);
        expect(sums.unitAmps).toEqual(anew.state.sums.unitAmps);
        const va = site.chargers.reduce((sum, { amps, volts }, i) => sum + (there[i] === true ? amps * volts : 0), 0);
        expect([...sums.va].reduce((sum, one) => sum + one, 0)).toBeCloseTo(va, 6);
      }
    }),
    { numRuns: 100 },
  );
});
