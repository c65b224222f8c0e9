import { describe, expect, test } from 'vitest';
import { CALC_KINDS } from '../../../calc/cli/kinds/index.ts';
import { SILENT } from '../../../calc/words/explain.ts';
import service from '../reference/service.json' with { type: 'json' };

/** The rules of 240.21 for taps that supply a transformer, in high bays and in industrial installations, by hand. */

interface Told {
  readonly ok: boolean;
  readonly asks: readonly { readonly section: string; readonly holds: boolean; readonly says: string }[];
}

const of =
  (name: 'tap' | 'secondary') =>
  (input: object): Told => {
    const result = CALC_KINDS.get(name)!(input, SILENT);
    if (!result.ok) throw new Error(JSON.stringify(result.errors));
    return result.value as Told;
  };
const tap = of('tap');
const secondary = of('secondary');
const copper = (size: string) => ({ size, metal: 'copper' });
const section = ({ asks }: Told) => asks[0]!.section;

const rowOf = (list: readonly { readonly section: string; readonly length_limit_ft: number | null }[], name: string) =>
  list.find((row) => row.section === name)!;
const TAPS = service.feeder_taps_240_21_B;
const SECONDARIES = service.transformer_secondary_240_21_C;

describe('the check values of plain taps, through the kind', () => {
  // Table 310.16, copper at 75 C: 10 AWG 35, 8 AWG 50, 1/0 150, 1 AWG 130, 300 kcmil 285, 250 kcmil 255.
  test.each([
    { feederAmps: 400, length: 10, holds: '8', fails: '10', section: '240.21(B)(1)' },
    { feederAmps: 400, length: 25, holds: '1/0', fails: '1', section: '240.21(B)(2)' },
    { feederAmps: 800, length: 25, holds: '300', fails: '250', section: '240.21(B)(2)' },
  ])('$feederAmps A, $length ft', ({ feederAmps, length, holds, fails, section: name }) => {
    const held = tap({ conductor: copper(holds), length, feederAmps, deviceAmps: 30 });
    expect([held.ok, section(held)]).toEqual([true, name]);
    expect(tap({ conductor: copper(fails), length, feederAmps, deviceAmps: 30 }).ok).toBe(false);
  });
});

describe('a tap that supplies a transformer', () => {
  const limit = rowOf(TAPS, '240.21(B)(3)').length_limit_ft!;

  test('ends in no device, and carries a third of the device ahead over 25 ft at most', () => {
    expect(limit).toBe(25);
    const ends = (size: string, length: number) => tap({ conductor: copper(size), length, feederAmps: 400 });
    // A third of 400 A is 133.3 A: 1/0 copper has 150 A, 1 AWG 130 A.
    expect(ends('1/0', limit)).toMatchObject({ ok: true, asks: [{ section: '240.21(B)(3)' }, {}] });
    expect([ends('1', limit).ok, ends('1/0', limit + 0.1).ok]).toEqual([false, false]);
  });

  test('counts with the secondary: 15 ft of it leave 10 ft, and the secondary carries a third by the ratio of volts', () => {
    const behind = (size: string, length: number, tapLength: number) =>
      secondary({
        conductor: copper(size),
        length,
        deviceAmps: 225,
        primaryAmps: 200,
        primaryVolts: 480,
        secondaryVolts: 208,
        tapLength,
      });
    // 480 / 208 x 200 / 3 = 153.8 A, and 225 A at the end asks for 4/0 (230 A); 3/0 has 200 A.
    expect(behind('4/0', 10, 15)).toMatchObject({
      ok: true,
      asks: [{ section: '240.21(C)(5)' }, { says: expect.stringContaining('1/3 of the 200 A x 2.308') }, {}],
    });
    expect(behind('4/0', 11, 15).ok).toBe(false);
    expect(behind('4/0', 25, 0).ok).toBe(true);
    expect(behind('3/0', 10, 15).asks.filter(({ holds }) => !holds)).toHaveLength(1);
    // 350 A ahead: 269 A, more than 4/0 has.
    const more = { conductor: copper('4/0'), length: 5, deviceAmps: 200, primaryAmps: 350, tapLength: 5 };
    expect(secondary({ ...more, primaryVolts: 480, secondaryVolts: 208 }).ok).toBe(false);
    expect(rowOf(SECONDARIES, '240.21(C)(5)').length_limit_ft).toBe(25);
  });
});

describe('a tap in a high bay', () => {
  const limit = rowOf(TAPS, '240.21(B)(4)').length_limit_ft!;
  const bay = (more: object) =>
    tap({ conductor: copper('1/0'), length: 90, feederAmps: 400, deviceAmps: 150, level: 25, ...more });

  test('is 100 ft in all and 25 ft on the level, a third of the device ahead, 6 AWG copper or 4 AWG aluminum', () => {
    expect(limit).toBe(100);
    expect(bay({})).toMatchObject({ ok: true, asks: [{ section: '240.21(B)(4)' }, {}, {}, {}, {}] });
    expect([bay({ length: 100 }).ok, bay({ length: 101 }).ok, bay({ level: 25.1 }).ok]).toEqual([true, false, false]);
    expect(bay({ conductor: copper('1'), deviceAmps: 125 }).ok).toBe(false);
    const small = (size: string, metal: string) =>
      bay({ conductor: { size, metal }, feederAmps: 90, deviceAmps: 30 }).ok;
    expect([small('6', 'copper'), small('8', 'copper'), small('4', 'aluminum'), small('6', 'aluminum')]).toEqual([
      true,
      false,
      true,
      false,
    ]);
  });

  test('elsewhere 90 ft are too long', () => {
    expect(tap({ conductor: copper('1/0'), length: 90, feederAmps: 400, deviceAmps: 150 }).ok).toBe(false);
  });
});

test('an industrial switchboard: the grouped devices within the ampacity, and that not below the rated current', () => {
  expect(rowOf(SECONDARIES, '240.21(C)(3)').length_limit_ft).toBe(25);
  // 75 kVA at 208 V: 208.2 A. A primary device of 400 A would ask 307.7 A of a third.
  const grouped = (more: object) =>
    secondary({
      conductor: copper('4/0'),
      length: 25,
      deviceAmps: 225,
      primaryAmps: 400,
      primaryVolts: 480,
      secondaryVolts: 208,
      ratedAmps: 75_000 / 208 / Math.sqrt(3),
      ...more,
    });
  expect(grouped({})).toMatchObject({ ok: true, asks: [{ section: '240.21(C)(3)' }, {}, {}] });
  expect(grouped({ deviceAmps: 240 }).ok).toBe(false);
  expect(grouped({ length: 26 }).ok).toBe(false);
  // 3/0 has 200 A, less than the transformer gives.
  expect(grouped({ conductor: copper('3/0'), deviceAmps: 150 }).ok).toBe(false);
});
