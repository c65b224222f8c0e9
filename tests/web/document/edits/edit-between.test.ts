import { expect, test } from 'vitest';
import type { SiteFile } from '../../../../routing/site/site.ts';
import { applyEdit, invertEdit } from '../../../../web/document/change/edit.ts';
import { editBetween } from '../../../../web/document/edits/edit-between.ts';

const drop = (id: string, x: number) => ({ id, box: [x, 0, 11] as [number, number, number], cord: 25 });
const way = (id: string, x: number) => ({
  id,
  path: [
    [0, 0, 11],
    [x, 0, 11],
  ] as [number, number, number][],
  method: 'EMT' as const,
  place: 'overhead' as const,
});
const BEFORE: SiteFile = {
  format: 'overrow/site',
  version: 1,
  units: 'ft',
  name: 'Lot',
  drops: [drop('D1', 1), drop('D2', 2), drop('D3', 3)],
  raceways: [way('R1', 10), way('R2', 20), way('R3', 30)],
};

test('the edit makes the one file of the other, and taken back the other of the one', () => {
  const after: SiteFile = {
    ...BEFORE,
    drops: [drop('D1', 1), drop('D2', 7), drop('D4', 4)],
    raceways: [way('R2', 20), way('R4', 40), way('R5', 50)],
    pullpoints: [{ id: 'PB1', at: [5, 0, 11] }],
  };
  const edit = editBetween(BEFORE, after, 'Mend');
  expect(applyEdit(BEFORE, edit)).toEqual(after);
  expect(applyEdit(after, invertEdit(edit))).toEqual(BEFORE);
  // What is alike is in no step.
  expect(edit.steps.some((step) => 'id' in step && step.id === 'D1')).toBe(false);
});

test('of files alike it has no steps', () => {
  expect(editBetween(BEFORE, { ...BEFORE, drops: [...BEFORE.drops!] }, 'Mend').steps).toEqual([]);
});
