import '../../../web/document/counted-plan.ts';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { moveElements } from '../../../web/document/edits/moving/move.ts';
import { PACE_MS, pacedStore } from '../../../web/document/paced.ts';
import { createDocumentStore } from '../../../web/document/store.ts';
import { SMALL } from './small-site.ts';

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

async function opened() {
  const store = createDocumentStore({ warm: async () => {} });
  await store.getState().openFile(SMALL);
  const paced = pacedStore(store);
  const heard: number[] = [];
  const stop = paced.subscribe((state) => heard.push(state.site.drops[0]!.box[0]));
  const drop = store.getState().file.drops![0]!;
  const drag = (by: number): void => {
    const { preview, committed } = store.getState();
    preview(moveElements(committed().file, [{ list: 'drops', id: drop.id }], by, 0));
  };
  return { store, paced, heard, drag, stop, x: drop.box[0] };
}

test('of a drag the first step is told at once, and then the latest of those in each tenth of a second', async () => {
  const { heard, drag, x } = await opened();
  for (let step = 1; step <= 12; step++) {
    drag(step);
    vi.advanceTimersByTime(PACE_MS / 4);
  }
  expect(heard).toEqual([x + 1, x + 5, x + 9]);
  vi.advanceTimersByTime(PACE_MS);
  expect(heard).toEqual([x + 1, x + 5, x + 9, x + 12]);
});

test('when the hand lets go, or puts back, that is told at once and nothing late follows it', async () => {
  const { store, heard, drag, x } = await opened();
  drag(1);
  drag(2);
  store.getState().commitPreview();
  expect(heard.at(-1)).toBe(x + 2);
  drag(1);
  drag(2);
  store.getState().cancelPreview();
  expect(heard.at(-1)).toBe(x + 2);
  const told = heard.length;
  vi.advanceTimersByTime(PACE_MS * 5);
  expect(heard).toHaveLength(told);
});

test('who listens reads what it was told, and who does not reads the document as it is', async () => {
  const { store, paced, drag, stop, x } = await opened();
  drag(1);
  drag(2);
  expect(paced.getState().site.drops[0]!.box[0]).toBe(x + 1);
  stop();
  expect(paced.getState()).toBe(store.getState());
});
