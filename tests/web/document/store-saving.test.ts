import { afterEach, describe, expect, test, vi } from 'vitest';
import { writeSite } from '../../../routing/site/file/write.ts';
import type { DocumentEvent } from '../../../web/document/document-state.ts';
import type { FileDoor, FilePlace } from '../../../web/document/files/files.ts';
import { createDocumentStore } from '../../../web/document/store.ts';
import { keepingWords } from '../../../web/kept-work/keeping-words.tsx';
import { moved, opened } from './keeping/opened-store.ts';
import { SMALL } from './small-site.ts';

describe('saving', () => {
  const handle = { name: 'picked.site.json' } as unknown as NonNullable<FilePlace>;
  interface Save {
    readonly text: string;
    readonly fileName: string;
    readonly place: FilePlace;
  }
  const door = (saves: Save[], picked = ''): FileDoor => ({
    pick: async () => ({ kind: 'picked', text: picked, fileName: 'picked.site.json', place: handle }),
    save: async (text, fileName, place) => {
      saves.push({ text, fileName, place });
      return { kind: 'saved', fileName, place: handle };
    },
  });

  test('writes the site under its name, and says whether the file has it', async () => {
    const saves: Save[] = [];
    const store = await opened({ ...SMALL, name: 'North lot: level 2' }, door(saves));
    expect(store.getState().saved).toEqual({ inFile: false });
    await store.getState().save();
    expect(saves).toEqual([
      { text: writeSite(store.getState().file), fileName: 'North lot level 2.site.json', place: null },
    ]);
    expect(store.getState().saved.inFile).toBe(true);
    store.getState().apply(moved(store.getState().file, 1));
    expect(store.getState().saved.inFile).toBe(false);
    store.getState().undo();
    expect(store.getState().saved.inFile).toBe(true);
  });

  test('a second save goes to the same file without asking, "save as" asks', async () => {
    const saves: Save[] = [];
    const store = await opened(SMALL, door(saves));
    await store.getState().save();
    await store.getState().save();
    await store.getState().save({ as: true });
    expect(saves.map(({ place }) => place)).toEqual([null, handle, null]);
  });

  test('a file that was picked and found invalid is never written to', async () => {
    const saves: Save[] = [];
    const store = await opened(SMALL, door(saves, 'not a site'));
    expect(await store.getState().pick()).toBe(false);
    await store.getState().save();
    expect(saves).toMatchObject([{ place: null, fileName: 'Small lot.site.json' }]);
  });

  test('a file that was picked is saved to', async () => {
    const saves: Save[] = [];
    const store = await opened(SMALL, door(saves, writeSite({ ...SMALL, name: 'Picked' })));
    expect(await store.getState().pick()).toBe(true);
    await store.getState().save();
    expect(saves).toMatchObject([{ place: handle, fileName: 'picked.site.json' }]);
  });

  test('a drag under way is not saved', async () => {
    const saves: Save[] = [];
    const store = await opened(SMALL, door(saves));
    store.getState().preview(moved(SMALL, 2));
    await store.getState().save();
    expect(saves[0]?.text).toBe(writeSite(SMALL));
  });

  test('a dialog that is closed changes nothing; a failure is said', async () => {
    const none: FileDoor = { pick: async () => ({ kind: 'none' }), save: async () => ({ kind: 'none' }) };
    const store = await opened(SMALL, none);
    expect([await store.getState().save(), await store.getState().pick()]).toEqual([false, false]);
    expect(store.getState().notice).toBeUndefined();
    const failing: FileDoor = {
      pick: async () => ({ kind: 'failed', says: 'no access' }),
      save: async () => ({ kind: 'failed', says: 'disk full' }),
    };
    const other = await opened(SMALL, failing);
    await other.getState().save();
    expect(other.getState().notice).toBe('The file was not saved: disk full');
    expect(other.getState().saved.inFile).toBe(false);
  });
});

describe('a file that another program writes too', () => {
  /** A file on a disk, as a browser with a picker shows it. */
  class Disk {
    text = '';
    modified = 1;
    gone = false;
    readonly handle = {
      name: 'mine.site.json',
      getFile: async () => {
        if (this.gone) throw new DOMException('gone', 'NotFoundError');
        return new File([this.text], 'mine.site.json', { lastModified: this.modified });
      },
    } as unknown as NonNullable<FilePlace>;
  }

  async function onDisk(): Promise<{ disk: Disk; store: Awaited<ReturnType<typeof opened>> }> {
    const disk = new Disk();
    disk.text = writeSite(SMALL);
    // The library's own two ways to a file, as it goes them where the browser has pickers.
    vi.doMock('browser-fs-access', () => ({
      fileOpen: async () => Object.assign(await disk.handle.getFile(), { handle: disk.handle }),
      fileSave: async (blob: Blob, _: unknown, place: FilePlace) => {
        disk.text = await blob.text();
        disk.modified += 1000;
        disk.gone = false;
        return place ?? disk.handle;
      },
    }));
    vi.resetModules();
    const { fileDoor } = await import('../../../web/document/files/files.ts');
    const store = await opened({ ...SMALL, name: 'before' }, fileDoor());
    expect(await store.getState().pick()).toBe(true);
    return { disk, store };
  }
  afterEach(() => vi.doUnmock('browser-fs-access'));

  test('is asked about before it is overwritten, and stands as it was', async () => {
    const { disk, store } = await onDisk();
    disk.text = 'theirs';
    disk.modified = 2;
    store.getState().apply(moved(SMALL, 1));
    expect(await store.getState().save()).toBe(false);
    expect(disk.text).toBe('theirs');
    expect(store.getState().saved.inFile).toBe(false);
    const [alert] = store.getState().alerts;
    expect(alert?.says).toBe(
      '“mine.site.json” was changed by another program since it was opened or saved here. It was not written.',
    );
    expect(alert?.acts?.map(({ name }) => name)).toEqual(['Overwrite it', 'Save under another name…']);
    alert?.acts?.[0]?.act();
    await vi.waitFor(() => expect(store.getState().saved.inFile).toBe(true));
    expect(disk.text).toBe(writeSite(store.getState().file));
  });

  test('is saved to without a question after our own saving, a mere touch, or where it is gone', async () => {
    const { disk, store } = await onDisk();
    for (const happens of [() => {}, () => (disk.modified += 5000), () => (disk.gone = true)]) {
      happens();
      store.getState().apply(moved(store.getState().file, 1));
      expect(await store.getState().save()).toBe(true);
      expect(disk.text).toBe(writeSite(store.getState().file));
    }
    expect(store.getState().alerts).toEqual([]);
  });

  test('of the same size and time of day is told by what is in it', async () => {
    const { disk, store } = await onDisk();
    disk.text = disk.text.replace('Small lot', 'Large lot');
    disk.modified += 1;
    store.getState().apply(moved(SMALL, 1));
    expect(await store.getState().save()).toBe(false);
  });
});

test('what goes to the downloads is not said to be saved', async () => {
  const sent: FileDoor = {
    pick: async () => ({ kind: 'none' }),
    save: async (_, fileName) => ({ kind: 'sent', fileName }),
  };
  const store = await opened(SMALL, sent);
  await store.getState().save();
  expect(store.getState().notice).toBe('Sent to your downloads as Small lot.site.json');
  const { saved } = store.getState();
  expect(saved).toEqual({ inFile: true, fileName: 'Small lot.site.json', sent: true });
  expect(keepingWords({ kind: 'kept' }, saved)).toBe(
    'kept in this browser, sent to your downloads as Small lot.site.json',
  );
  expect(keepingWords({ kind: 'writing' }, { inFile: false })).toBe('keeping …, not in a file yet');
});

describe('listening', () => {
  test('hears committed changes in order, each with the document after it, and no previews', async () => {
    const store = createDocumentStore();
    const heard: DocumentEvent[] = [];
    const stop = store.listen((event) => heard.push(event));
    await store.getState().openFile(SMALL);
    store.getState().preview(moved(SMALL, 1));
    store.getState().preview(moved(SMALL, 2));
    store.getState().commitPreview();
    store.getState().undo();
    store.getState().redo();
    expect(heard.map(({ what }) => what)).toEqual(['open', 'do', 'undo', 'redo']);
    expect(heard.map(({ history }) => history.file.drops?.[0]?.box[0])).toEqual([4.5, 6.5, 4.5, 6.5]);
    stop();
    store.getState().undo();
    expect(heard).toHaveLength(4);
  });

  test('while another tab edits the site, edits are refused and say why', async () => {
    const store = await opened();
    store.setKeeping({ kind: 'watching' });
    expect(store.getState().apply(moved(SMALL, 1))).toBe(false);
    store.getState().preview(moved(SMALL, 1));
    store.getState().undo();
    expect(store.getState().file).toBe(SMALL);
    expect(store.getState().notice).toMatch(/another tab/);
  });
});
