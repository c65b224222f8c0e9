import { describe, expect, test } from 'vitest';
import { plan } from '../../../../calc/plan/plan.ts';
import { loadSheet } from '../../../../calc/sheets/schedules/load-sheet.ts';
import { faultLabel } from '../../../../calc/supply/fault/fault-labels.ts';
import { whyLoad } from '../../../../calc/why/why-supply.ts';
import type { Load } from '../../../../routing/site/site.ts';
import {
  chargers,
  equipment,
  feeder,
  load,
  type Parts,
  panel,
  siteOf,
  source,
  supplied,
  transformer,
} from '../small-site.ts';

const three = (id: string, va: number, rest: Partial<Load> = {}) =>
  load('P1', id, { volts: 208, phases: 3, va, continuous: false, ...rest });
const VA_10 = Math.sqrt(3) * 208 * 10;

const withLoads = (loads: readonly Load[], more: object = {}): Parts => ({
  equipment: [{ ...source(208), faultAmps: 10_000, faultXr: 5 }, panel('P1', { mainAmps: 200, ...more })],
  feeders: [feeder('SVC', 'P1', { length: 10 })],
  loads: [...loads],
});
const demandOf = (loads: readonly Load[]) =>
  supplied(siteOf(withLoads(loads))).supply.equipment.find(({ id }) => id === 'P1')!.demandAmps;

describe('what loads count', () => {
  test('a demand factor counts in demand, not in what is connected', () => {
    expect(demandOf([three('L1', VA_10)])).toBeCloseTo(10, 6);
    expect(demandOf([three('L1', VA_10, { demand: 0.4 })])).toBeCloseTo(4, 6);
    // Continuous: 125% of what counts.
    expect(demandOf([three('L1', VA_10, { demand: 0.4, continuous: true })])).toBeCloseTo(5, 6);
    const site = siteOf(withLoads([three('L1', VA_10, { demand: 0.4 })]));
    const { loadCalculations, supply } = plan(site);
    const cases = loadCalculations[0]!.cases;
    expect(cases.find(({ method }) => method === 'connected')!.amps[0]).toBeCloseTo(10, 6);
    expect(cases.find(({ method }) => method === 'nameplate')!.designAmps[0]).toBeCloseTo(4, 6);
    expect(supply.equipment.find(({ id }) => id === 'P1')!.connectedVa).toBeCloseTo(VA_10, 6);
    const row = loadSheet(site, plan(site)).find(([, what]) => String(what).startsWith('L1'))!;
    expect(row.slice(1, 5)).toEqual([
      'L1, not continuous, demand factor 0.4',
      1,
      Math.round(VA_10),
      Math.round(0.4 * VA_10),
    ]);
    expect(row.at(-1)).toContain('220.40');
  });

  test('of motors the largest counts 125%, the others once: 1.25 x 20 + 10 + 5 A', () => {
    const motor = (id: string, amps: number) => three(id, (VA_10 * amps) / 10, { motor: true });
    expect(demandOf([motor('M1', 10), motor('M2', 20), motor('M3', 5)])).toBeCloseTo(40, 6);
    // Continuous says nothing more of a motor.
    expect(demandOf([{ ...motor('M1', 10), continuous: true }])).toBeCloseTo(12.5, 6);
    expect(demandOf([motor('M1', 20), three('L1', VA_10, { continuous: true })])).toBeCloseTo(37.5, 6);
  });

  test('the breaker of a motor is 250% of its current at the next rating, not 125%', () => {
    const breaker = (rest: Partial<Load>) =>
      plan(siteOf(withLoads([three('M1', 2 * VA_10, rest)]))).devices.find(({ id }) => id === 'M1')!.amps;
    expect([breaker({ motor: true }), breaker({}), breaker({ continuous: true })]).toEqual([50, 20, 25]);
  });
});

describe('motors at a fault', () => {
  const pump = three('M1', 10 * VA_10, { motor: true });
  const faultOf = (parts: Parts, id = 'P1') =>
    supplied(siteOf(parts)).supply.equipment.find((one) => one.id === id)!.fault!;

  test('add four times their full load to the most in their own system, as the rule has it', () => {
    const [bare, moved] = [faultOf(withLoads([])), faultOf(withLoads([pump]))];
    expect(bare.motorAmps).toBeUndefined();
    expect(moved.most).toBeCloseTo(bare.most, 9);
    expect(moved.motorAmps).toBeCloseTo(400, 6);
    expect(faultOf({ ...withLoads([pump]), rules: { fault: { motorTimes: 6 } } }).motorAmps).toBeCloseTo(600, 6);
    expect(faultOf({ ...withLoads([pump]), rules: { fault: { motorTimes: 0 } } }).motorAmps).toBeUndefined();
    const row = supplied(siteOf(withLoads([pump]))).supply.equipment.find(({ id }) => id === 'P1')!;
    expect(faultLabel(row, '208Y/120 V')).toContain(
      `current ${Math.round(Math.max(moved.most, moved.lineToNeutral!) + 400)} A`,
    );
  });

  test('are held against the interrupting rating, and not across a transformer', () => {
    const bare = faultOf(withLoads([]));
    const just = Math.max(bare.most, bare.lineToNeutral!) + 100;
    const rated = (loads: readonly Load[]) =>
      supplied(siteOf(withLoads(loads, { interruptingAmps: just }))).findings.filter(
        ({ rule }) => rule === 'interrupting-rating',
      );
    expect(rated([])).toEqual([]);
    expect(rated([pump])).toMatchObject([{ severity: 'fail', about: ['P1'] }]);
    const behind: Parts = {
      equipment: [
        { ...source(480), faultAmps: 20_000 },
        equipment('SE', 'service', { volts: 480, mainAmps: 400 }),
        transformer('T1'),
        panel('P1'),
      ],
      feeders: [feeder('SVC', 'SE'), feeder('SE', 'T1'), feeder('T1', 'P1', { length: 5 })],
      loads: [pump],
    };
    expect(faultOf(behind).motorAmps).toBeCloseTo(400, 6);
    expect(faultOf(behind, 'SE').motorAmps).toBeUndefined();
  });

  test('a series rating holds only with motors to 1% of the lower rating', () => {
    const series = (amps: number) =>
      supplied(
        siteOf(
          withLoads([three('M1', (VA_10 * amps) / 10, { motor: true })], {
            interruptingAmps: 5_000,
            seriesAmps: 22_000,
            seriesWith: 'a fuse',
          }),
        ),
      ).findings.filter(({ rule, severity }) => rule === 'interrupting-rating' && severity === 'fail');
    expect(series(49)).toEqual([]);
    expect(series(51)).toMatchObject([{ limit: 50, source: 'NEC 2023 240.86(C)' }]);
    expect(series(51)[0]!.value).toBeCloseTo(51, 6);
  });
});

describe('the fall of volts at a start', () => {
  // 10 kA at 208 V, X/R 5: Z = 208 / sqrt 3 / 10,000 = 0.012009 ohm, R = Z / sqrt 26 = 0.0023551, X = 0.011776.
  const [r, x] = [0.0023551, 0.011776];
  const [cos, sin] = [0.99, Math.sqrt(1 - 0.99 ** 2)];
  const stepsOf = (parts: Parts) => plan(siteOf(parts)).loadCalculations[0]!.steps;
  const lot = (rest: object = {}, cars: object = {}): Parts => ({
    ...withLoads([], rest),
    chargers: chargers('P1', 6, cars),
  });
  /** The same with a way to each box, so that the chargers run. */
  const running = (parts: Parts): Parts => ({
    ...parts,
    equipment: parts.equipment.map((one) => (one.id === 'P1' ? { ...one, entry: [0, 0, 8] as const } : one)),
    raceways: [
      {
        id: 'R1',
        path: [
          [0, 0, 8],
          [30, 0, 8],
        ],
        method: 'EMT',
        place: 'overhead',
      },
    ],
  });

  test('of the largest charger, by hand, at the source and at its board', () => {
    const [one] = stepsOf(running(lot()));
    // 32 A across two lines: 2 x 32 x (R cos + X sin) / 208.
    expect(one).toMatchObject({ of: 'one', charger: 'EV-P1-1', board: 'P1', va: 6656 });
    expect(one!.sourcePercent!).toBeCloseTo((100 * 2 * 32 * (r * cos + x * sin)) / 208, 4);
    // 10 ft of 3/0 copper in PVC behind it (Table 9: R 0.077, X 0.042 ohm per 1,000 ft).
    const [fr, fx] = [r + 0.00077, x + 0.00042];
    expect(one!.boardPercent!).toBeCloseTo((100 * 2 * 32 * (fr * cos + fx * sin)) / 208, 3);
  });

  test('of all at once is more, and less under a ceiling; three-phase chargers count once', () => {
    const [one, all] = stepsOf(running(lot()));
    expect(all!.of).toBe('all');
    expect(all!.sourcePercent!).toBeGreaterThan(one!.sourcePercent!);
    expect(all!.boardPercent!).toBeGreaterThan(all!.sourcePercent!);
    const [, held] = stepsOf(running(lot({ managedAmps: 40 })));
    expect(held!.sourcePercent!).toBeCloseTo((100 * Math.sqrt(3) * 40 * (r * cos + x * sin)) / 208, 2);
    const [wye] = stepsOf(running(lot({}, { phases: 3 })));
    expect(wye!.sourcePercent!).toBeCloseTo((100 * Math.sqrt(3) * 32 * (r * cos + x * sin)) / 208, 4);
  });

  test('a source without a figure has none, and no charger that runs is no step; the sheet and the steps tell it', () => {
    const parts = running(lot());
    const unknown = { ...parts, equipment: [source(208), parts.equipment[1]!] };
    expect(stepsOf(unknown)[0]!.sourcePercent).toBeNull();
    expect(stepsOf(lot())).toEqual([]);
    const site = siteOf(parts);
    const rows = loadSheet(site, plan(site)).map(([, what]) => String(what));
    expect(rows.filter((what) => what.startsWith('volts fall'))).toHaveLength(2);
    expect(whyLoad(site, 'SVC').map(({ find }) => find)).toContain('fall of volts at the start of EV-P1-1');
  });
});
