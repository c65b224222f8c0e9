import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ELEMENT_LISTS } from '../../../../routing/site/kinds/kinds.ts';
import { fromGridline } from '../../../../routing/site/place/from-gridlines.ts';
import { setOutPlace } from '../../../../routing/site/place/grid-frame.ts';
import type { Point2, SiteFile } from '../../../../routing/site/site.ts';
import { toSite } from '../../../../routing/site/to-site.ts';
import { applyEdit, type Edit, invertEdit } from '../../../../web/document/change/edit.ts';
import { elementsOf, type Ref } from '../../../../web/document/change/element-lists.ts';
import { mirror, moveElements, rotate } from '../../../../web/document/edits/moving/move.ts';
import { SMALL } from '../small-site.ts';

const LOT: SiteFile = {
  ...SMALL,
  gridlines: {
    x: [
      { label: '1', at: 0 },
      { label: '2', at: 27 },
    ],
    y: [
      { label: 'A', at: 18 },
      { label: 'B', at: 2 },
    ],
  },
};
const everything = (file: SiteFile): Ref[] =>
  ELEMENT_LISTS.flatMap((list) => elementsOf(file, list).map(({ id }) => ({ list, id })));
const after = (file: SiteFile, edit: Edit): SiteFile => applyEdit(file, edit) as SiteFile;

/** How far each drop lies from each line that has a name, whichever way the line runs. */
function fromNames(file: SiteFile): Map<string, number> {
  const { gridlines, drops } = toSite(file);
  return new Map(
    drops.flatMap(({ id, box }) => {
      const place = setOutPlace(gridlines, [box[0], box[1]]);
      return [...gridlines.x.map((line) => [line, 0] as const), ...gridlines.y.map((line) => [line, 1] as const)].map(
        ([line, axis]) => [`${id} ${line.label}`, Math.abs(fromGridline([line], place[axis])!.offset)] as const,
      );
    }),
  );
}

function expectSame(before: SiteFile, now: SiteFile): void {
  const [was, is] = [fromNames(before), fromNames(now)];
  expect([...is.keys()].sort()).toEqual([...was.keys()].sort());
  // A file keeps millionths of a foot: two roundings of each of two places.
  for (const [name, offset] of was) expect(Math.abs(is.get(name)! - offset)).toBeLessThan(4e-6);
}

describe('gridlines go with the whole lot', () => {
  test('moved, they stay square to the axes and are measured from the origin', () => {
    const moved = after(LOT, moveElements(LOT, everything(LOT), 10, -2.5));
    expect(moved.gridlines).toEqual({
      x: [
        { label: '1', at: 10 },
        { label: '2', at: 37 },
      ],
      y: [
        { label: 'A', at: 15.5 },
        { label: 'B', at: -0.5 },
      ],
    });
  });

  test('turned a quarter, lines up the sheet run across it', () => {
    const turned = after(LOT, rotate(LOT, everything(LOT), [0, 0], 90));
    expect(turned.gridlines).toEqual({
      x: [
        { label: 'B', at: -2 },
        { label: 'A', at: -18 },
      ],
      y: [
        { label: '1', at: 0 },
        { label: '2', at: 27 },
      ],
    });
  });

  test('turned by 30 degrees they are turned by 30, from where their zero came to lie', () => {
    const turned = after(LOT, rotate(LOT, everything(LOT), [10, 0], 30));
    expect(turned.gridlines).toMatchObject({ ...LOT.gridlines, rotation: 30 });
    expect(turned.gridlines!.origin).toEqual([
      expect.closeTo(10 - 10 * Math.cos(Math.PI / 6), 5),
      expect.closeTo(-5, 5),
    ]);
  });

  test('whatever is done to the lot, each drop is as far from each line as before, and undone they are as they were', () => {
    const feet = fc.integer({ min: -800, max: 800 }).map((n) => n / 8);
    const act = fc.record({
      kind: fc.constantFrom('move', 'turn', 'mirror'),
      at: fc.tuple(feet, feet) as fc.Arbitrary<Point2>,
      degrees: fc.oneof(
        fc.constantFrom(0, 45, 90, 180, 270, -45),
        fc.integer({ min: -3600, max: 3600 }).map((n) => n / 10),
      ),
    });
    fc.assert(
      fc.property(
        fc.array(act, { minLength: 1, maxLength: 4 }),
        fc.constantFrom('ft' as const, 'm' as const),
        (acts, units) => {
          let file: SiteFile = { ...LOT, units };
          for (const { kind, at, degrees } of acts) {
            const refs = everything(file);
            const edit =
              kind === 'move'
                ? moveElements(file, refs, ...at)
                : kind === 'turn'
                  ? rotate(file, refs, at, degrees)
                  : mirror(file, refs, at, degrees);
            const next = after(file, edit);
            // In meters a millionth is 3.3 millionths of a foot.
            if (units === 'ft') expectSame(file, next);
            expect(after(next, invertEdit(edit))).toEqual(file);
            expect(Math.abs(next.gridlines!.rotation ?? 0)).toBeLessThanOrEqual(45);
            file = next;
          }
        },
      ),
    );
  });

  test('and stay where something stays behind', () => {
    const but = everything(LOT).filter(({ list }) => list !== 'columns');
    expect(after(LOT, rotate(LOT, but, [0, 0], 30)).gridlines).toBe(LOT.gridlines);
    const one: SiteFile = {
      ...LOT,
      ...Object.fromEntries(ELEMENT_LISTS.map((list) => [list, []])),
      columns: LOT.columns!,
    };
    expect(after(one, moveElements(one, everything(one), 5, 0)).gridlines).toBe(one.gridlines);
  });
});
