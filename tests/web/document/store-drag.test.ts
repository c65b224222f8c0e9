import { describe, expect, test } from 'vitest';
import { nameSite } from '../../../web/document/edits/set.ts';
import { moved, opened } from './keeping/opened-store.ts';
import { SMALL } from './small-site.ts';
import { documentOf } from './store-parts.ts';

describe('a drag', () => {
  test('shows every position with its plan and leaves one undo entry', async () => {
    const store = await opened();
    const lengths: (number | null | undefined)[] = [];
    for (let dx = 1; dx <= 5; dx++) {
      store.getState().preview(moved(store.getState().committed().file, dx));
      lengths.push(store.getState().plan.runs[0]?.length);
    }
    // The box stays on the raceway, and every foot along it is a foot of run.
    for (const [i, length] of lengths.entries()) expect(length).toBeCloseTo(lengths[0]! - i, 9);
    expect(store.getState().undoName).toBeUndefined();
    expect(store.getState().commitPreview()).toBe(true);
    expect(store.getState().file.drops?.[0]?.box[0]).toBe(9.5);
    store.getState().undo();
    expect(store.getState().file).toEqual(SMALL);
    expect(store.getState().undoName).toBeUndefined();
  });

  test('the committed document is the one last shown, not worked out again', async () => {
    const store = await opened();
    store.getState().preview(moved(SMALL, 2));
    const { file, plan: planned } = store.getState();
    store.getState().commitPreview();
    expect(store.getState().file).toBe(file);
    expect(store.getState().plan).toBe(planned);
  });

  test('called off, it leaves everything as it was', async () => {
    const store = await opened();
    const before = documentOf(store);
    store.getState().preview(moved(SMALL, 2));
    expect(store.getState().previewed?.name).toBe('Move drop D1');
    store.getState().cancelPreview();
    expect(documentOf(store)).toEqual(before);
    expect(store.getState().file).toBe(before.file);
    expect(store.getState().commitPreview()).toBe(false);
  });

  test('undo in the middle of it calls it off and takes back the edit before', async () => {
    const store = await opened();
    store.getState().apply(nameSite(SMALL, 'Named'));
    store.getState().preview(moved(store.getState().file, 2));
    store.getState().undo();
    expect(store.getState().file).toEqual(SMALL);
    expect(store.getState().previewed).toBeUndefined();
  });

  test('dropped out of bounds, it goes back', async () => {
    const store = await opened();
    store.getState().preview(moved(SMALL, 99_999));
    expect(store.getState().commitPreview()).toBe(false);
    expect(store.getState().file).toBe(SMALL);
    expect(store.getState().notice).toMatch(/100,000 ft/);
  });
});
