import { describe, expect, test } from 'vitest';
import { CALC_KINDS } from '../../../calc/cli/kinds/index.ts';
import { SILENT } from '../../../calc/words/explain.ts';

/** `calc load` against published worked examples of the load of charging equipment, read in excerpts. */
const load = (input: object) => {
  const result = CALC_KINDS.get('load')!(input, SILENT);
  if (!result.ok) throw new Error(JSON.stringify(result.errors));
  return result.value as {
    readonly chargers: readonly { readonly unitVa: number; readonly nameplateVa: number }[];
    readonly designAmps: number;
    readonly managedVa?: number;
    readonly cases: readonly {
      readonly method: string;
      readonly kva: number;
      readonly amps: number;
      readonly fits?: boolean;
    }[];
    readonly fits?: boolean;
    readonly spareAmps?: number;
  };
};

describe('a training course on the 2023 code, lesson on the load of charging equipment', () => {
  test('equipment of 5,000 VA counts 7,200 VA, of 14,400 VA as much as its nameplate', () => {
    const [small, large] = load({
      volts: 240,
      phases: 1,
      chargers: [
        { count: 1, amps: 5000 / 240 },
        { count: 1, amps: 60 },
      ],
    }).chargers;
    expect(small!.nameplateVa).toBeCloseTo(5000, 9);
    expect(small!.unitVa).toBe(7200);
    expect(large!.unitVa).toBe(14_400);
  });
});

describe('a calculator’s page on the feeder of several chargers, worked example', () => {
  const five = { volts: 240, phases: 1, chargers: [{ count: 5, amps: 40 }] } as const;
  test('five of 40 A at 240 V: 250 A to be designed for', () => {
    const { designAmps, cases } = load(five);
    expect(designAmps).toBe(250);
    // The page gives 60 kVA with the 125% in it.
    expect(cases.find(({ method }) => method === 'unit')!.kva * 1.25).toBe(60);
  });
  test('managed to 60% of that: 150 A and 36 kVA', () => {
    const { designAmps, managedVa } = load({ ...five, managedAmps: 120 });
    expect(designAmps).toBe(150);
    expect(managedVa! * 1.25).toBe(36_000);
  });
});

describe('measured demand, by the letter of the rule as several pages give it', () => {
  // The maximum demand at 125 percent plus the new load is held against the rating of the service.
  test('480 A of an 800 A service leaves 200 A', () => {
    const ten = { volts: 480, phases: 3, existingAmps: 480, ratingAmps: 800 } as const;
    const fits = load({ ...ten, chargers: [{ count: 2, amps: 80, phases: 3 }] });
    expect(fits).toMatchObject({ fits: true, spareAmps: 0, designAmps: 800 });
    expect(load({ ...ten, chargers: [{ count: 2, amps: 80.1, phases: 3 }] }).fits).toBe(false);
  });
});
