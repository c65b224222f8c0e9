import { describe, expect, test } from 'vitest';
import type { Point3, SiteFile } from '../../../../routing/site/site.ts';
import { elementOf, type Ref } from '../../../../web/document/change/element-lists.ts';
import { mirror, moveElements, placeDrop, rotate } from '../../../../web/document/edits/moving/move.ts';
import { SMALL } from '../small-site.ts';
import { checkEdit } from './check-edit.ts';

const METRIC: SiteFile = { ...SMALL, units: 'm' };
const all: readonly Ref[] = (
  ['stalls', 'columns', 'members', 'keepouts', 'aisles', 'equipment', 'raceways', 'pullpoints', 'drops'] as const
).flatMap((list) => SMALL[list]!.map(({ id }) => ({ list, id })));

describe('moveElements', () => {
  test('moves box and retractor of a drop together, in feet', () => {
    const after = checkEdit(SMALL, moveElements(SMALL, [{ list: 'drops', id: 'D1' }], 1.5, -2));
    expect(elementOf(after, 'drops', 'D1')).toMatchObject({ box: [6, 16, 12], retractor: [6, 14, 11] });
  });

  test('a move by feet is a move by 0.3048 of them in a metric file', () => {
    const after = checkEdit(METRIC, moveElements(METRIC, [{ list: 'columns', id: 'C1' }], 10, 100));
    expect(after.columns?.[0]?.at).toEqual([7.548, 48.48]);
  });

  test('leaves no tail of rounding in the file', () => {
    const after = checkEdit(SMALL, moveElements(SMALL, [{ list: 'columns', id: 'C1' }], 0.1, 0.2));
    expect(JSON.stringify(after.columns?.[0]?.at)).toBe('[4.6,18.2]');
  });

  test('a handle of a drop that is held as a whole moves once', () => {
    const refs: Ref[] = [
      { list: 'drops', id: 'D1' },
      { list: 'drops', id: 'D1', part: { kind: 'box' } },
    ];
    expect(moveElements(SMALL, refs, 1, 0).steps).toEqual(moveElements(SMALL, refs.slice(0, 1), 1, 0).steps);
  });

  test('what has no place of its own stays', () => {
    const refs: Ref[] = [
      { list: 'chargers', id: 'E1' },
      { list: 'feeders', id: 'F1' },
      { list: 'loads', id: 'L1' },
    ];
    expect(moveElements(SMALL, refs, 5, 5).steps).toEqual([]);
  });

  test('a move of nothing, and one by nothing, has no steps', () => {
    expect(moveElements(SMALL, [], 5, 5).steps).toEqual([]);
    expect(moveElements(SMALL, [{ list: 'drops', id: 'gone' }], 5, 5).steps).toEqual([]);
    expect(moveElements(SMALL, all, 0, 0).steps).toEqual([]);
  });

  test('says what was moved', () => {
    const two: Ref[] = [
      { list: 'drops', id: 'D1' },
      { list: 'drops', id: 'D2' },
    ];
    expect(moveElements(SMALL, two, 1, 0).name).toBe('Move 2 drops');
    expect(moveElements(SMALL, two.slice(1), 1, 0).name).toBe('Move drop D2');
    expect(moveElements(SMALL, [...two, { list: 'columns', id: 'C1' }], 1, 0).name).toBe('Move 1 column and 2 drops');
    expect(moveElements(SMALL, all, 1, 0).name).toBe(`Move ${all.length} elements`);
  });
});

describe('handles', () => {
  test('a vertex of a raceway moves alone', () => {
    const ref: Ref = { list: 'raceways', id: 'R1', part: { kind: 'vertex', index: 1 } };
    const edit = moveElements(SMALL, [ref], 0, 2, 1);
    expect(edit.name).toBe('Move vertex of R1');
    expect(checkEdit(SMALL, edit).raceways?.[0]?.path).toEqual([
      [50, 18, 8],
      [50, 20, 13],
      [0, 18, 12],
    ]);
  });

  test('a retractor, a box and an entry move alone, by feet', () => {
    const moved = (file: SiteFile, ref: Ref) => checkEdit(file, moveElements(file, [ref], 1, 2, -3));
    const retractor: Ref = { list: 'drops', id: 'D1', part: { kind: 'retractor' } };
    const box: Ref = { list: 'drops', id: 'D1', part: { kind: 'box' } };
    const entry: Ref = { list: 'equipment', id: 'P1', part: { kind: 'entry' } };
    const [drop] = SMALL.drops!;
    const by = ([x, y, z]: Point3): Point3 => [x + 1, y + 2, z - 3];
    expect(moved(SMALL, retractor).drops?.[0]).toEqual({ ...drop, retractor: by(drop!.retractor!) });
    expect(moved(SMALL, box).drops?.[0]).toEqual({ ...drop, box: by(drop!.box) });
    const panel = elementOf(SMALL, 'equipment', 'P1')!;
    expect(elementOf(moved(SMALL, entry), 'equipment', 'P1')).toEqual({ ...panel, entry: by(panel.entry!) });
    const [x = 0, y = 0, z = 0] = METRIC.drops![0]!.box;
    const metres = moved(METRIC, box).drops![0]!.box;
    expect(metres).toEqual([x + 0.3048, y + 0.6096, z - 0.9144].map((at) => expect.closeTo(at, 9)));
  });

  test('two vertices of one raceway move in one step', () => {
    const refs = [0, 1].map((index): Ref => ({ list: 'raceways', id: 'R1', part: { kind: 'vertex', index } }));
    const edit = moveElements(SMALL, refs, 1, 0);
    expect(edit.steps).toHaveLength(1);
    expect(checkEdit(SMALL, edit).raceways?.[0]?.path).toEqual([
      [51, 18, 8],
      [51, 18, 12],
      [0, 18, 12],
    ]);
  });
});

describe('rotate and mirror', () => {
  test('a quarter turn counter-clockwise about the origin takes (x, y) to (-y, x), exactly', () => {
    const after = checkEdit(SMALL, rotate(SMALL, all, [0, 0], 90));
    expect(after.stalls?.map(({ at, heading }) => [at, heading])).toEqual([
      [[0, 0], 180],
      [[0, 9], 180],
      [[0, 18], 180],
    ]);
    expect(after.columns?.[0]).toMatchObject({ at: [-18, 4.5], rotation: 90 });
    expect(after.raceways?.[0]?.path).toEqual([
      [-18, 50, 8],
      [-18, 50, 12],
      [-18, 0, 12],
    ]);
    expect(after.members?.[0]).toMatchObject({ from: [-18, 0, 12], to: [-18, 27, 12] });
  });

  test('four quarter turns give back the file', () => {
    let file = SMALL;
    for (let i = 0; i < 4; i++) file = checkEdit(file, rotate(file, all, [13, -7], 90));
    const column = { ...SMALL.columns![0]!, rotation: 0 };
    expect(file).toEqual({
      ...SMALL,
      columns: [column],
      equipment: SMALL.equipment!.map((one) => ({ ...one, rotation: 0 })),
    });
  });

  test('mirroring twice in the same line gives back every place and heading', () => {
    const once = checkEdit(SMALL, mirror(SMALL, all, [5, 5], 30));
    const twice = checkEdit(once, mirror(once, all, [5, 5], 30));
    for (const [i, stall] of twice.stalls!.entries()) {
      expect(stall.at[0]).toBeCloseTo(SMALL.stalls![i]!.at[0], 5);
      expect(stall.at[1]).toBeCloseTo(SMALL.stalls![i]!.at[1], 5);
      expect(stall.heading).toBeCloseTo(SMALL.stalls![i]!.heading, 5);
    }
  });

  test('mirrored left to right, a car still drives in from below and a panel faces the way it did', () => {
    const after = checkEdit(SMALL, mirror(SMALL, all, [0, 0], 90));
    expect(after.stalls?.[1]).toMatchObject({ at: [-9, 0], heading: 90 });
    expect(after.equipment?.[1]).toMatchObject({ at: [-50, 18], rotation: 0, entry: [-50, 18, 8] });
  });

  test('mirrored top to bottom, both turn about', () => {
    const after = checkEdit(SMALL, mirror(SMALL, all, [0, 0], 0));
    expect(after.stalls?.[1]).toMatchObject({ at: [9, 0], heading: 270 });
    expect(after.equipment?.[1]).toMatchObject({ at: [50, -18], rotation: 180 });
  });
});

test('a drop that is put at a place brings its retractor along by as much, all three ways', () => {
  const drop = SMALL.drops!.find(({ retractor }) => retractor)!;
  const [x, y, z] = drop.box;
  const file = checkEdit(SMALL, placeDrop(SMALL, drop.id, [x + 3.5, y - 1.25, z + 0.5]));
  const now = file.drops!.find(({ id }) => id === drop.id)!;
  expect(now.box).toEqual([x + 3.5, y - 1.25, z + 0.5]);
  expect(now.retractor).toEqual([drop.retractor![0] + 3.5, drop.retractor![1] - 1.25, drop.retractor![2] + 0.5]);
});
