import { describe, expect, test } from 'vitest';
import { type ExistingFeeder, type FeederWish, feederOptions } from '../../../../calc/supply/feeders/feeder-options.ts';
import { NEC_2023 } from '../../../../calc/tables/nec-2023/nec-2023.ts';

const FEEDER: ExistingFeeder = {
  conductor: { size: '3/0', metal: 'copper', sets: 1, insulation: 'THWN-2' },
  raceway: 'PVC',
  length: 300,
  breakerAmps: 200,
  volts: 208,
};

const WISH: FeederWish = {
  chargers: 12,
  amps: 32,
  panelVolts: 208,
  powerFactor: 0.99,
  otherVa: 0,
  branch: { r: 0.08, x: 0.006 },
  ambientC: 30,
  terminalC: 75,
  chargingHours: 1500,
};

const options = (feeder: Partial<ExistingFeeder> = {}, wish: Partial<FeederWish> = {}) =>
  feederOptions({ ...FEEDER, ...feeder }, { ...WISH, ...wish }, NEC_2023);

const at = (list: ReturnType<typeof options>, volts: number, kva: number | null) =>
  list.find((option) => option.volts === volts && option.kva === kva)!;

describe('what a feeder can carry', () => {
  test('a 32 A charger is 6.7 kW at 208 V and 7.7 kW at 240 V', () => {
    const list = options();
    expect(at(list, 208, null).chargerKw).toBeCloseTo(6.7, 1);
    expect(at(list, 240, null).chargerKw).toBeCloseTo(7.7, 1);
  });

  test('twelve do not fit a 200 A feeder at 208 V, and do at 480 V through 150 kVA', () => {
    // Common practice: 12 x 32 A make 221.7 A at 208 V, of 160 A continuous; 79.9 kVA are 96.1 A at 480 V.
    const list = options();
    const asItIs = at(list, 208, null);
    expect(asItIs).toMatchObject({ atFullRate: 7, allAtFullRate: false, transformerPercent: null });
    const through = at(list, 480, 150);
    expect(through).toMatchObject({ allAtFullRate: true, protection: 'primary only', transformerBreakerAmps: 200 });
    expect(through.transformerPercent).toBeCloseTo((100 * 12 * 32 * 208) / 150_000, 1);
    expect(through.leftKva.onFeeder).toBeCloseTo((Math.sqrt(3) * 480 * (160 - 96.06)) / 1000, 1);
  });

  test('managed, the wished chargers share the 160 A that are left; 6 A each is the floor', () => {
    const { shared, atPilotFloor } = at(options(), 208, null);
    expect(shared!.amps).toBeCloseTo(160 / (4 * Math.sqrt(3)), 2);
    expect(shared!.kw).toBeCloseTo((208 * shared!.amps) / 1000, 9);
    // 46 chargers lie 16, 15, 15: 161.1 A in the worst line; 45 make 155.9 A.
    expect(atPilotFloor).toBe(45);
    expect(at(options({}, { chargers: 60 }), 208, null).shared).toBeNull();
  });

  test('a transformer is not asked for more than its rating', () => {
    const small = at(options(), 480, 45);
    expect(small.allAtFullRate).toBe(false);
    expect(small.transformerPercent).toBeLessThanOrEqual(100);
    // Shared amperes are rounded down to a hundredth.
    expect(45_000 / (Math.sqrt(3) * 208) / (4 * Math.sqrt(3)) - small.shared!.amps).toBeLessThan(0.01);
    // 45 kVA at 480 V is 54.1 A: 250% is 135.3 A, so a 125 A breaker ahead of it.
    expect(small).toMatchObject({ protection: 'primary and secondary', transformerBreakerAmps: 125 });
  });

  test('more volts never carry fewer chargers, nor does a larger transformer', () => {
    const list = options();
    const sizes = NEC_2023.threePhaseTransformers.rows.map(({ kva }) => kva);
    sizes.forEach((kva, i) => {
      expect(at(list, 600, kva).atFullRate).toBeGreaterThanOrEqual(at(list, 480, kva).atFullRate);
      if (i > 0) expect(at(list, 480, kva).atFullRate).toBeGreaterThanOrEqual(at(list, 480, sizes[i - 1]!).atFullRate);
    });
  });

  test('the drop at the worst box falls with the voltage of the feeder and grows with its length', () => {
    const list = options({}, { chargers: 6 });
    expect(at(list, 480, 150).worstDropPercent).toBeLessThan(at(list, 240, 150).worstDropPercent);
    expect(at(options({ length: 400 }, { chargers: 6 }), 208, null).worstDropPercent).toBeGreaterThan(
      at(list, 208, null).worstDropPercent,
    );
  });

  test('other load takes its part, and what is left says so', () => {
    const [alone, beside] = [options(), options({}, { otherVa: 20_000 })].map((list) => at(list, 480, 150));
    // At unity power factor beside 0.99, so a little less than 20 kVA in the line current.
    expect(beside!.leftKva.onFeeder).toBeCloseTo(alone!.leftKva.onFeeder - 20, 0);
    expect(at(options({}, { otherVa: 20_000 }), 208, null).atFullRate).toBeLessThan(7);
  });

  test('only higher voltages are offered, to 600 V', () => {
    expect([...new Set(options({ volts: 480 }).map(({ volts }) => volts))]).toEqual([480, 600]);
    expect([...new Set(options().map(({ volts }) => volts))]).toEqual([208, 240, 480, 600]);
    const to240 = options({}, { panelVolts: 240 });
    expect(to240.filter(({ volts, kva }) => volts === 240 && kva !== null)).toEqual([]);
  });

  test('conductors smaller than their breaker decide', () => {
    const thin = { conductor: { ...FEEDER.conductor, size: '1/0' } };
    // 1/0 copper carries 150 A at 75 C: 120 A continuous.
    expect(at(options(thin), 208, null).shared!.amps).toBeCloseTo(120 / (4 * Math.sqrt(3)), 2);
  });

  test('a conductor that the tables lack is a mistake of the caller', () => {
    expect(() => options({ conductor: { ...FEEDER.conductor, size: '7' } })).toThrow(RangeError);
  });
});
