import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ELEMENT_LISTS } from '../../../../routing/site/kinds/kinds.ts';
import { fromGridline } from '../../../../routing/site/place/from-gridlines.ts';
import { setOutPlace } from '../../../../routing/site/place/grid-frame.ts';
import type { Point2, SiteFile } from '../../../../routing/site/site.ts';
import { toSite } from '../../../../routing/site/to-site.ts';
import { elementsOf, type Ref } from '../../../../web/document/change/element-lists.ts';
import { mirror, moveElements, rotate } from '../../../../web/document/edits/moving/move.ts';
import { setField } from '../../../../web/document/edits/set.ts';
import { SMALL } from '../small-site.ts';
import { checkEdit } from './check-edit.ts';

const LOT: SiteFile = {
  ...SMALL,
  drops: SMALL.drops!.map((drop, i) => (i === 0 ? { ...drop, retractor: [5.5, 19, 11] } : drop)),
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
  asBuilt: {
    D1: { box: [4.6, 18, 12], retractor: [5.7, 18.9, 11.1], checkedOn: '2026-05-01', note: 'beam in the way' },
    D2: { box: [14.125, 17.5, 12] },
  },
};
const everything = (file: SiteFile): Ref[] =>
  ELEMENT_LISTS.flatMap((list) => elementsOf(file, list).map(({ id }) => ({ list, id })));

/** How far each recorded place lies from each named gridline and from its drop, and its height, feet. */
function distances(file: SiteFile): Map<string, number> {
  const { gridlines, drops, asBuilt } = toSite(file);
  const lines = [...gridlines.x.map((line) => [line, 0] as const), ...gridlines.y.map((line) => [line, 1] as const)];
  const all = new Map<string, number>();
  for (const [id, found] of asBuilt) {
    const drop = drops.find((one) => one.id === id)!;
    for (const part of ['box', 'retractor'] as const) {
      const at = found[part];
      if (!at) continue;
      const place = setOutPlace(gridlines, [at[0], at[1]]);
      for (const [line, axis] of lines)
        all.set(`${id} ${part} ${line.label}`, Math.abs(fromGridline([line], place[axis])!.offset));
      const drawn = drop[part] ?? drop.box;
      all.set(`${id} ${part}`, Math.hypot(...at.map((value, axis) => value - drawn[axis]!)));
      all.set(`${id} ${part} height`, at[2]);
    }
  }
  return all;
}

function expectKept(before: SiteFile, now: SiteFile, within: number): void {
  const [was, is] = [distances(before), distances(now)];
  expect([...is.keys()].sort()).toEqual([...was.keys()].sort());
  for (const [name, length] of was) expect(Math.abs(is.get(name)! - length), name).toBeLessThan(within);
}

const feet = fc.integer({ min: -8000, max: 8000 }).map((n) => n / 8);
const spot = fc.tuple(feet, feet) as fc.Arbitrary<Point2>;
const moving = spot.map(
  ([x, y]) =>
    (file: SiteFile) =>
      moveElements(file, everything(file), x, y),
);
const turning = (degrees: fc.Arbitrary<number>) =>
  fc.tuple(spot, degrees).map(
    ([about, by]) =>
      (file: SiteFile) =>
        rotate(file, everything(file), about, by),
  );
const mirroring = (degrees: fc.Arbitrary<number>) =>
  fc.tuple(spot, degrees).map(
    ([through, along]) =>
      (file: SiteFile) =>
        mirror(file, everything(file), through, along),
  );
const quarter = fc.constantFrom(-90, 0, 90, 180, 270);
const any = fc.integer({ min: -3600, max: 3600 }).map((n) => n / 10);

describe('what the tape said goes with the lot that it was measured in', () => {
  test('moved, turned by quarters and mirrored with everything, it is as far from each gridline and from its drop', () => {
    fc.assert(
      fc.property(
        fc.array(fc.oneof(moving, turning(quarter), mirroring(quarter)), { minLength: 1, maxLength: 4 }),
        (acts) => {
          const now = acts.reduce((file, act) => checkEdit(file, act(file)), LOT);
          expectKept(LOT, now, 1e-9);
          expect(now.asBuilt!.D1).toMatchObject({ checkedOn: '2026-05-01', note: 'beam in the way' });
        },
      ),
      { numRuns: 60 },
    );
  });

  test('turned by any angle it is so to the millionths that a file keeps', () => {
    fc.assert(
      fc.property(fc.oneof(turning(any), mirroring(any)), (act) => {
        // A millionth of a degree is 0.02 millionths at a foot: some 35 at the far end of where these lots come to lie.
        expectKept(LOT, checkEdit(LOT, act(LOT)), 4e-6);
      }),
      { numRuns: 60 },
    );
  });

  test('so does that of a lot without gridlines, where nothing stays that it could be measured from', () => {
    const { gridlines: _, ...bare } = LOT;
    const now = checkEdit(bare, rotate(bare, everything(bare), [3, 4], 90));
    expectKept(bare, now, 1e-9);
    expect(now.asBuilt).not.toEqual(bare.asBuilt);
  });

  test('lifted with everything its height stays: that was taped from grade', () => {
    const now = checkEdit(LOT, moveElements(LOT, everything(LOT), 0, 0, 1.5));
    expect(now.asBuilt).toEqual(LOT.asBuilt);
    expect(now.drops![0]!.box[2]).toBe(LOT.drops![0]!.box[2] + 1.5);
  });
});

describe('what the tape said stays where it was found', () => {
  test.each([
    ['the drop moves alone', [{ list: 'drops', id: 'D1' }] as Ref[]],
    ['all drops move', LOT.drops!.map(({ id }): Ref => ({ list: 'drops', id }))],
    [
      'one column stays behind',
      everything(LOT)
        .slice(0, -1)
        .filter(({ list }) => list !== 'columns'),
    ],
  ])('where %s', (_, refs) => {
    for (const edit of [moveElements(LOT, refs, 3, 2), rotate(LOT, refs, [0, 0], 30), mirror(LOT, refs, [0, 0], 45)]) {
      const now = checkEdit(LOT, edit);
      expect(now.asBuilt).toBe(LOT.asBuilt);
      expect(now.gridlines).toBe(LOT.gridlines);
    }
  });

  test('where only the box of its drop moves', () => {
    const now = checkEdit(LOT, moveElements(LOT, [{ list: 'drops', id: 'D1', part: { kind: 'box' } }], 1, 0));
    expect(now.asBuilt).toBe(LOT.asBuilt);
  });

  test('where the place of the site on the ground changes: its gridlines lie in the site as they did', () => {
    const now = checkEdit(LOT, setField(LOT, 'Place it', 'georef', { lon: 7.5, lat: 51.2, bearing: 33 }));
    expect(now.asBuilt).toBe(LOT.asBuilt);
    expectKept(LOT, now, 1e-12);
  });
});
