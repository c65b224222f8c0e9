import { describe, expect, test, vi } from 'vitest';
import { openSites } from '../../../../web/document/keeping/store/database.ts';
import { settle } from './fake-browser.ts';
import { browser, browserForEach, columnX, move, opened, stateOf } from './kept-tab.ts';
import { pass, sampleIn } from './unreadable-parts.ts';

browserForEach();

describe('a store that does not open', () => {
  test('is tried again, and what is open by then is kept', async () => {
    vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
    let works = false;
    const session = { doc: null };
    const world = browser.world(session);
    const tab = await browser.open(session, {
      openDatabase: async (onClosed) => {
        if (!works) throw new Error('the disk is away');
        return world.openDatabase(onClosed);
      },
    });
    await sampleIn(tab);
    move(tab, 3);
    expect(stateOf(tab).keeping).toMatchObject({ kind: 'failed', says: expect.stringMatching(/the disk is away/) });
    expect(tab.asks()).toBe(true);
    works = true;
    await pass(10_000);
    expect(stateOf(tab).keeping.kind).toBe('kept');
    expect(tab.asks()).toBe(false);
    tab.kill();
    expect(columnX(await browser.open())).toBe(7.5);
  });

  test('where the browser has none at all, that is said in words', async () => {
    const had = globalThis.indexedDB;
    Object.assign(globalThis, { indexedDB: undefined });
    const tab = await browser.open();
    globalThis.indexedDB = had;
    expect(stateOf(tab).keeping.says).toBe(
      'This browser does not keep the site (it has no store for pages, or does not let this page use it). ' +
        'Save the site to a file now.',
    );
  });

  test('one that lacks its parts is given them', async () => {
    await new Promise((done) => {
      indexedDB.open('overrow', 2).onsuccess = (event) => {
        (event.target as IDBOpenDBRequest).result.close();
        done(null);
      };
    });
    const tab = await opened();
    move(tab);
    await tab.keeping.flush();
    expect(stateOf(tab).keeping.kind).toBe('kept');
  });

  test('one that the browser takes away is asked for again, and the same site goes on in it', async () => {
    vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
    let takeAway: (why: 'lost') => void = () => {};
    const session = { doc: null };
    const tab = await browser.open(session, {
      openDatabase: (onClosed) => {
        takeAway = onClosed;
        return openSites(onClosed);
      },
    });
    await sampleIn(tab);
    move(tab);
    await settle();
    takeAway('lost');
    expect(stateOf(tab).keeping.says).toMatch(/Save the site to a file now, then reload the page\.$/);
    move(tab);
    expect(tab.asks()).toBe(true);
    await pass(10_000);
    expect(stateOf(tab).keeping.kind).toBe('kept');
    move(tab);
    await settle();
    expect((await tab.keeping.list()).map(({ name }) => name)).toEqual(['Sample']);
    await tab.keeping.stop();
    expect(columnX(await browser.open())).toBe(7.5);
  });
});
