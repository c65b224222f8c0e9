import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { SiteFile } from '../../../../routing/site/site.ts';
import type { Ref } from '../../../../web/document/change/element-lists.ts';
import { insertedBy } from '../../../../web/document/change/selection.ts';
import { array, arrayTurned, duplicate, mirrorCopy, rotateCopy } from '../../../../web/document/edits/moving/copy.ts';
import { SMALL } from '../small-site.ts';
import { checkEdit } from './check-edit.ts';

const bay: readonly Ref[] = [
  { list: 'stalls', id: 'S07' },
  { list: 'stalls', id: 'S08' },
  { list: 'drops', id: 'D1' },
];

describe('duplicate', () => {
  test('copies a bay so that the copied charger serves the copied stalls from the copied drop', () => {
    const edit = duplicate(SMALL, bay, 27, 0);
    const after = checkEdit(SMALL, edit);
    expect(after.stalls?.slice(3)).toMatchObject([
      { id: 'S10', at: [27, 0], label: '9' },
      { id: 'S11', at: [36, 0], label: '10' },
    ]);
    expect(after.drops?.[2]).toEqual({ id: 'D3', box: [31.5, 18, 12], retractor: [31.5, 16, 11], cord: 22 });
    expect(after.chargers?.[2]).toEqual({ ...SMALL.chargers![0], id: 'E3', drop: 'D3', stalls: ['S10', 'S11'] });
    expect(edit.name).toBe('Copy 2 stalls and 1 drop');
    expect(insertedBy(edit)).toHaveLength(4);
  });

  test('a copied charger serves no stall that was not copied with it: two cords would be meant for one car', () => {
    const after = checkEdit(SMALL, duplicate(SMALL, [{ list: 'drops', id: 'D1' }], 0, 5));
    expect(after.chargers?.[2]).toMatchObject({ drop: 'D3', stalls: [], from: 'P1' });
  });

  test('with a panel come its loads and the feeder into it, from where the first is fed', () => {
    const after = checkEdit(SMALL, duplicate(SMALL, [{ list: 'equipment', id: 'P1' }], 10, 0));
    expect(after.equipment?.[2]).toMatchObject({ id: 'P2', at: [60, 18], entry: [60, 18, 8] });
    expect(after.feeders?.[1]).toMatchObject({ id: 'F2', from: 'T1', to: 'P2' });
    expect(after.loads?.[1]).toMatchObject({ id: 'L2', from: 'P2' });
    expect(after.chargers).toHaveLength(2);
  });

  test('names go on in the style of those that are there', () => {
    const stalls = ['A-09', 'A-10', 'B', '101'].map((id) => ({ ...SMALL.stalls![1]!, id }));
    const file: SiteFile = { ...SMALL, stalls, chargers: [] };
    const after = checkEdit(
      file,
      duplicate(
        file,
        stalls.map(({ id }) => ({ list: 'stalls', id })),
        0,
        50,
      ),
    );
    expect(after.stalls?.slice(4).map(({ id }) => id)).toEqual(['A-11', 'A-12', 'B01', '102']);
  });
});

describe('array', () => {
  test('two by three of a stall makes five copies at the spacing', () => {
    const one: Ref[] = [{ list: 'stalls', id: 'S09' }];
    const after = checkEdit(SMALL, array(SMALL, one, { count: 3, step: [9, 0] }, { count: 2, step: [0, 60] }));
    expect(after.stalls?.slice(3).map(({ id, at }) => [id, at])).toEqual([
      ['S10', [27, 0]],
      ['S11', [36, 0]],
      ['S12', [18, 60]],
      ['S13', [27, 60]],
      ['S14', [36, 60]],
    ]);
  });

  test('an array of one is nothing', () => {
    expect(array(SMALL, bay, { count: 1, step: [9, 0] }).steps).toEqual([]);
  });

  test('in a metric file the spacing is still given in feet', () => {
    const file: SiteFile = { ...SMALL, units: 'm' };
    const after = checkEdit(file, array(file, [{ list: 'stalls', id: 'S09' }], { count: 3, step: [10, 0] }));
    expect(after.stalls?.slice(3).map(({ at }) => at)).toEqual([
      [21.048, 0],
      [24.096, 0],
    ]);
  });
});

describe('an array along a slanting row', () => {
  const one: Ref[] = [{ list: 'stalls', id: 'S09' }];

  test('is the plain array turned as a whole about the original, names going on in order', () => {
    fc.assert(
      fc.property(fc.integer({ min: -360, max: 360 }), fc.integer({ min: 1, max: 4 }), (degrees, columns) => {
        const shape = { columns, columnsEvery: 9, rows: 2, rowsEvery: -18 };
        const plain = checkEdit(SMALL, arrayTurned(SMALL, one, { ...shape, degrees: 0 })).stalls!.slice(3);
        const turned = checkEdit(SMALL, arrayTurned(SMALL, one, { ...shape, degrees })).stalls!.slice(3);
        expect(turned.map(({ id, label }) => [id, label])).toEqual(plain.map(({ id, label }) => [id, label]));
        const [ox, oy] = SMALL.stalls![2]!.at;
        const radians = (degrees * Math.PI) / 180;
        for (const [i, { at, heading }] of plain.entries()) {
          const [dx, dy] = [at[0] - ox, at[1] - oy];
          expect(turned[i]!.heading).toBe(heading);
          expect(turned[i]!.at[0]).toBeCloseTo(ox + dx * Math.cos(radians) - dy * Math.sin(radians), 5);
          expect(turned[i]!.at[1]).toBeCloseTo(oy + dx * Math.sin(radians) + dy * Math.cos(radians), 5);
        }
      }),
    );
  });

  test('keeps round places round at quarter turns', () => {
    const shape = { columns: 3, columnsEvery: 9, rows: 1, rowsEvery: 18, degrees: 90 };
    const { at } = SMALL.stalls![2]!;
    expect(
      checkEdit(SMALL, arrayTurned(SMALL, one, shape))
        .stalls!.slice(3)
        .map((stall) => stall.at),
    ).toEqual([
      [at[0], at[1] + 9],
      [at[0], at[1] + 18],
    ]);
  });
});

test('a mirrored copy of a row faces the row across the line', () => {
  const refs: Ref[] = SMALL.stalls!.map(({ id }) => ({ list: 'stalls', id }));
  const after = checkEdit(SMALL, mirrorCopy(SMALL, refs, [0, -12], 0));
  expect(after.stalls?.slice(3).map(({ at, heading }) => [at, heading])).toEqual([
    [[0, -24], 270],
    [[9, -24], 270],
    [[18, -24], 270],
  ]);
  expect(after.stalls?.slice(0, 3)).toEqual(SMALL.stalls);
});

test('a turned copy leaves the original', () => {
  const after = checkEdit(SMALL, rotateCopy(SMALL, [{ list: 'columns', id: 'C1' }], [0, 0], 180));
  expect(after.columns).toMatchObject([SMALL.columns![0]!, { id: 'C2', at: [-4.5, -18], rotation: 180 }]);
});
