import { describe, expect, test } from 'vitest';
import { writeSite } from '../../../../routing/site/file/write.ts';
import type { SiteFile } from '../../../../routing/site/site.ts';
import { nameSite } from '../../../../web/document/edits/set.ts';
import { SMALL } from '../small-site.ts';
import { settle, type Tab } from './fake-browser.ts';
import { browser, browserForEach, columnX, move, opened, stateOf, textOf } from './kept-tab.ts';

browserForEach();

const docOf = async (tab: Tab, name: string): Promise<string> => {
  const all = [...(await tab.keeping.list()), ...(await tab.keeping.bin())];
  return all.find((site) => site.name === name)?.doc ?? expect.fail(`no ${name}`);
};
const another = async (tab: Tab, name: string, changes: Partial<SiteFile> = {}): Promise<void> => {
  await stateOf(tab).openFile({ ...SMALL, name, ...changes });
  move(tab);
  await tab.keeping.flush();
  await settle();
};
const namesOf = (sites: readonly { readonly name: string }[]): readonly string[] => sites.map(({ name }) => name);

describe('a kept site, read while another is open', () => {
  test('is as it is now, with what was changed and undone after its last copy', async () => {
    const tab = await opened();
    move(tab, 40);
    stateOf(tab).undo();
    move(tab, 2);
    const present = textOf(tab);
    const doc = await docOf(tab, 'Small lot');
    await another(tab, 'another');
    expect(writeSite((await tab.keeping.siteOf(doc))!)).toBe(present);
    expect((await tab.keeping.textsOf(doc))[0]).not.toBe(present);
    tab.kill();
    expect(writeSite((await (await browser.open()).keeping.siteOf(doc))!)).toBe(present);
  });

  test('is as another tab has it, and its changes there are heard of', async () => {
    const there = await opened();
    const doc = await docOf(there, 'Small lot');
    const here = await browser.open();
    await another(here, 'another');
    let heard = 0;
    here.keeping.onChange(() => heard++);
    move(there, 3);
    await settle();
    expect(heard).toBeGreaterThan(0);
    expect(writeSite((await here.keeping.siteOf(doc))!)).toBe(textOf(there));
  });

  test('says which one is open, whatever their names', async () => {
    const tab = await opened();
    move(tab);
    await another(tab, 'Small lot');
    expect((await tab.keeping.list()).map(({ name, open }) => [name, open])).toEqual([
      ['Small lot', true],
      ['Small lot', false],
    ]);
    expect(await tab.keeping.reopen((await tab.keeping.list())[1]!.doc)).toBe(true);
    expect((await tab.keeping.list()).map(({ open }) => open)).toEqual([false, true]);
  });
});

describe('the list of kept sites', () => {
  test('a site is renamed where it is kept, which can be undone there', async () => {
    const tab = await opened();
    move(tab);
    await another(tab, 'another');
    const doc = await docOf(tab, 'Small lot');
    expect(await tab.keeping.rename(doc, 'Large lot')).toBeNull();
    expect(namesOf(await tab.keeping.list())).toEqual(['another', 'Large lot']);
    await tab.keeping.reopen(doc);
    expect([stateOf(tab).name, columnX(tab)]).toEqual(['Large lot', 5.5]);
    stateOf(tab).undo();
    expect(stateOf(tab).name).toBe('Small lot');
    move(tab);
    await tab.keeping.flush();
    expect(namesOf(await tab.keeping.list())).toEqual(['Small lot', 'another']);
  });

  test('a site goes to the bin, comes back from it whole, and is deleted only from there', async () => {
    const tab = await opened();
    move(tab);
    await another(tab, 'another');
    const doc = await docOf(tab, 'Small lot');
    expect(await tab.keeping.erase(doc)).toBe('It is not in the bin.');
    expect(await tab.keeping.putInBin(doc)).toBeNull();
    expect([namesOf(await tab.keeping.list()), namesOf(await tab.keeping.bin())]).toEqual([['another'], ['Small lot']]);
    browser.now += 400 * 86_400_000;
    tab.kill();
    const after = await browser.open();
    expect(stateOf(after).name).toBe('another');
    expect(namesOf(await after.keeping.bin())).toEqual(['Small lot']);
    expect(await after.keeping.takeFromBin(doc)).toBeNull();
    expect(await after.keeping.reopen(doc)).toBe(true);
    expect([columnX(after), stateOf(after).undoName]).toEqual([5.5, 'Move column C1']);
    await another(after, 'third');
    await after.keeping.putInBin(doc);
    expect(await after.keeping.erase(doc)).toBeNull();
    expect(await after.keeping.bin()).toEqual([]);
    const database = await browser.look();
    expect(new Set((await database.getAll('log')).map((entry) => entry.doc)).has(doc)).toBe(false);
    database.close();
  });

  test('a site that is open, here or in another tab, stays as it is', async () => {
    const there = await opened();
    move(there);
    await there.keeping.flush();
    const doc = await docOf(there, 'Small lot');
    expect(await there.keeping.putInBin(doc)).toBe('It is open here: open another site first.');
    const here = await browser.open();
    await another(here, 'another');
    expect(await here.keeping.putInBin(doc)).toBe('It is open in another tab.');
    expect(await here.keeping.rename(doc, 'x')).toBe('It is open in another tab.');
    expect(namesOf(await here.keeping.list())).toEqual(['another', 'Small lot']);
  });
});

test('a copy of a site as it is now stands beside it, and what is changed in the site does not touch it', async () => {
  const tab = await opened();
  move(tab, 2);
  await tab.keeping.flush();
  const doc = await docOf(tab, 'Small lot');
  browser.now += 1000;
  expect(await tab.keeping.copy(doc, 'Small lot, issued 60 %')).toBeNull();
  move(tab, 5);
  await tab.keeping.flush();
  await another(tab, 'third');
  const copy = await docOf(tab, 'Small lot, issued 60 %');
  expect([...namesOf(await tab.keeping.list())].sort()).toEqual(['Small lot', 'Small lot, issued 60 %', 'third']);
  await tab.keeping.reopen(copy);
  expect([stateOf(tab).name, columnX(tab), stateOf(tab).undoName]).toEqual(['Small lot, issued 60 %', 6.5, undefined]);
  await tab.keeping.reopen(doc);
  expect(columnX(tab)).toBe(11.5);
  expect(await tab.keeping.copy('gone', 'x')).toBe('It is no longer there.');
});

describe('a file of all kept sites', () => {
  test('is read back in a browser that keeps nothing, each site with its past', async () => {
    const tab = await opened();
    move(tab, 2);
    await another(tab, 'another');
    await another(tab, 'in the bin');
    const [gone, last] = [await docOf(tab, 'in the bin'), await docOf(tab, 'another')];
    await tab.keeping.reopen(last);
    await tab.keeping.putInBin(gone);
    const text = await tab.keeping.bundle();
    tab.kill();
    browser.clear();
    browser.mirror = null;
    const fresh = await browser.open();
    expect(await fresh.keeping.restore(text)).toEqual({ ok: true, restored: 2, same: 0, faults: [] });
    expect(namesOf(await fresh.keeping.list())).toEqual(['another', 'Small lot']);
    await fresh.keeping.reopen(await docOf(fresh, 'Small lot'));
    expect(columnX(fresh)).toBe(6.5);
    stateOf(fresh).undo();
    expect(stateOf(fresh).file).toEqual(SMALL);
  });

  test('is read back beside what is kept: nothing is overwritten, nothing comes twice', async () => {
    const tab = await opened();
    move(tab, 2);
    await another(tab, 'another');
    const text = await tab.keeping.bundle();
    stateOf(tab).apply(nameSite(stateOf(tab).committed().file, 'changed since'));
    await tab.keeping.flush();
    expect(await tab.keeping.restore(text)).toEqual({ ok: true, restored: 1, same: 1, faults: [] });
    expect([...namesOf(await tab.keeping.list())].sort()).toEqual(['Small lot', 'another', 'changed since']);
    expect(await tab.keeping.restore(text)).toEqual({ ok: true, restored: 0, same: 2, faults: [] });
  });

  test('of which a part is spoiled gives the rest and says which; one that is none is refused', async () => {
    const tab = await opened();
    move(tab);
    await another(tab, 'another');
    const bundle = JSON.parse(await tab.keeping.bundle()) as { sites: { text: string; done: unknown[] }[] };
    bundle.sites[1]!.text = bundle.sites[1]!.text.replace('"columns"', '"colonnades"');
    bundle.sites[0]!.done = [{ name: 'odd', steps: [{ kind: 'remove', list: 'columns', index: 7, element: {} }] }];
    tab.kill();
    browser.clear();
    const fresh = await browser.open();
    const restored = await fresh.keeping.restore(JSON.stringify(bundle));
    expect(restored).toMatchObject({ ok: true, restored: 1, faults: [expect.stringMatching(/^site 2: colonnades/)] });
    await fresh.keeping.reopen(await docOf(fresh, 'another'));
    expect([columnX(fresh), stateOf(fresh).undoName]).toEqual([5.5, undefined]);
    expect(await fresh.keeping.restore(writeSite(SMALL))).toEqual({
      ok: false,
      says: 'it is no file of kept sites of this version',
    });
    expect((await fresh.keeping.restore('{"format":')).ok).toBe(false);
  });

  test('opened as a site is told for what it is', async () => {
    const tab = await opened();
    expect(await stateOf(tab).open(await tab.keeping.bundle(), 'all.json')).toBe(false);
    expect(stateOf(tab).notice).toBe('all.json is a file of kept sites: read it back under Open, Kept work.');
    expect(stateOf(tab).problems).toBeUndefined();
  });
});

describe('room', () => {
  test('that runs short is said once, and all kept sites are offered in one file', async () => {
    browser.room = { used: 950e6, of: 1000e6 };
    const tab = await opened();
    move(tab);
    await tab.keeping.flush();
    await settle();
    const { alerts } = stateOf(tab);
    expect(alerts.map(({ says }) => says)).toEqual([
      'The browser has room for about 50 MB more. Save all kept sites in one file, then remove what you no longer need.',
    ]);
    alerts[0]!.acts![0]!.act();
    await settle();
    expect(tab.handedOut[0]?.fileName).toMatch(/^kept-sites-\d{4}-\d\d-\d\d\.json$/);
    expect(tab.handedOut[0]?.text).toBe(await tab.keeping.bundle());
  });

  test('where there is plenty, nothing is said; what the browser answered is there to be shown', async () => {
    browser.room = { used: 1e6, of: 1e12 };
    const tab = await opened();
    expect((await tab.keeping.health()).persisted).toBeNull();
    move(tab);
    await tab.keeping.flush();
    await settle();
    expect(stateOf(tab).alerts).toEqual([]);
    const { room, persisted, wroteAt } = await tab.keeping.health();
    expect([room, persisted, wroteAt]).toEqual([browser.room, true, browser.now]);
  });
});
