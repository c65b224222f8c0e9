import { expect, test } from 'vitest';
import { deleteElements } from '../../../../web/document/edits/delete.ts';
import { SMALL } from '../small-site.ts';
import { checkEdit } from './check-edit.ts';

test('with a drop go its chargers and what was measured there', () => {
  const edit = deleteElements(SMALL, [{ list: 'drops', id: 'D1' }]);
  expect(edit.name).toBe('Delete drop D1 with charger E1');
  const after = checkEdit(SMALL, edit);
  expect(after.drops?.map(({ id }) => id)).toEqual(['D2']);
  expect(after.chargers?.map(({ id }) => id)).toEqual(['E2']);
  expect(after.asBuilt).toEqual({});
});

test('a stall is taken from the chargers that serve it, and they stay', () => {
  const edit = deleteElements(SMALL, [
    { list: 'stalls', id: 'S08' },
    { list: 'stalls', id: 'S09' },
  ]);
  expect(edit.name).toBe('Delete 2 stalls');
  expect(checkEdit(SMALL, edit).chargers?.map(({ stalls }) => stalls)).toEqual([['S07'], []]);
});

test('with equipment go its feeders, loads and chargers', () => {
  const edit = deleteElements(SMALL, [{ list: 'equipment', id: 'P1' }]);
  expect(edit.name).toBe('Delete equipment P1 with 4 elements');
  const after = checkEdit(SMALL, edit);
  expect([after.feeders, after.loads, after.chargers]).toEqual([[], [], []]);
  expect(after.drops).toHaveLength(2);
});

test('with the source goes the feeder out of it alone', () => {
  const edit = deleteElements(SMALL, [{ list: 'equipment', id: 'T1' }]);
  expect(edit.name).toBe('Delete equipment T1 with feeder F1');
  expect(checkEdit(SMALL, edit).chargers).toHaveLength(2);
});

test('everything at once leaves a valid, empty lot', () => {
  const lists = [
    'stalls',
    'columns',
    'members',
    'keepouts',
    'aisles',
    'equipment',
    'raceways',
    'pullpoints',
    'drops',
  ] as const;
  const refs = lists.flatMap((list) => SMALL[list]!.map(({ id }) => ({ list, id })));
  const after = checkEdit(SMALL, deleteElements(SMALL, refs));
  for (const list of [...lists, 'chargers', 'feeders', 'loads'] as const) expect(after[list]).toEqual([]);
});

test('a vertex leaves its raceway', () => {
  const edit = deleteElements(SMALL, [{ list: 'raceways', id: 'R1', part: { kind: 'vertex', index: 1 } }]);
  expect(edit.name).toBe('Delete vertex of R1');
  expect(checkEdit(SMALL, edit).raceways?.[0]?.path).toEqual([
    [50, 18, 8],
    [0, 18, 12],
  ]);
});

test('a raceway with fewer than two vertices left goes altogether', () => {
  const refs = [0, 2].map((index) => ({ list: 'raceways', id: 'R1', part: { kind: 'vertex', index } }) as const);
  expect(checkEdit(SMALL, deleteElements(SMALL, refs)).raceways).toEqual([]);
});

test('a retractor leaves its drop, whose cord then hangs from the box', () => {
  const edit = deleteElements(SMALL, [{ list: 'drops', id: 'D2', part: { kind: 'retractor' } }]);
  expect(edit.name).toBe('Delete retractor of D2');
  expect(checkEdit(SMALL, edit).drops?.[1]).toEqual({ id: 'D2', box: [18, 18, 12], cord: 22 });
});

test('what is not there is not deleted', () => {
  expect(deleteElements(SMALL, [{ list: 'drops', id: 'gone' }]).steps).toEqual([]);
});
