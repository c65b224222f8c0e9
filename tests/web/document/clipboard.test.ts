import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { SiteFile } from '../../../routing/site/site.ts';
import type { Ref } from '../../../web/document/change/element-lists.ts';
import { insertedBy } from '../../../web/document/change/selection.ts';
import { type Clip, paste, readClip, writeClip } from '../../../web/document/clipboard.ts';
import { emptySite } from '../../../web/document/opening.ts';
import { checkEdit } from './edits/check-edit.ts';
import { SMALL } from './small-site.ts';

const BAY: readonly Ref[] = [
  { list: 'stalls', id: 'S07' },
  { list: 'stalls', id: 'S08' },
  { list: 'drops', id: 'D1' },
];

function clipOf(file: SiteFile, refs: readonly Ref[]): Clip {
  const read = readClip(writeClip(file, refs));
  return read?.ok ? read.clip : expect.fail('the copy cannot be read');
}

describe('copying to another tab', () => {
  test('a bay comes with its charger and vehicle class, and the charger finds the panel of the same name', () => {
    const other: SiteFile = { ...emptySite('Other'), equipment: SMALL.equipment!, stalls: [SMALL.stalls![1]!] };
    const edit = paste(other, clipOf(SMALL, BAY), [104.5, 118]);
    const after = checkEdit(other, edit);
    expect(edit.name).toBe('Paste 4 elements');
    expect(after.stalls?.map(({ id }) => id)).toEqual(['S08', 'S09', 'S10']);
    expect(after.chargers).toEqual([{ ...SMALL.chargers![0], stalls: ['S09', 'S10'] }]);
    expect(after.stalls?.map(({ label }) => label)).toEqual(['8', '9', '10']);
    expect(after.vehicles).toEqual(SMALL.vehicles);
    expect(insertedBy(edit)).toHaveLength(4);
  });

  test('the middle of what is pasted lies where it was put', () => {
    const edit = paste(emptySite(), clipOf(SMALL, [{ list: 'raceways', id: 'R1' }]), [100, 50]);
    expect(checkEdit(emptySite(), edit).raceways?.[0]?.path).toEqual([
      [125, 50, 8],
      [125, 50, 12],
      [75, 50, 12],
    ]);
  });

  test('given no place, it lies beside where it was', () => {
    const after = checkEdit(SMALL, paste(SMALL, clipOf(SMALL, [{ list: 'columns', id: 'C1' }])));
    expect(after.columns?.[1]).toMatchObject({ id: 'C2', at: [7.5, 15] });
  });

  test('what cannot stand in the other site is left out, and the name of the edit says so', () => {
    const edit = paste(emptySite(), clipOf(SMALL, BAY));
    expect(edit.name).toBe('Paste 2 stalls and 1 drop, 1 left out');
    expect(checkEdit(emptySite(), edit).chargers).toBeUndefined();
  });

  test('lengths are the same lengths in a site of other units', () => {
    const metric: SiteFile = { ...emptySite(), units: 'm' };
    const after = checkEdit(metric, paste(metric, clipOf(SMALL, BAY), [0, 0]));
    expect(after.stalls?.[0]).toMatchObject({ width: 2.7432, depth: 5.4864 });
    expect(after.vehicles?.cart).toMatchObject({ length: 2.4384, inlets: [{ along: 1, height: 0.6096 }] });
    expect(after.drops?.[0]?.cord).toBe(6.7056);
  });

  test('a class that the other site knows under the same name stays its own', () => {
    const cart = { ...SMALL.vehicles!.cart!, length: 9 };
    const other: SiteFile = { ...emptySite(), vehicles: { cart } };
    expect(checkEdit(other, paste(other, clipOf(SMALL, BAY))).vehicles).toEqual({ cart });
  });
});

describe('what comes off a clipboard', () => {
  test('is no copy where it is other text', () => {
    for (const text of [
      '',
      'hello',
      '{}',
      'null',
      '[1]',
      '{"format":"overrow/site"}',
      'overrow/elements',
      '"overrow/elements"',
    ]) {
      expect(readClip(text)).toBeNull();
    }
  });

  test('is refused with the place where it is unsound', () => {
    const text = writeClip(SMALL, BAY).replace('"cord":22', '"cord":-22');
    expect(readClip(text)).toMatchObject({ ok: false, says: expect.stringContaining('drops[0].cord') });
    expect(readClip(writeClip(SMALL, BAY).replace('"version":1', '"version":2'))).toMatchObject({ ok: false });
    expect(readClip(writeClip(SMALL, BAY).replace('"units":"ft"', '"units":"yd"'))).toMatchObject({ ok: false });
  });

  test('is a copy or is refused, however it was mangled', () => {
    const text = writeClip(SMALL, BAY);
    fc.assert(
      fc.property(fc.nat(text.length), fc.nat(12), fc.string({ maxLength: 8 }), (at, cut, put) => {
        const read = readClip(text.slice(0, at) + put + text.slice(at + cut));
        if (read?.ok) paste(SMALL, read.clip);
      }),
      { numRuns: 500 },
    );
  });
});
