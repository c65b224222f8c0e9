import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { plan } from '../../../calc/plan/plan.ts';
import { writeSite } from '../../../routing/site/file/write.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import type { Ref } from '../../../web/document/change/element-lists.ts';
import { addElements } from '../../../web/document/edits/add.ts';
import { deleteElements } from '../../../web/document/edits/delete.ts';
import { array } from '../../../web/document/edits/moving/copy.ts';
import { nameSite } from '../../../web/document/edits/set.ts';
import { emptySite } from '../../../web/document/opening.ts';
import { createDocumentStore, type DocumentStore } from '../../../web/document/store.ts';
import { anyGesture, editOf } from './edits/any-edit.ts';
import { changeElement } from './edits/change-element.ts';
import { D1, moved, opened } from './keeping/opened-store.ts';
import { SMALL } from './small-site.ts';
import { documentOf } from './store-parts.ts';

const D2: Ref = { list: 'drops', id: 'D2' };

describe('opening', () => {
  test('a new store holds an empty, valid site with its plan', () => {
    const { file, plan: planned, name } = createDocumentStore().getState();
    expect(file).toEqual(emptySite());
    expect(name).toBe('New site');
    expect(planned.runs).toEqual([]);
  });

  test('an invalid file shows every error with its place and leaves the open site as it was', async () => {
    const store = await opened();
    store.getState().apply(moved(SMALL, 1));
    store.getState().select([D2]);
    const before = documentOf(store);
    const broken = { ...SMALL, drops: [{ id: 'D1', box: [0, 0], cord: -2, color: 'red' }] };
    expect(await store.getState().open(JSON.stringify(broken), 'lot.site.json')).toBe(false);
    const { problems, selection } = store.getState();
    expect(problems?.title).toBe('lot.site.json was not opened');
    const places = problems?.errors.map(({ place }) => place);
    for (const place of ['drops[0].box', 'drops[0].cord', 'drops[0].color', 'chargers[1].drop']) {
      expect(places).toContain(place);
    }
    expect(documentOf(store)).toEqual(before);
    expect(store.getState().file).toBe(before.file);
    expect(selection).toEqual([D2]);
    store.getState().undo();
    expect(store.getState().file).toEqual(SMALL);
  });

  test('text that is no site file at all is told so', async () => {
    const store = await opened();
    for (const text of ['', 'hello', '[]', 'null', '{"format":"overrow/site","version":99}']) {
      expect(await store.getState().open(text)).toBe(false);
      expect(store.getState().problems?.errors.length).toBeGreaterThan(0);
    }
    expect(store.getState().file).toBe(SMALL);
    store.getState().dismissProblems();
    expect(store.getState().problems).toBeUndefined();
  });

  test('a valid file replaces the site, its past, the selection and old problems', async () => {
    const store = await opened();
    store.getState().apply(moved(SMALL, 1));
    store.getState().select([D1]);
    await store.getState().open('broken');
    const text = readFileSync('samples/library-lot.site.json', 'utf8');
    expect(await store.getState().open(text, 'library-lot.site.json')).toBe(true);
    const state = store.getState();
    expect(state.plan.runs).toHaveLength(state.file.chargers!.length);
    expect([state.selection, state.problems, state.undoName]).toEqual([[], undefined, undefined]);
    expect(state.saved).toEqual({ inFile: true, fileName: 'library-lot.site.json' });
    expect(writeSite(state.file)).toBe(text);
  });

  test('of two files opened at once the later one stands', async () => {
    const waits: (() => void)[] = [];
    const store = createDocumentStore({ warm: () => new Promise<void>((go) => waits.push(go)) });
    const first = store.getState().openFile({ ...SMALL, name: 'first' });
    const second = store.getState().openFile({ ...SMALL, name: 'second' });
    for (const go of waits.reverse()) go();
    expect(await Promise.all([first, second])).toEqual([false, true]);
    expect(store.getState().name).toBe('second');
  });

  test('long work says how far it is, and the open site stands until it is done', async () => {
    const seen: unknown[] = [];
    const store = createDocumentStore({
      warm: async (site, onProgress) => {
        onProgress(1, site.chargers.length);
        await Promise.resolve();
        seen.push(store.getState().busy, store.getState().name);
      },
    });
    await store.getState().openFile(SMALL);
    expect(seen).toEqual([{ what: 'Working out the plan of Small lot', done: 1, of: 2 }, 'New site']);
    expect(store.getState().busy).toBeUndefined();
  });
});

describe('editing', () => {
  test('site and plan are those of the file after every edit', async () => {
    const store = await opened();
    fc.assert(
      fc.property(anyGesture, (gesture) => {
        const edit = editOf(store.getState().file, gesture);
        if (edit) store.getState().apply(edit);
        const { file, site, plan: planned, name } = store.getState();
        expect(site).toBe(toSite(file));
        expect(planned).toEqual(plan(toSite(structuredClone(file))));
        expect(name).toBe(file.name);
      }),
      { numRuns: 60 },
    );
  });

  test('undo and redo go through the gestures by name', async () => {
    const store = await opened();
    store.getState().apply(moved(SMALL, 1));
    store.getState().apply(changeElement(store.getState().file, 'D2', { cord: 30 }));
    const after = store.getState().file;
    expect(store.getState().undoName).toBe('Change cord of drop D2');
    store.getState().undo();
    expect([store.getState().undoName, store.getState().redoName]).toEqual(['Move drop D1', 'Change cord of drop D2']);
    store.getState().undo();
    store.getState().undo();
    expect(store.getState().file).toEqual(SMALL);
    expect(store.getState().undoName).toBeUndefined();
    store.getState().redo();
    store.getState().redo();
    store.getState().redo();
    expect(store.getState().file).toEqual(after);
  });

  test('a new edit forgets what had been undone', async () => {
    const store = await opened();
    store.getState().apply(moved(SMALL, 1));
    store.getState().undo();
    store.getState().apply(nameSite(store.getState().file, 'Other'));
    expect(store.getState().redoName).toBeUndefined();
  });

  test('an edit that would make the file invalid is refused with the reason, and nothing changes', async () => {
    const store = await opened();
    const before = documentOf(store);
    expect(store.getState().apply(changeElement(SMALL, 'D1', { cord: -5 }))).toBe(false);
    expect(store.getState().notice).toMatch(/^Change cord of drop D1: not done\. D1\.cord: expected/);
    expect(store.getState().apply(moved(SMALL, 200_000))).toBe(false);
    expect(store.getState().notice).toMatch(/D1\.box\[0\]: expected a length of at most 100,000 ft/);
    const twice = addElements(SMALL, 'columns', [{ id: 'D1', at: [0, 0], size: [1, 1] }]);
    expect(store.getState().apply(twice)).toBe(false);
    expect(store.getState().notice).toMatch(/repeated id/);
    expect(store.getState().apply(changeElement(SMALL, 'E1', { drop: 'S07' }))).toBe(false);
    expect(store.getState().notice).toMatch(/E1\.drop: expected the id of a drop/);
    expect(documentOf(store)).toEqual(before);
  });

  test('an edit without steps leaves no trace', async () => {
    const store = await opened();
    expect(store.getState().apply({ name: 'Nothing', steps: [] })).toBe(false);
    expect(store.getState().undoName).toBeUndefined();
  });

  test('a large edit is worked out in slices and told of, and is one undo entry', async () => {
    const seen: unknown[] = [];
    const store: DocumentStore = createDocumentStore({
      warm: async (site, onProgress) => {
        onProgress(1, 9);
        seen.push(store.getState().busy, site.columns.length, store.getState().site.columns.length);
      },
    });
    await store.getState().openFile(SMALL);
    seen.length = 0;
    const edit = array(SMALL, [{ list: 'columns', id: 'C1' }], { count: 50, step: [2, 0] });
    expect(await store.getState().applyLarge(edit)).toBe(true);
    expect(seen).toEqual([{ what: 'Array column C1', done: 1, of: 9 }, 50, 1]);
    expect(store.getState()).toMatchObject({ busy: undefined, undoName: 'Array column C1' });
    store.getState().undo();
    expect(store.getState().file).toEqual(SMALL);
  });

  test('a large edit is not put over what was done while it was worked out', async () => {
    let go = (): void => {};
    const store = createDocumentStore({
      warm: (site) => (site.columns.length > 1 ? new Promise((end) => (go = end)) : Promise.resolve()),
    });
    await store.getState().openFile(SMALL);
    const large = store
      .getState()
      .applyLarge(array(SMALL, [{ list: 'columns', id: 'C1' }], { count: 3, step: [2, 0] }));
    store.getState().apply(moved(SMALL, 1));
    go();
    expect(await large).toBe(false);
    expect(store.getState().undoName).toBe('Move drop D1');
    expect(await store.getState().applyLarge(changeElement(store.getState().file, 'D1', { cord: -5 }))).toBe(false);
  });

  test('the selection loses what is deleted, and undo does not bring it back selected', async () => {
    const store = await opened();
    store.getState().select([D1, D2]);
    store.getState().apply(deleteElements(SMALL, [D1]));
    expect(store.getState().selection).toEqual([D2]);
    store.getState().undo();
    expect(store.getState().selection).toEqual([D2]);
    expect(store.getState().lastChange).toMatchObject({ how: 'undone', name: 'Delete drop D1 with charger E1' });
  });
});

describe('selecting', () => {
  test('replaces, adds, toggles and takes away; what is not there is not selected', async () => {
    const { getState } = await opened();
    getState().select([D1, { list: 'drops', id: 'gone' }]);
    expect(getState().selection).toEqual([D1]);
    getState().select([D2], 'add');
    getState().select([D2], 'add');
    expect(getState().selection).toEqual([D1, D2]);
    getState().select([D1], 'toggle');
    expect(getState().selection).toEqual([D2]);
    getState().select([D2], 'remove');
    expect(getState().selection).toEqual([]);
  });

  test('selecting the same again is no change of state', async () => {
    const { getState } = await opened();
    getState().select([D1]);
    const { selection } = getState();
    getState().select([D1]);
    expect(getState().selection).toBe(selection);
  });
});
