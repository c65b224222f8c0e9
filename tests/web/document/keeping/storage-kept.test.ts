import { describe, expect, test } from 'vitest';
import { ENTRIES_PER_SNAPSHOT, MS_PER_SNAPSHOT } from '../../../../web/document/keeping/store/journal.ts';
import type { LogRecord, SnapshotRecord } from '../../../../web/document/keeping/store/storage-records.ts';
import { SMALL } from '../small-site.ts';
import { settle } from './fake-browser.ts';
import { browser, browserForEach, columnX, move, opened, stateOf } from './kept-tab.ts';

browserForEach();

describe('what is written', () => {
  const all = async (): Promise<{ snapshots: SnapshotRecord[]; log: LogRecord[] }> => {
    const database = await browser.look();
    return { snapshots: await database.getAll('snapshots'), log: await database.getAll('log') };
  };

  test('one small record for each change; two snapshots at most, and the log since the older', async () => {
    const tab = await opened();
    for (let i = 0; i < 3 * ENTRIES_PER_SNAPSHOT; i++) {
      move(tab, i % 2 === 0 ? 1 : -1);
      if (i % 20 === 0) await tab.keeping.flush();
    }
    await tab.keeping.flush();
    const { snapshots, log } = await all();
    expect(snapshots).toHaveLength(2);
    const [older, newer] = snapshots.map(({ seq }) => seq);
    expect(newer! - older!).toBeGreaterThanOrEqual(ENTRIES_PER_SNAPSHOT);
    expect(log.map(({ seq }) => seq)).toEqual(
      Array.from({ length: 3 * ENTRIES_PER_SNAPSHOT - older! }, (_, i) => older! + 1 + i),
    );
  });

  test('a snapshot is made with the first change after a minute', async () => {
    const tab = await opened();
    move(tab);
    await tab.keeping.flush();
    expect((await all()).snapshots).toHaveLength(1);
    browser.now += MS_PER_SNAPSHOT;
    move(tab);
    await tab.keeping.flush();
    expect((await all()).snapshots.map(({ seq }) => seq)).toEqual([0, 2]);
  });

  test('every site that was changed is kept, however many; one that nobody changed is not', async () => {
    const tab = await opened();
    for (let i = 0; i < 20; i++) {
      await stateOf(tab).openFile({ ...SMALL, name: `lot ${i}` });
      if (i !== 5) move(tab);
      browser.now += 1000;
      await settle();
    }
    const names = (await tab.keeping.list()).map(({ name }) => name);
    expect(names).toEqual(Array.from({ length: 20 }, (_, i) => `lot ${19 - i}`).filter((name) => name !== 'lot 5'));
    const database = await browser.look();
    expect(new Set((await database.getAll('snapshots')).map(({ doc }) => doc)).size).toBe(19);
  });

  test('a clock that was wrong changes neither the order nor what is kept', async () => {
    const tab = await opened();
    const days = 86_400_000;
    browser.now += 400 * days;
    for (let i = 0; i < 12; i++) {
      await stateOf(tab).openFile({ ...SMALL, name: `ahead ${i}` });
      move(tab);
      await settle();
    }
    browser.now -= 400 * days;
    await stateOf(tab).openFile({ ...SMALL, name: 'Newest work' });
    move(tab);
    await settle();
    await stateOf(tab).openFile({ ...SMALL, name: 'another' });
    move(tab);
    await settle();
    const names = (await tab.keeping.list()).map(({ name }) => name);
    expect(names.slice(0, 3)).toEqual(['another', 'Newest work', 'ahead 11']);
    expect(names).toHaveLength(14);
    tab.kill();
    expect(stateOf(await browser.open()).name).toBe('another');
  });

  test('a site of the list is opened again with its past', async () => {
    const tab = await opened();
    move(tab);
    await stateOf(tab).openFile({ ...SMALL, name: 'second' });
    await settle();
    const first = (await tab.keeping.list()).find(({ name }) => name === 'Small lot');
    expect(await tab.keeping.reopen(first!.doc)).toBe(true);
    expect([columnX(tab), stateOf(tab).undoName]).toEqual([5.5, 'Move column C1']);
    move(tab);
    await tab.keeping.flush();
    tab.kill();
    expect(columnX(await browser.open())).toBe(6.5);
    expect(await tab.keeping.reopen('gone').catch(() => false)).toBe(false);
  });
});
