import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { linesOf } from '../../../calc/supply/tree/supply-lines.ts';
import { chargers, feeder, load, type Parts, panel, siteOf, source, supplied, transformer } from './small-site.ts';
import { behind480 } from './supply-parts.ts';

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

describe('the supply of a site', () => {
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

  test('lines are decided without regard to drops and runs', () => {
    const site = siteOf(behind480(6));
    expect(linesOf({ ...site, drops: [] })).toBe(linesOf(site));
  });

  test('an empty site has an empty supply', () => {
    const { supply, boxes, findings } = supplied(siteOf({ equipment: [] }));
    expect(supply).toEqual({ equipment: [], feeders: [], transformers: [], loads: [], bonded: [] });
    expect(boxes).toEqual([]);
    expect(findings).toEqual([]);
  });
});
