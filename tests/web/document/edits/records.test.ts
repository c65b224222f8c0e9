import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ELEMENT_LISTS } from '../../../../routing/site/kinds/kinds.ts';
import { setOutPlace } from '../../../../routing/site/place/grid-frame.ts';
import { registersOf } from '../../../../routing/site/records/registers.ts';
import type { Point3, SiteFile } from '../../../../routing/site/site.ts';
import { toSite } from '../../../../routing/site/to-site.ts';
import type { Edit } from '../../../../web/document/change/edit.ts';
import { elementsOf, type Ref } from '../../../../web/document/change/element-lists.ts';
import { deleteElements } from '../../../../web/document/edits/delete.ts';
import { mirror, moveElements, rotate } from '../../../../web/document/edits/moving/move.ts';
import { mergeRecords, recordAsBuilt, recordMarks } from '../../../../web/document/edits/records/records.ts';
import { renumber } from '../../../../web/document/edits/rename.ts';
import { SMALL } from '../small-site.ts';
import { testPen } from '../test-pen.ts';
import { checkEdit } from './check-edit.ts';

/** A site whose field work has begun, as the desk and the field both have it. */
const BEGUN = checkEdit(SMALL, recordMarks(SMALL, 'Set', [{ of: 'D2', what: 'set' }], testPen()));
const everything = (file: SiteFile): Ref[] =>
  ELEMENT_LISTS.flatMap((list) => elementsOf(file, list).map(({ id }) => ({ list, id })));

const measured = (file: SiteFile, box: Point3): SiteFile =>
  checkEdit(file, recordAsBuilt(file, 'D1', { box, checkedOn: '2026-05-31' }, testPen('JB')));
const boxIn = (file: SiteFile, drop: string): Point3 | undefined => toSite(file).asBuilt.get(drop)?.box;

describe('the drawing changes on one side while the field records on the other', () => {
  const box: Point3 = [5.25, 17.5, 11.5];

  test.each([
    ['the desk merges the field', (desk: SiteFile, field: SiteFile) => mergeRecords(desk, field.records!)],
    [
      'the field’s marks come twice',
      (desk: SiteFile, field: SiteFile) => mergeRecords(desk, [...field.records!, ...field.records!]),
    ],
  ])('drops that trade their names: %s', (_, merge) => {
    const drops: Ref[] = ['D2', 'D1'].map((id) => ({ list: 'drops', id }));
    const traded = renumber(BEGUN, drops, { prefix: 'D', first: 1, step: 1, width: 1 });
    const desk = checkEdit(BEGUN, traded.ok ? traded.edit : expect.fail());
    const field = measured(BEGUN, box);
    const merged = checkEdit(desk, merge(desk, field));
    // What the field knew as D1 is D2 now, and the other way round.
    expect(boxIn(merged, 'D2')).toEqual(box);
    expect(toSite(merged).asBuilt.get('D2')?.checkedOn).toBe('2026-05-31');
    expect(toSite(merged).asBuilt.get('D1')?.checkedOn).toBe('2026-05-01');
    // Whoever records after that does so by the new names.
    const later = checkEdit(merged, recordAsBuilt(merged, 'D1', { box: [1, 1, 11] }, testPen()));
    expect(boxIn(later, 'D1')).toEqual([1, 1, 11]);
    expect(boxIn(later, 'D2')).toEqual(box);
  });

  test('a lot that is moved, turned and mirrored takes along what comes later of the time before', () => {
    const quarter = fc.constantFrom(0, 90, 180, 270);
    const acts: fc.Arbitrary<(file: SiteFile) => Edit> = fc.oneof(
      fc.tuple(fc.integer({ min: -99, max: 99 }), fc.integer({ min: -99, max: 99 })).map(
        ([x, y]) =>
          (file: SiteFile) =>
            moveElements(file, everything(file), x, y),
      ),
      quarter.map((by) => (file: SiteFile) => rotate(file, everything(file), [3, 4], by)),
      quarter.map((by) => (file: SiteFile) => mirror(file, everything(file), [3, 4], by)),
    );
    fc.assert(
      fc.property(fc.array(acts, { minLength: 1, maxLength: 4 }), (motions) => {
        const desk = motions.reduce((file, motion) => checkEdit(file, motion(file)), BEGUN);
        const merged = checkEdit(desk, mergeRecords(desk, measured(BEGUN, box).records!));
        const away = (file: SiteFile): number => {
          const at = boxIn(file, 'D1')!;
          const drawn = toSite(file).drops.find(({ id }) => id === 'D1')!.box;
          return Math.hypot(at[0] - drawn[0], at[1] - drawn[1]);
        };
        expect(Math.abs(away(merged) - Math.hypot(5.25 - 4.5, 17.5 - 18))).toBeLessThan(1e-5);
        // And the tape reads as much from each of its lines, on whichever side they lie now.
        const taped = (file: SiteFile): number[] => {
          const { gridlines } = toSite(file);
          const [u, v] = setOutPlace(gridlines, boxIn(file, 'D1')!.slice(0, 2) as [number, number]);
          return [
            ...gridlines.x.map(({ at }) => Math.abs(u - at)),
            ...gridlines.y.map(({ at }) => Math.abs(v - at)),
          ].sort();
        };
        const [was, is] = [taped(measured(BEGUN, box)), taped(merged)];
        for (const [i, reading] of was.entries()) expect(Math.abs(is[i]! - reading)).toBeLessThan(1e-5);
      }),
      { numRuns: 40 },
    );
  });

  test('what is deleted keeps its marks, and what is drawn in its name later has none of them', () => {
    const desk = checkEdit(BEGUN, deleteElements(BEGUN, [{ list: 'drops', id: 'D1' }]));
    const merged = checkEdit(desk, mergeRecords(desk, measured(BEGUN, box).records!));
    expect(toSite(merged).asBuilt.has('D1')).toBe(false);
    expect([...registersOf(merged.records!).values()].map(({ of }) => of)).toContain('D1, deleted');
  });
});

test('a file without records is renamed and moved as before, without a mark', () => {
  const drops: Ref[] = [{ list: 'drops', id: 'D1' }];
  const named = renumber(SMALL, drops, { prefix: 'N', first: 9, step: 1, width: 1 });
  expect(checkEdit(SMALL, named.ok ? named.edit : expect.fail()).records).toBeUndefined();
});
