import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { phasorDrop } from '../../../calc/circuits/line-drop.ts';
import { supplyOf } from '../../../calc/supply/supply.ts';
import { linesOf } from '../../../calc/supply/tree/supply-lines.ts';
import { NEC_2023 } from '../../../calc/tables/nec-2023/nec-2023.ts';
import type { Run } from '../../../routing/network/run.ts';
import type { Site } from '../../../routing/site/site.ts';
import {
  BRANCH,
  chargers,
  feeder,
  load,
  type Parts,
  panel,
  siteOf,
  source,
  supplied,
  transformer,
} from './small-site.ts';

const rowOf = (site: Site, id: string) => supplied(site).supply.equipment.find((row) => row.id === id)!;

const behind480 = (count: number, rest: Partial<Parts> = {}): Parts => ({
  equipment: [source(480), transformer('T'), panel('P')],
  feeders: [feeder('SVC', 'T', { length: 300 }), feeder('T', 'P', { length: 20, breakerAmps: 400 })],
  chargers: chargers('P', count),
  ...rest,
});

describe('the supply of a site', () => {
  test('one charger beside its source drops what a single circuit does, in phasors', () => {
    const { boxes, supply } = supplied(siteOf({ equipment: [source(208)], chargers: chargers('SVC', 1) }));
    const single = phasorDrop({ phases: 1, volts: 208, amps: 32, ...BRANCH, powerFactor: 0.99 });
    expect(boxes[0]!.volts).toBeCloseTo(single.voltsAtLoad, 9);
    expect(boxes[0]!.totalDropPercent).toBeCloseTo(single.dropPercent, 9);
    expect(boxes[0]!.branchDropPercent).toBeCloseTo(single.dropPercent, 9);
    expect(supply.equipment[0]!.amps).toMatchObject({ A: expect.closeTo(32, 9), B: expect.closeTo(32, 9), C: 0 });
  });

  test('a three-phase charger beside its source drops what a balanced circuit does', () => {
    const three = chargers('SVC', 1, { phases: 3, volts: 480 });
    const { boxes } = supplied(siteOf({ equipment: [source(480)], chargers: three }));
    const balanced = phasorDrop({ phases: 3, volts: 480, amps: 32, ...BRANCH, powerFactor: 0.99 });
    expect(boxes[0]!.volts).toBeCloseTo(balanced.voltsAtLoad, 9);
  });

  test('the total drop is that of the feeders and that of the branch', () => {
    const site = siteOf(behind480(6));
    const { boxes, supply } = supplied(site);
    const at = supply.equipment.find(({ id }) => id === 'P')!;
    const ahead = (100 * (208 - at.volts.AB)) / 208;
    expect(boxes[0]!.totalDropPercent).toBeCloseTo(ahead + boxes[0]!.branchDropPercent, 9);
  });

  test('a charger without a run draws nothing and has no box', () => {
    const site = siteOf(behind480(3));
    const { boxes, supply } = supplied(site, ['EV-P-2']);
    expect(boxes[1]).toBeNull();
    const fewer = siteOf({ ...behind480(3), chargers: [site.chargers[0]!, { ...site.chargers[2]!, id: 'other' }] });
    expect(supply.equipment[2]!.connectedVa).toBeCloseTo(2 * 32 * 208, 6);
    expect(rowOf(fewer, 'P').connectedVa).toBeCloseTo(2 * 32 * 208, 6);
  });

  test('demand counts continuous load 125% and other load once', () => {
    const loads = [load('P', 'L', { phases: 3, volts: 208, va: 3600, continuous: false })];
    const site = siteOf({ equipment: [panel('P')], loads });
    expect(rowOf(site, 'P').demandAmps).toBeCloseTo(3600 / (Math.sqrt(3) * 208), 9);
    const steady = siteOf({ equipment: [panel('P')], loads: [{ ...loads[0]!, continuous: true }] });
    expect(rowOf(steady, 'P').demandAmps).toBeCloseTo((1.25 * 3600) / (Math.sqrt(3) * 208), 9);
    // Three equal two-pole chargers make sqrt 3 of one in each line.
    const three = siteOf({ equipment: [panel('P')], chargers: chargers('P', 3) });
    expect(rowOf(three, 'P').demandAmps).toBeCloseTo(1.25 * Math.sqrt(3) * 32, 6);
  });

  test('demand on the other side of a transformer is in the ratio of the voltages', () => {
    const { feeders, transformers } = supplied(siteOf(behind480(12))).supply;
    const [ahead, behind] = feeders;
    expect(ahead!.demandAmps).toBeCloseTo((behind!.demandAmps * 208) / 480, 6);
    // 12 chargers of 32 A at 208 V are 80 kVA; at the lower voltage that is there they take a little less.
    expect(transformers[0]!.loadKva).toBeGreaterThan(75);
    expect(transformers[0]!.loadKva).toBeLessThan(80);
    expect(transformers[0]!.percentLoaded).toBeCloseTo((100 * transformers[0]!.loadKva) / 150, 9);
  });

  test('load management scales all chargers under it by one factor, and only where they exceed it', () => {
    const equipment = [panel('P', { managedAmps: 100 })];
    const site = siteOf({ equipment, chargers: chargers('P', 12) });
    const row = rowOf(site, 'P');
    expect(Math.max(row.amps.A, row.amps.B, row.amps.C)).toBeCloseTo(100, 8);
    expect(row.chargerShare).toBeCloseTo(100 / ((12 / 3) * 32 * Math.sqrt(3)), 8);
    expect(row.demandAmps).toBeCloseTo(125, 6);
    expect(rowOf(siteOf({ equipment, chargers: chargers('P', 3) }), 'P').chargerShare).toBe(1);
  });

  test('a ceiling above counts all chargers beyond it, after the ceilings there', () => {
    const site = siteOf({
      equipment: [source(208), panel('M', { managedAmps: 100 }), panel('P', { managedAmps: 80 }), panel('Q')],
      feeders: [feeder('SVC', 'M'), feeder('M', 'P'), feeder('M', 'Q')],
      chargers: [...chargers('P', 6), ...chargers('Q', 3)],
    });
    const { equipment } = supplied(site).supply;
    const share = (id: string): number => equipment.find((row) => row.id === id)!.chargerShare;
    const amps = equipment.find((row) => row.id === 'M')!.amps;
    expect(Math.max(amps.A, amps.B, amps.C)).toBeCloseTo(100, 8);
    // P alone would have 80 of 110.9 A; both are then scaled by the same factor.
    expect(share('P') / share('Q')).toBeCloseTo(80 / (2 * 32 * Math.sqrt(3)), 3);
  });

  test('the neutral of a four-wire feeder moves with the load on it; a three-wire one has none', () => {
    const site = siteOf({
      equipment: [source(208), panel('P')],
      feeders: [feeder('SVC', 'P')],
      loads: [load('P', 'L', { va: 6000 })],
    });
    const { equipment, feeders } = supplied(site).supply;
    const at = equipment[1]!;
    expect(feeders[0]!.amps.N).toBeCloseTo(feeders[0]!.amps.A, 9);
    expect(at.volts.AN!).toBeLessThan(at.volts.BN!);
    // The loaded line falls by two conductors, the others rise by about half of one: section 5's shift.
    expect(at.volts.BN!).toBeGreaterThan(208 / Math.sqrt(3));
    const three = supplied(
      siteOf({ equipment: [source(240), panel('P', { volts: 240 })], feeders: [feeder('SVC', 'P')] }),
    );
    expect(three.supply.equipment[1]!.volts.AN).toBeUndefined();
    expect(three.supply.feeders[0]!.amps.N).toBeUndefined();
  });

  test('generation is given with and without, and only where there is some', () => {
    const solar = load('P', 'PV', { volts: 208, phases: 3, va: 20_000, generation: true });
    const site = siteOf(behind480(6, { loads: [solar] }));
    const { supply } = supplied(site);
    const [on, off] = [supply, supply.withoutGeneration!].map((one) => one.equipment[2]!);
    expect(on!.amps.A).toBeLessThan(off!.amps.A);
    expect(on!.volts.AB).toBeGreaterThan(off!.volts.AB);
    expect(on!.demandAmps).toBe(off!.demandAmps);
    expect(supplied(siteOf(behind480(6))).supply.withoutGeneration).toBeUndefined();
  });

  test('available fault current is full-load amperes over percent impedance, and less behind a feeder', () => {
    const { equipment } = supplied(
      siteOf(behind480(1, { rules: { fault: { coldC: 75, impedanceTolerance: 0 } } })),
    ).supply;
    const [svc, t, p] = equipment;
    expect(svc!.faultAmps).toBeUndefined();
    // A source without a figure is unlimited: the feeder ahead of the transformer is all that is in its way.
    const fullLoad = (150_000 / (Math.sqrt(3) * 208)) * (100 / 4.5);
    expect(t!.faultAmps!).toBeLessThan(fullLoad);
    const { rules, ...free } = behind480(1, { feeders: [feeder('T', 'P', { length: 20 })] });
    const alone = supplied(siteOf({ ...free, rules: { ...rules, fault: { coldC: 75, impedanceTolerance: 0 } } }));
    expect(alone.supply.equipment.find(({ id }) => id === 'T')!.faultAmps).toBeCloseTo(fullLoad, 6);
    expect(p!.faultAmps!).toBeLessThan(t!.faultAmps!);
  });

  test('renaming everything changes nothing but the names', () => {
    const parts = behind480(5, { loads: [load('P', 'L1'), load('P', 'L2', { va: 900 })] });
    const rename = (text: string): string => `${text}'`;
    const renamed: Parts = {
      equipment: parts.equipment.map((one) => ({ ...one, id: rename(one.id) })),
      feeders: parts.feeders!.map((one) => ({
        ...one,
        id: rename(one.id),
        from: rename(one.from),
        to: rename(one.to),
      })),
      loads: parts.loads!.map((one) => ({ ...one, id: rename(one.id), from: rename(one.from) })),
      chargers: parts.chargers!.map((one) => ({ ...one, id: rename(one.id), from: rename(one.from) })),
    };
    const plain = supplied(siteOf(parts));
    const other = supplied(siteOf(renamed));
    const bare = ({ id: _, ...rest }: { id: string }): object => rest;
    expect(other.supply.equipment.map(bare)).toEqual(plain.supply.equipment.map(bare));
    expect(other.supply.feeders.map(bare)).toEqual(plain.supply.feeders.map(bare));
    expect(other.boxes).toEqual(plain.boxes);
  });

  test('the order of equipment and feeders in the file changes no figure', () => {
    const equipment = [source(480), transformer('T'), panel('P'), panel('Q'), panel('R', { phases: 1 })];
    const feeders = [
      feeder('SVC', 'T'),
      feeder('T', 'P'),
      feeder('T', 'Q', { length: 150 }),
      feeder('Q', 'R', { length: 40 }),
    ];
    const rest = {
      chargers: [...chargers('Q', 4), ...chargers('P', 5), ...chargers('R', 2)],
      loads: [load('P', 'L1'), load('Q', 'L2', { va: 3000 })],
    };
    const plain = supplied(siteOf({ equipment, feeders, ...rest }));
    fc.assert(
      fc.property(
        fc.shuffledSubarray(equipment, { minLength: 5 }),
        fc.shuffledSubarray(feeders, { minLength: 4 }),
        (shuffled, shuffledFeeders) => {
          const other = supplied(siteOf({ equipment: shuffled, feeders: shuffledFeeders, ...rest }));
          for (const row of plain.supply.equipment) {
            const same = other.supply.equipment.find(({ id }) => id === row.id)!;
            expect(same.volts.AB).toBeCloseTo(row.volts.AB, 6);
            expect(same.amps.A).toBeCloseTo(row.amps.A, 6);
            expect(same.demandAmps).toBeCloseTo(row.demandAmps, 6);
          }
          other.boxes.forEach((box, i) => {
            expect(box!.volts).toBeCloseTo(plain.boxes[i]!.volts, 6);
          });
        },
      ),
      { numRuns: 30 },
    );
  });

  test('the drop grows with the length of the feeder, with the chargers on it and with their branch', () => {
    const worst = (length: number, count: number, r: number): number => {
      const feeders = [feeder('SVC', 'P', { length })];
      const site = siteOf({ equipment: [source(208), panel('P')], feeders, chargers: chargers('P', count) });
      const { boxes } = supplied(site, [], { r, x: 0.005 });
      return Math.max(...boxes.map((box) => box!.totalDropPercent));
    };
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 400 }),
        fc.integer({ min: 1, max: 8 }),
        fc.double({ min: 0.01, max: 0.3, noNaN: true }),
        (length, count, r) => {
          const here = worst(length, 3 * count, r);
          expect(worst(length + 10, 3 * count, r)).toBeGreaterThan(here);
          expect(worst(length, 3 * count, r * 1.1)).toBeGreaterThan(here);
          if (length > 0) expect(worst(length, 3 * count + 3, r)).toBeGreaterThan(here);
        },
      ),
      { numRuns: 60 },
    );
  });

  test('a feeder without a length follows the raceways, in what they are made of', () => {
    const { length: _l, raceway: _r, ...bare } = feeder('SVC', 'P');
    const along = (method: 'EMT' | 'PVC40'): ReturnType<typeof supplied> =>
      supplied(
        siteOf({
          equipment: [source(208), { ...panel('P'), entry: [100, 0, 0] }],
          feeders: [bare],
          chargers: chargers('P', 6),
          raceways: [
            {
              id: 'R',
              path: [
                [0, 0, 3],
                [100, 0, 3],
              ],
              method,
              place: 'surface',
            },
          ],
        }),
      );
    const given = (raceway: 'EMT' | 'PVC40'): ReturnType<typeof supplied> =>
      supplied(
        siteOf({
          equipment: [source(208), panel('P')],
          feeders: [{ ...bare, length: 106, raceway }],
          chargers: chargers('P', 6),
        }),
      );
    expect(along('EMT').supply.feeders[0]!.length).toBeCloseTo(106, 9);
    for (const method of ['EMT', 'PVC40'] as const)
      expect(along(method).supply.feeders[0]!.dropPercent).toBeCloseTo(given(method).supply.feeders[0]!.dropPercent, 9);
    expect(along('EMT').supply.feeders[0]!.dropPercent).not.toBeCloseTo(
      along('PVC40').supply.feeders[0]!.dropPercent,
      3,
    );
  });

  test('sets in parallel share the impedance of a feeder', () => {
    const drop = (sets: number, length: number): number => {
      const conductor = { size: '3/0', metal: 'copper', sets, insulation: 'XHHW-2' } as const;
      const feeders = [feeder('SVC', 'P', { length, conductor })];
      return supplied(siteOf({ equipment: [source(208), panel('P')], feeders, chargers: chargers('P', 6) })).supply
        .feeders[0]!.dropPercent;
    };
    expect(drop(2, 200)).toBeCloseTo(drop(1, 100), 9);
  });

  test('a longer branch changes the volts at its own box only; all else is the same object', () => {
    const site = siteOf(behind480(6));
    const runs = site.chargers.map(({ id }) => ({ charger: id, length: 90 }) as Run);
    const ohms = site.chargers.map(() => BRANCH);
    const first = supplyOf(site, runs, ohms, NEC_2023);
    const longer = supplyOf(
      { ...site, drops: [...site.drops] },
      runs.with(2, { ...runs[2]!, length: 120 }),
      ohms.with(2, { r: 0.1, x: 0.007 }),
      NEC_2023,
    );
    expect(longer.supply).toBe(first.supply);
    longer.boxes.forEach((box, i) => {
      if (i === 2) expect(box!.volts).toBeLessThan(first.boxes[2]!.volts);
      else expect(box).toBe(first.boxes[i]);
    });
    const lost = supplyOf(site, runs.with(2, { ...runs[2]!, length: null }), ohms, NEC_2023);
    expect(lost.supply.equipment[2]!.connectedVa).toBeCloseTo(5 * 32 * 208, 6);
  });

  test('lines are decided without regard to drops and runs', () => {
    const site = siteOf(behind480(6));
    expect(linesOf({ ...site, drops: [] })).toBe(linesOf(site));
  });

  test('a feeder past its greatest power has figures at nominal voltage and a finding that says so', () => {
    const loads = [load('P', 'L', { phases: 3, volts: 208, va: 5e6 })];
    const result = supplied(
      siteOf({ equipment: [source(208), panel('P')], feeders: [feeder('SVC', 'P', { length: 500 })], loads }),
    );
    expect(result.findings.find(({ rule }) => rule === 'supply-unsettled')).toMatchObject({
      severity: 'fail',
      about: ['SVC'],
    });
    expect(JSON.stringify(result.supply)).not.toContain('null');
  });

  test('an empty site has an empty supply', () => {
    const { supply, boxes, findings } = supplied(siteOf({ equipment: [] }));
    expect(supply).toEqual({ equipment: [], feeders: [], transformers: [], loads: [], bonded: [] });
    expect(boxes).toEqual([]);
    expect(findings).toEqual([]);
  });
});

test('where generation is drawn the highest volts are those of it alone', () => {
  // 60 kVA at 208 V is 166.5 A in step with the volts; 600 ft of 3/0 in PVC are 0.0462 + j0.0252 ohm a line.
  const parts = {
    equipment: [source(208), panel('P')],
    feeders: [feeder('SVC', 'P', { length: 600 })],
    chargers: chargers('P', 3),
  };
  const pv = load('P', 'PV', { volts: 208, phases: 3, va: 60_000, generation: true });
  const at = (loads: (typeof pv)[]) =>
    supplied(siteOf({ ...parts, loads })).supply.equipment.find(({ id }) => id === 'P')!;
  // 20,000 W a line at V: I = 20,000 / V. At 127.28 V 157.1 A: (127.28 - 7.26)² + 3.96² = 120.09². So 220.46 V.
  expect(at([pv]).highestVolts).toBeCloseTo(220.46, 1);
  expect(at([pv]).volts.AB).toBeLessThan(at([pv]).highestVolts!);
  expect(at([]).highestVolts).toBeUndefined();
});
