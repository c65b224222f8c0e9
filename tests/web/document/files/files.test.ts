import '../../../../web/document/counted-plan.ts';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { openFileOf } from '../../../../web/document/dropped-files.ts';
import { fileNameOf, MAX_FILE_BYTES, textOf } from '../../../../web/document/files/files.ts';
import { createDocumentStore } from '../../../../web/document/store.ts';

describe('fileNameOf', () => {
  test('is the name of the site and the ending of a site file', () => {
    expect(fileNameOf('Library lot')).toBe('Library lot.site.json');
    expect(fileNameOf('Parkhaus Süd')).toBe('Parkhaus Süd.site.json');
  });

  test('leaves out what some file systems refuse', () => {
    expect(fileNameOf('a/b\\c:d*e?"f<g>h|i\n')).toBe('a b c d e f g h i.site.json');
    expect(fileNameOf('../../..')).toBe('site.site.json');
    expect(fileNameOf('')).toBe('site.site.json');
  });

  test('never leads into another folder and is never hidden or too long', () => {
    fc.assert(
      fc.property(fc.string(), (name) => {
        const file = fileNameOf(name);
        expect(file).toMatch(/^[^./\\\s][^/\\]*\.site\.json$/);
        expect(file.length).toBeLessThanOrEqual(110);
      }),
    );
  });
});

describe('a dropped file', () => {
  test('is opened under its name', async () => {
    const store = createDocumentStore();
    const text = '{"format":"overrow/site","version":1,"units":"m","name":"dropped"}';
    expect(await openFileOf(store, new File([text], 'd.site.json'))).toBe(true);
    expect(store.getState()).toMatchObject({ name: 'dropped', saved: { inFile: true, fileName: 'd.site.json' } });
  });

  test('that is larger than any site is not read, and that is said', async () => {
    const store = createDocumentStore();
    const huge = { size: MAX_FILE_BYTES + 1, name: 'huge.json' } as File;
    expect(await openFileOf(store, huge)).toBe(false);
    expect(store.getState().notice).toBe('huge.json was not read: it is larger than 200 MB');
    await expect(textOf(huge)).rejects.toThrow(RangeError);
  });
});
