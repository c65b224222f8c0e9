import { describe, expect, test } from 'vitest';
import { newId, newIds } from '../../../../routing/site/new-id.ts';
import type { SiteFile } from '../../../../routing/site/site.ts';
import { toSite } from '../../../../routing/site/to-site.ts';
import { addAll, addElements } from '../../../../web/document/edits/add.ts';
import { changeElements } from '../../../../web/document/edits/change.ts';
import { recordAsBuilt } from '../../../../web/document/edits/records/records.ts';
import { relabel, rename, renumber } from '../../../../web/document/edits/rename.ts';
import { changeRules, nameSite, setGridlines, setVehicles } from '../../../../web/document/edits/set.ts';
import { SMALL } from '../small-site.ts';
import { testPen } from '../test-pen.ts';
import { changeElement } from './change-element.ts';
import { checkEdit } from './check-edit.ts';

const METRIC: SiteFile = { ...SMALL, units: 'm' };
const BARE: SiteFile = { format: 'overrow/site', version: 1, units: 'ft', name: 'bare' };

describe('changeElement', () => {
  test('sets the fields given and takes away those given as undefined', () => {
    const edit = changeElement(SMALL, 'D1', { cord: 25, retractor: undefined });
    expect(edit.name).toBe('Change cord and retractor of drop D1');
    expect(checkEdit(SMALL, edit).drops?.[0]).toEqual({ id: 'D1', box: [4.5, 18, 12], cord: 25 });
  });

  test('takes lengths in feet and nothing else: a metric file keeps amps as they are', () => {
    expect(checkEdit(METRIC, changeElement(METRIC, 'D1', { cord: 25 })).drops?.[0]?.cord).toBe(7.62);
    const charger = checkEdit(METRIC, changeElement(METRIC, 'E1', { amps: 40, branchLimit: 100 })).chargers?.[0];
    expect(charger).toMatchObject({ amps: 40, branchLimit: 30.48 });
  });

  test('the same value again is no change', () => {
    expect(changeElement(SMALL, 'D1', { cord: 22, box: [4.5, 18, 12] }).steps).toEqual([]);
    expect(changeElement(SMALL, 'nobody', { cord: 22 }).steps).toEqual([]);
  });

  test('changes many at once, under one name', () => {
    const refs = SMALL.drops!.map(({ id }) => ({ list: 'drops', id }) as const);
    const edit = changeElements(SMALL, refs, { restHeight: 3 });
    expect(edit.name).toBe('Change rest height of 2 drops');
    expect(checkEdit(SMALL, edit).drops?.map(({ restHeight }) => restHeight)).toEqual([3, 3]);
  });
});

describe('addElements', () => {
  test('gives a file without the list one', () => {
    const after = checkEdit(BARE, addElements(BARE, 'columns', [{ id: 'C1', at: [1, 2], size: [1, 1] }]));
    expect(after).toEqual({ ...BARE, columns: [{ id: 'C1', at: [1, 2], size: [1, 1] }] });
  });

  test('takes feet into a metric file', () => {
    const after = checkEdit(
      METRIC,
      addElements(METRIC, 'columns', [{ id: 'C9', at: [10, 20], size: [1, 1], rotation: 45 }]),
    );
    expect(after.columns?.at(-1)).toEqual({ id: 'C9', at: [3.048, 6.096], size: [0.3048, 0.3048], rotation: 45 });
  });

  test('adds to several lists as one edit', () => {
    const edit = addAll(BARE, 'Draw a bay', {
      stalls: [{ id: 'S1', at: [0, 0], width: 9, depth: 18, heading: 90 }],
      columns: [{ id: 'C1', at: [1, 2], size: [1, 1] }],
    });
    expect(edit.name).toBe('Draw a bay');
    expect(checkEdit(BARE, edit)).toMatchObject({ stalls: [{ id: 'S1' }], columns: [{ id: 'C1' }] });
  });
});

describe('newId', () => {
  test('goes on from the highest number with as many digits as the file pads to', () => {
    expect(newId(SMALL, 'S')).toBe('S10');
    expect(newId(SMALL, 'D')).toBe('D3');
    expect(newId(BARE, 'D')).toBe('D01');
  });

  test('an id is free across all lists', () => {
    const file: SiteFile = { ...SMALL, columns: [{ id: 'D3', at: [0, 0], size: [1, 1] }] };
    expect(newIds(file, 'D', 2)).toEqual(['D4', 'D5']);
  });

  test('the longest prefix still leaves room for a number', () => {
    expect(newId(SMALL, 'x'.repeat(64)).length).toBeLessThanOrEqual(64);
  });
});

describe('rename', () => {
  test('follows the element everywhere it is spoken of', () => {
    const drop = rename(SMALL, 'D1', 'D-north');
    const after = checkEdit(SMALL, drop.ok ? drop.edit : expect.fail());
    expect(after.chargers?.[0]?.drop).toBe('D-north');
    expect(Object.keys(after.asBuilt!)).toEqual(['D-north']);
    const panel = rename(after, 'P1', 'LP-1');
    const again = checkEdit(after, panel.ok ? panel.edit : expect.fail());
    expect([again.feeders?.[0]?.to, again.loads?.[0]?.from, again.chargers?.[1]?.from]).toEqual([
      'LP-1',
      'LP-1',
      'LP-1',
    ]);
  });

  test('is refused where the name is taken, empty, too long or not text', () => {
    expect(rename(SMALL, 'D1', 'S07')).toEqual({ ok: false, says: 'S07 is taken: stall S07 has that name.' });
    for (const to of ['', 'x'.repeat(65), 'a\nb']) expect(rename(SMALL, 'D1', to).ok).toBe(false);
    expect(rename(SMALL, 'gone', 'D9').ok).toBe(false);
  });

  test('stalls are numbered afresh, also where old and new names overlap', () => {
    const refs = ['S09', 'S08', 'S07'].map((id) => ({ list: 'stalls', id }) as const);
    const result = renumber(SMALL, refs, { prefix: 'S', first: 8, step: 1, width: 2 });
    const after = checkEdit(SMALL, result.ok ? result.edit : expect.fail());
    expect(after.stalls?.map(({ id }) => id)).toEqual(['S10', 'S09', 'S08']);
    expect(after.chargers?.map(({ stalls }) => stalls)).toEqual([['S10', 'S09'], ['S08']]);
  });

  test('by a step, and with as many digits as the widest number needs', () => {
    const refs = ['S07', 'S08', 'S09'].map((id) => ({ list: 'stalls', id }) as const);
    const result = renumber(SMALL, refs, { prefix: 'B-', first: 9, step: 2, width: 2 });
    const after = checkEdit(SMALL, result.ok ? result.edit : expect.fail());
    expect(after.stalls?.map(({ id }) => id)).toEqual(['B-09', 'B-11', 'B-13']);
  });

  test('labels of stalls are numbered in the order given, in one step; the names and who refers to them stay', () => {
    const edit = relabel(SMALL, ['S09', 'S08', 'S07'], { prefix: '', first: 98, step: 2, width: 2 });
    expect(edit.name).toBe('Renumber 3 stalls');
    const after = checkEdit(SMALL, edit);
    expect(after.stalls?.map(({ id, label }) => [id, label])).toEqual([
      ['S07', '102'],
      ['S08', '100'],
      ['S09', '98'],
    ]);
    expect(after.chargers).toEqual(SMALL.chargers);
    expect(relabel(after, ['S09', 'S08', 'S07'], { prefix: '', first: 98, step: 2, width: 2 }).steps).toEqual([]);
  });

  test('renumbering is refused where another element has one of the names', () => {
    expect(
      renumber(SMALL, [{ list: 'stalls', id: 'S07' }], { prefix: 'S', first: 8, step: 1, width: 2 }),
    ).toMatchObject({ ok: false });
  });
});

describe('fields of the file', () => {
  test('rules are changed as far as they are given, lengths in feet', () => {
    const first = checkEdit(METRIC, changeRules(METRIC, { cordLimit: 25, allowance: { box: 2 } }));
    expect(first.rules).toEqual({ cordLimit: 7.62, allowance: { box: 0.6096 } });
    const second = checkEdit(first, changeRules(first, { allowance: { equipment: 5 }, cordLimit: undefined }));
    expect(second.rules).toEqual({ allowance: { box: 0.6096, equipment: 1.524 } });
    const third = checkEdit(second, changeRules(second, { allowance: undefined }));
    expect(third).toEqual(METRIC);
  });

  test('the name, gridlines, vehicle classes and as-built notes are set and taken away', () => {
    expect(checkEdit(SMALL, nameSite(SMALL, 'Big lot')).name).toBe('Big lot');
    expect(nameSite(SMALL, 'Small lot').steps).toEqual([]);
    expect(checkEdit(SMALL, setGridlines(SMALL, null)).gridlines).toBeUndefined();
    expect(checkEdit(METRIC, setGridlines(METRIC, { x: [{ label: '1', at: 10 }] })).gridlines).toEqual({
      x: [{ label: '1', at: 3.048 }],
    });
    const { cart } = SMALL.vehicles!;
    expect(checkEdit(SMALL, setVehicles(SMALL, { cart: cart!, van: cart! })).vehicles).toHaveProperty('van');
    const noted = checkEdit(METRIC, recordAsBuilt(METRIC, 'D2', { box: [10, 10, 10] }, testPen()));
    expect(noted.records).toMatchObject([{ of: 'D2', part: 'box', place: [3.048, 3.048, 3.048], by: 'AB', time: 1 }]);
    expect(toSite(noted).asBuilt.get('D2')?.box?.[0]).toBeCloseTo(10, 9);
    expect(toSite(checkEdit(noted, recordAsBuilt(noted, 'D2', null, testPen()))).asBuilt.has('D2')).toBe(false);
    // What an older file has in its table is taken back by a mark over it.
    const forgot = checkEdit(SMALL, recordAsBuilt(SMALL, 'D1', null, testPen()));
    expect(toSite(forgot).asBuilt.has('D1')).toBe(false);
  });
});
