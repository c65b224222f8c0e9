import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { LoadCalculation } from '../../../../calc/plan-file/loads.ts';
import { serviceLoad } from '../../../../calc/supply/service/balanced-load.ts';
import { NEC_2023 } from '../../../../calc/tables/nec-2023/nec-2023.ts';
import { explained } from '../../../../calc/words/explain.ts';
import { chargers, equipment, feeder, load, panel, siteOf, source, supplied, transformer } from '../small-site.ts';

const caseOf = ({ cases }: LoadCalculation, method: string) => cases.find((one) => one.method === method)!;
const ROOT3 = Math.sqrt(3);

describe('the load of a service, counted every way', () => {
  const service = equipment('SE', 'service', { volts: 208, mainAmps: 400, busAmps: 400 });
  const served = (count: number, more: Partial<Parameters<typeof siteOf>[0]> = {}) =>
    supplied(
      siteOf({
        equipment: [source(208), service, panel('P')],
        feeders: [feeder('SVC', 'SE', { breakerAmps: 400 }), feeder('SE', 'P', { breakerAmps: 400 })],
        chargers: chargers('P', count),
        ...more,
      }),
    ).loads;

  test('by hand: nine chargers of 32 A at 208 V, 6,656 VA each and 7,200 VA by the least load', () => {
    const [one] = served(9);
    expect(one).toMatchObject({
      source: 'SVC',
      at: 'SE',
      service: [{ id: 'SE', ratingAmps: 400, taken: false }],
      ratingAmps: 400,
      decides: 'unit',
    });
    expect(one!.chargers).toEqual([{ count: 9, amps: 32, volts: 208, phases: 1, nameplateVa: 59_904, unitVa: 64_800 }]);
    // 59,904 / (sqrt 3 x 208) = 166.28 A, x 1.25 = 207.85; 64,800 / 360.27 = 179.87 A, x 1.25 = 224.83.
    expect(caseOf(one!, 'connected').amps[0]).toBeCloseTo(166.28, 2);
    expect(caseOf(one!, 'nameplate').designAmps[1]).toBeCloseTo(207.85, 2);
    expect(caseOf(one!, 'unit').designAmps[2]).toBeCloseTo(224.83, 2);
    expect(one!.designAmps).toBeCloseTo(224.83, 2);
    expect(one!.spareAmps).toBeCloseTo(175.17, 2);
    // 64.8 kVA: a transformer of 75 kVA.
    expect(caseOf(one!, 'unit').kva).toBeCloseTo(64.8, 6);
    expect(one!.transformerKva).toBe(75);
  });

  test('what stands already counts 125% of its measured demand, and what does not fit is said', () => {
    const [one] = served(9, { equipment: [{ ...source(208), existingAmps: 150 }, service, panel('P')] });
    // 1.25 x 150 + 224.83 = 412.33 A of 400 A.
    expect(one!.decides).toBe('measured');
    expect(one!.designAmps).toBeCloseTo(412.33, 2);
    expect(caseOf(one!, 'measured').fits).toBe(false);
    expect(caseOf(one!, 'unit').fits).toBe(true);
    // Counted once for the transformer: 64.8 kVA and 150 A x 360.27 V = 54.04 kVA.
    expect(caseOf(one!, 'measured').kva).toBeCloseTo(118.84, 2);
    expect(one!.transformerKva).toBe(150);
  });

  test('energy management holds the chargers under it, and nothing else', () => {
    const [one] = served(9, {
      equipment: [source(208), service, panel('P', { managedAmps: 100 })],
      loads: [load('SE', 'L', { va: 7200, phases: 3, volts: 208, continuous: false })],
    });
    expect(one!.managed).toEqual([
      { equipment: 'P', amps: 100, ceilingVa: 100 * 208 * ROOT3, nameplateVa: 59_904, unitVa: 64_800 },
    ]);
    // 125 A of chargers and 7,200 / 360.27 = 19.99 A beside them, the one at 0.99 and the other at unity.
    expect(one!.designAmps).toBeGreaterThan(144.5);
    expect(one!.designAmps).toBeLessThan(144.99);
    expect(caseOf(one!, 'connected').amps[0]).toBeGreaterThan(185);
  });

  test('chargers that lie on two lines count there, and a charger without a run not at all', () => {
    const site = siteOf({ equipment: [source(208)], chargers: chargers('SVC', 2) });
    const [one] = supplied(site, ['EV-SVC-2']).loads;
    expect(one).toMatchObject({ at: 'SVC', withoutRun: 1, ratingAmps: null, spareAmps: null });
    expect(caseOf(one!, 'nameplate').amps.map((amps) => Math.round(amps))).toEqual([32, 32, 0]);
    expect(caseOf(one!, 'nameplate').fits).toBeNull();
    expect(caseOf(one!, 'nameplate').kva).toBeCloseTo(6.656, 9);
  });

  test('behind a utility’s transformer that is drawn, the first board is taken as the service', () => {
    const [one] = supplied(
      siteOf({
        equipment: [{ ...source(480), existingAmps: 30 }, transformer('T'), panel('P', { mainAmps: 400 })],
        feeders: [feeder('SVC', 'T'), feeder('T', 'P', { breakerAmps: 400 })],
        chargers: chargers('P', 6),
      }),
    ).loads;
    expect(one).toMatchObject({ at: 'P', volts: 208, service: [{ id: 'P', taken: true }] });
    // Measured at 480 V, told at 208 V.
    expect(one!.existingAmps).toBeCloseTo((30 * 480) / 208, 9);
  });

  test('a supply of one panel comes to what a hand calculation on even lines does', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 8 }),
        fc.constantFrom(16, 24, 32, 40, 48, 80),
        fc.option(fc.integer({ min: 20, max: 300 }), { nil: undefined }),
        (threes, amps, managedAmps) => {
          const [one] = served(3 * threes, {
            equipment: [source(208), service, panel('P', managedAmps === undefined ? {} : { managedAmps })],
            chargers: chargers('P', 3 * threes, { amps }),
          });
          const by = serviceLoad(NEC_2023, {
            volts: 208,
            phases: 3,
            chargers: [{ count: 3 * threes, amps }],
            managedAmps,
            ratingAmps: 400,
          });
          expect(one!.designAmps).toBeCloseTo(by.designAmps, 6);
          expect(one!.transformerKva).toBe(by.transformerKva);
          expect(one!.cases.map(({ fits }) => fits)).toEqual(by.cases.map(({ fits }) => fits));
        },
      ),
      { numRuns: 60 },
    );
  });

  test('what does not fit beside a measured demand fails, with the figures of the calculation', () => {
    const over = { equipment: [{ ...source(208), existingAmps: 150 }, service, panel('P')] };
    const parts = {
      feeders: [feeder('SVC', 'SE', { breakerAmps: 400 }), feeder('SE', 'P', { breakerAmps: 400 })],
      chargers: chargers('P', 9),
    };
    const result = supplied(siteOf({ ...over, ...parts }));
    const finding = result.findings.find(({ rule }) => rule === 'service-load')!;
    expect(finding).toMatchObject({ severity: 'fail', about: ['SVC', 'SE'], limit: 400, source: 'NEC 2023 220.87' });
    expect(finding.value).toBeCloseTo(result.loads[0]!.designAmps, 9);
    // 1.25 x 140 + 224.83 = 399.83 A fits.
    const fitting = [{ ...source(208), existingAmps: 140 }, service, panel('P')];
    expect(supplied(siteOf({ equipment: fitting, ...parts })).findings.map(({ rule }) => rule)).not.toContain(
      'service-load',
    );
  });

  test('a measured demand is not gone by where generation may have shaved it', () => {
    const result = supplied(
      siteOf({
        equipment: [{ ...source(208), existingAmps: 10 }],
        chargers: chargers('SVC', 3),
        loads: [load('SVC', 'PV', { va: 5000, phases: 3, volts: 208, generation: true })],
      }),
    );
    expect(result.findings.filter(({ rule }) => rule === 'service-load').map(({ severity }) => severity)).toEqual([
      'warn',
    ]);
  });

  test('the feeder of a transformer carries the least load of its chargers too', () => {
    // 16 of 24 A: 79.87 kVA, 120.1 A at 480 V with 125%; of 7,200 VA each 115.2 kVA, 173.2 A.
    const behind = (breakerAmps: number) =>
      supplied(
        siteOf({
          equipment: [source(480), transformer('T'), panel('P')],
          feeders: [feeder('SVC', 'T', { breakerAmps }), feeder('T', 'P', { breakerAmps: 600 })],
          chargers: chargers('P', 16, { amps: 24 }),
        }),
      ).findings.filter(({ rule }) => rule === 'unit-load');
    const [finding] = behind(150);
    expect(finding).toMatchObject({ severity: 'fail', about: ['F-T', 'T'], limit: 150 });
    expect(finding!.value).toBeGreaterThan(173);
    expect(behind(200)).toEqual([]);
  });

  test('of any tree: no way of counting is under a lesser one, ceilings only lower, and a charger more lowers nothing', () => {
    const one = (count: number, amps: number, ceiling?: number) =>
      supplied(
        siteOf({
          equipment: [
            source(480),
            transformer('T'),
            panel('M'),
            panel('P', ceiling === undefined ? {} : { managedAmps: ceiling }),
          ],
          feeders: [feeder('SVC', 'T'), feeder('T', 'M'), feeder('M', 'P')],
          chargers: [...chargers('P', count, { amps }), ...chargers('M', 2, { amps: 16 })],
          loads: [load('M', 'L', { va: 3000 })],
        }),
      ).loads[0]!;
    const most = (of: LoadCalculation, method: string): number => Math.max(...caseOf(of, method).designAmps);
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 12 }),
        fc.constantFrom(16, 24, 32, 48),
        fc.integer({ min: 10, max: 200 }),
        (count, amps, ceiling) => {
          const [free, held, more] = [one(count, amps), one(count, amps, ceiling), one(count + 1, amps)];
          expect(most(free, 'unit')).toBeGreaterThanOrEqual(most(free, 'nameplate') - 1e-6);
          expect(most(held, 'unit')).toBeLessThanOrEqual(most(free, 'unit') + 1e-6);
          expect(most(more, 'unit')).toBeGreaterThanOrEqual(most(free, 'unit') - 1e-6);
          // Volt-amperes of the chargers and the loads, all but in phase.
          const va = 208 * (count * amps + 32) + 3000;
          expect(caseOf(held, 'connected').kva).toBeLessThanOrEqual(va / 1000 + 1e-9);
          expect(caseOf(held, 'connected').kva).toBeGreaterThan((0.99 * va) / 1000);
        },
      ),
      { numRuns: 40 },
    );
  });

  test('the steps come to the same figures', () => {
    const { result, steps } = explained((tell) =>
      serviceLoad(
        NEC_2023,
        { volts: 208, phases: 3, chargers: [{ count: 10, amps: 32 }], existingAmps: 80, ratingAmps: 400 },
        tell,
      ),
    );
    expect(steps.map(({ find }) => find)).toEqual([
      'load of 10 chargers of 32 A',
      'other loads',
      'calculated load',
      'amperes to be designed for',
      'with what stands already',
      'rest of the rating of the service',
      'transformer to ask the utility for',
    ]);
    expect(steps[4]!.result).toBe(result.designAmps);
    expect(steps[0]!.source).toBe('NEC 2023 220.57');
  });
});

test('equipment tells its demand by least loads beside that by ratings, where it is more', () => {
  const rows = (amps: number) =>
    supplied(
      siteOf({
        equipment: [source(208), panel('P')],
        feeders: [feeder('SVC', 'P')],
        chargers: chargers('P', 9, { amps }),
      }),
    ).supply.equipment;
  // 6 x 24 A at 208 V on even lines: 103.9 A and, of 7,200 VA each, 149.9 A; here nine of them, half as much again.
  expect(rows(24)[1]!.demandAmps).toBeCloseTo(1.5 * 103.92, 1);
  expect(rows(24)[1]!.unitDemandAmps).toBeCloseTo(1.5 * 149.89, 1);
  expect(rows(40)[1]!.unitDemandAmps).toBeUndefined();
});
