import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { unprotected } from '../../../calc/circuits/unprotected.ts';
import { CALC_KINDS } from '../../../calc/cli/kinds/index.ts';
import { ampacityAt } from '../../../calc/tables/ampacity-of.ts';
import { NEC_2023 as nec } from '../../../calc/tables/nec-2023/nec-2023.ts';
import { explained, SILENT } from '../../../calc/words/explain.ts';
import service from '../reference/service.json' with { type: 'json' };

interface Told {
  readonly ok: boolean;
  readonly asks: readonly { readonly section: string; readonly holds: boolean; readonly says: string }[];
}

const secondary = (input: object): Told => {
  const result = CALC_KINDS.get('secondary')!(input, SILENT);
  if (!result.ok) throw new Error(JSON.stringify(result.errors));
  return result.value as Told;
};

/** 75 kVA, 480 to 208 V behind 125 A. */
const BEHIND = { primaryAmps: 125, primaryVolts: 480, secondaryVolts: 208 };
const copper = (size: string, sets = 1) => ({ size, metal: 'copper', sets });

describe('the least ampacity of the check values', () => {
  const rows = service.tap_check_rows.filter(({ fraction }) => fraction !== undefined);
  test('there are some of each', () => expect(rows.length).toBe(11));
  test.each(rows)('$fraction of $feeder_ocpd $primary_ocpd', (row) => {
    const of = row.feeder_ocpd === undefined ? 'secondary' : 'tap';
    const least = row.smallest_tap_ampacity ?? row.smallest_secondary_ampacity!;
    const with_ = (ampacity: number) =>
      unprotected(nec, {
        of,
        ampacity,
        length: row.fraction === '1/10' ? 10 : 25,
        deviceAmps: 1,
        aheadAmps: row.feeder_ocpd ?? row.primary_ocpd!,
        ratio: of === 'tap' ? 1 : row.primary_v! / row.secondary_v!,
        outdoors: false,
      });
    // The check values are rounded to a tenth of an ampere.
    expect(with_(least + 0.06).ok).toBe(true);
    expect(with_(least - 0.06).ok).toBe(false);
  });
});

test('a published question: 45 kVA, 480 to 208 V, 175 A at the end of 10 ft asks for 2/0 copper and no less', () => {
  const row = service.tap_check_rows.at(-1)!;
  const given = { length: row.length_ft!, deviceAmps: row.secondary_ocpd!, primaryAmps: 125 };
  const volts = { primaryVolts: row.primary_v!, secondaryVolts: row.secondary_v! };
  const of = (size: string) => secondary({ conductor: copper(size), ...given, ...volts });
  expect(of(row.answer_size_cu!)).toMatchObject({ ok: true, asks: [{ section: '240.21(C)(2)' }, {}, {}] });
  expect(of('1/0').ok).toBe(false);
});

test('no next rating up: 4/0 copper has 230 A, and 250 A is too much at its end', () => {
  const of = (deviceAmps: number) => secondary({ conductor: copper('4/0'), length: 10, deviceAmps, ...BEHIND });
  expect(of(225).ok).toBe(true);
  expect(of(250).asks.filter(({ holds }) => !holds)).toEqual([
    {
      section: '240.21(C)(2)',
      holds: false,
      says: 'end in 250 A, at most the 230 A that they carry; not the next rating up of NEC 2023 240.4(B)',
    },
  ]);
});

test('80 ft of 250 kcmil indoors are too long, outdoors they are not; 25 ft are not, 26 are', () => {
  const of = (length: number, outdoors?: boolean) =>
    secondary({ conductor: copper('250'), length, deviceAmps: 250, ...BEHIND, ...(outdoors && { outdoors }) });
  expect(of(80)).toMatchObject({ ok: false, asks: [{ section: '240.21(C)(6)', holds: false }, {}, {}] });
  expect(of(80, true)).toMatchObject({ ok: true, asks: [{ section: '240.21(C)(4)' }] });
  expect([of(25).ok, of(26).ok]).toEqual([true, false]);
});

test('the tenth of 10 ft, the third of 25 ft, nothing of what lies outdoors', () => {
  // 1/3 x 480/208 x 125 A = 96.2 A: 3 AWG copper has 100 A, 4 AWG 85 A.
  const of = (size: string, length: number, outdoors = false) =>
    secondary({ conductor: copper(size), length, deviceAmps: 80, outdoors, ...BEHIND }).ok;
  expect([of('3', 20), of('4', 20), of('4', 10), of('4', 20, true)]).toEqual([true, false, true, true]);
});

test('steps and what is refused', () => {
  const input = { conductor: copper('4/0'), length: 20, deviceAmps: 225, ...BEHIND };
  const { steps } = explained((tell) => CALC_KINDS.get('secondary')!(input, tell));
  expect(steps.map(({ find }) => find)).toEqual([
    'ampacity',
    ...Array.from({ length: 3 }, () => 'asked by 240.21(C)(6)'),
  ]);
  const refused = (more: object) => CALC_KINDS.get('secondary')!({ ...input, ...more }, SILENT);
  expect(refused({ ambientC: 40 })).toMatchObject({ ok: false, errors: [{ place: 'conductor.insulation' }] });
  expect(refused({ length: -1 }).ok).toBe(false);
  expect(refused({ conductor: { ...copper('14'), metal: 'aluminum' } })).toMatchObject({
    ok: false,
    errors: [{ place: 'conductor.size' }],
  });
});

test('a shorter way, a larger conductor or a smaller device never makes it worse', () => {
  const sizes = ['6', '2', '1/0', '4/0', '350', '600'];
  fc.assert(
    fc.property(
      fc.integer({ min: 0, max: 5 }),
      fc.integer({ min: 0, max: 60 }),
      fc.constantFrom(60, 100, 200, 225, 400),
      fc.constantFrom(50, 125, 400),
      fc.boolean(),
      (at, length, deviceAmps, primaryAmps, outdoors) => {
        const of = (more: object): boolean =>
          secondary({ conductor: copper(sizes[at]!), length, deviceAmps, ...BEHIND, primaryAmps, outdoors, ...more })
            .ok;
        // The rule as the text has it, by a hand of its own.
        const amps = ampacityAt(nec, sizes[at]!, 'copper', 75)!;
        const share = (480 / 208) * primaryAmps;
        const byHand =
          deviceAmps <= amps &&
          (outdoors || (length <= 10 && amps >= share / 10) || (length <= 25 && amps >= share / 3));
        expect(of({})).toBe(byHand);
        if (!byHand) return;
        expect(of({ length: length / 2 })).toBe(true);
        expect(of({ conductor: copper(sizes[Math.min(5, at + 1)]!) })).toBe(true);
        expect(of({ deviceAmps: deviceAmps / 2 })).toBe(true);
      },
    ),
  );
});
