import { expect, test } from 'vitest';
import { dropAsBuilt } from '../../../routing/site/place/as-built.ts';
import type { Drop } from '../../../routing/site/site.ts';
import { changeElements } from '../../../web/document/edits/change.ts';
import { deleteElements } from '../../../web/document/edits/delete.ts';
import { recordAsBuilt } from '../../../web/document/edits/records/records.ts';
import type { DocumentStore } from '../../../web/document/store.ts';
import { D1, moved, opened } from './keeping/opened-store.ts';
import { SMALL } from './small-site.ts';
import { testPen } from './test-pen.ts';

const boxOf = (store: DocumentStore) => store.getState().site.drops.find(({ id }) => id === 'D1')!.box;

test('in Build no edit, preview or undo changes the drawing, and it is told why', async () => {
  const store = await opened();
  store.getState().apply(moved(SMALL, 1));
  const { file } = store.getState();
  store.getState().setStation('build');
  const { apply, preview, undo, redo, notify } = store.getState();
  const tries = [
    () => apply(moved(file, 2)),
    () => apply(deleteElements(file, [D1])),
    () => preview(moved(file, 2)),
    () => undo(),
    () => apply(changeElements(file, [D1], { cord: 9 })),
  ];
  for (const attempt of tries) {
    notify(null);
    attempt();
    expect(store.getState().file).toBe(file);
    expect(store.getState().notice).toMatch(/^Build keeps the drawing/);
  }
  store.getState().setStation('layout');
  undo();
  expect(store.getState().file).toEqual(SMALL);
  store.getState().setStation('build');
  redo();
  expect(store.getState().file).toEqual(SMALL);
});

test('in Build records are written, taken back and done again, and a drop is drawn where its record says', async () => {
  const store = await opened();
  store.getState().setStation('build');
  const { apply, undo, redo } = store.getState();
  const [x, y, z] = boxOf(store);
  const found = { box: [x + 1.25, y, z] as const, checkedOn: '2026-05-31' };
  expect(apply(recordAsBuilt(store.getState().file, 'D1', found, testPen()))).toBe(true);
  expect(boxOf(store)).toEqual([x, y, z]);
  const { site, file } = store.getState();
  const drop = site.drops.find(({ id }) => id === 'D1')!;
  const { box, retractor } = dropAsBuilt(drop, site.asBuilt.get('D1'));
  const draw = changeElements(file, [D1], { box, ...(retractor && { retractor }) });
  // Any other place is a change of the drawing like every other.
  expect(apply(changeElements(file, [D1], { box: [x + 1.5, y, z] }))).toBe(false);
  expect(apply(draw)).toBe(true);
  expect(boxOf(store)).toEqual([x + 1.25, y, z]);
  undo();
  expect(boxOf(store)).toEqual([x, y, z]);
  redo();
  expect(boxOf(store)).toEqual([x + 1.25, y, z]);
  undo();
  undo();
  expect(store.getState().site.asBuilt.get('D1')).toEqual(SMALL.asBuilt?.D1);
});

test('a retractor that was not measured goes along with its box; one that was stays where the tape found it', () => {
  const drop: Drop = { id: 'D', box: [1, 2, 11], retractor: [1.5, 2, 10], cord: 20 };
  expect(dropAsBuilt(drop, undefined)).toBe(drop);
  expect(dropAsBuilt(drop, { checkedOn: '2026-05-31' })).toBe(drop);
  expect(dropAsBuilt(drop, { box: [3, 2, 11.5] }).retractor).toEqual([3.5, 2, 10.5]);
  const apart = dropAsBuilt(drop, { retractor: [0, 2, 10] });
  expect([apart.box, apart.retractor]).toEqual([
    [1, 2, 11],
    [0, 2, 10],
  ]);
});
