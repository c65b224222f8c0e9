import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import type { Machine } from '../../../calc/cli/machine.ts';
import { mergeVerb } from '../../../calc/cli/verbs/merge.ts';
import { readRecordsBundle, writeRecordsBundle } from '../../../calc/field/records-bundle.ts';
import { readSite } from '../../../routing/site/file/read.ts';
import { writeSite } from '../../../routing/site/file/write.ts';
import { recordsOf, writeRecords } from '../../../routing/site/records/records-file.ts';
import type { SiteFile } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { applyEdit } from '../../../web/document/change/edit.ts';
import { changeElements } from '../../../web/document/edits/change.ts';
import { recordAsBuilt, recordMarks } from '../../../web/document/edits/records/records.ts';
import { testPen } from '../../web/document/test-pen.ts';
import { TINY_JPEG, TINY_JPEG_HASH } from '../field/tiny-jpeg.ts';

const read = readSite(readFileSync('samples/library-lot.site.json', 'utf8'));
if (!read.ok) throw new RangeError('the sample is not read');
const LOT = read.file;

const measured = (file: SiteFile, drop: string, x: number, by: string): SiteFile =>
  applyEdit(file, recordAsBuilt(file, drop, { box: [x, 9, 11], checkedOn: '2026-05-31' }, testPen(by)));

const files = new Map<string, string>();
const machine = {
  read: (path: string) => {
    const text = files.get(path);
    if (text === undefined) throw new Error('no such file');
    return text;
  },
  isTaken: (path: string) => files.has(path),
  write: (path: string, text: string) => files.set(path, text),
} as unknown as Machine;
const merge = (paths: readonly string[], options: object = {}) =>
  mergeVerb(paths, { json: false, replace: false, ...options }, machine);

// The desk lengthens a cord while two people measure; one hands back records, the other her copy of the site.
const desk = applyEdit(LOT, changeElements(LOT, [{ list: 'drops', id: 'D05' }], { cord: 25 }));
const jb = measured(measured(LOT, 'D05', 52.5, 'JB'), 'D06', 61.5, 'JB');
const rl = measured(measured(LOT, 'D05', 54, 'RL'), 'D07', 70.25, 'RL');
files.set('lot.site.json', writeSite(desk));
files.set('jb.records.json', writeRecords(recordsOf(jb)));
files.set('rl.site.json', writeSite(rl));

test('the records of two people and the drawing of a third come together, and the one conflict is told', () => {
  const { status, out } = merge(['lot.site.json', 'jb.records.json', 'rl.site.json'], { out: 'all.site.json' });
  expect(status).toBe(0);
  expect(out).toContain('jb.records.json: 4 new of 4');
  expect(out).toContain('drops set: 3 of 16');
  expect(out).toContain('1 where two say different things');
  expect(out).toMatch(/D05, box, place:\n {4}RL on 2026-05-01: .*\n {4}JB on 2026-05-01: /);
  const all = readSite(files.get('all.site.json')!);
  const site = toSite(all.ok ? all.file : expect.fail());
  expect(site.drops.find(({ id }) => id === 'D05')?.cord).toBe(25);
  expect([...site.asBuilt.keys()].sort()).toEqual(['D05', 'D06', 'D07']);
});

test('in another order and twice it is the same file', () => {
  merge(['lot.site.json', 'jb.records.json', 'rl.site.json'], { out: 'a.site.json' });
  merge(['lot.site.json', 'rl.site.json', 'jb.records.json', 'rl.site.json'], { out: 'b.site.json' });
  merge(['a.site.json', 'jb.records.json'], { out: 'c.site.json' });
  expect(files.get('b.site.json')).toBe(files.get('a.site.json'));
  expect(files.get('c.site.json')).toBe(files.get('a.site.json'));
});

test('the records alone are written, a mark a line, and read back in other units to the same place', () => {
  merge(['rl.site.json'], { out: 'rl.records.json' });
  expect(
    files
      .get('rl.records.json')!
      .split('\n')
      .filter((line) => line.includes('"by":"RL"')),
  ).toHaveLength(4);
  files.set('metric.site.json', writeSite({ ...LOT, units: 'm', raceways: [], members: [], drops: LOT.drops! }));
  merge(['metric.site.json', 'rl.records.json'], { out: 'metric.out.site.json' });
  const metric = readSite(files.get('metric.out.site.json')!);
  const box = toSite(metric.ok ? metric.file : expect.fail()).asBuilt.get('D05')?.box;
  expect(box?.[0]).toBeCloseTo(54, 5);
});

test('what is wrong is told with its place, and nothing is written', () => {
  files.set(
    'bad.records.json',
    '{"format":"overrow/records","version":1,"site":"lot","units":"ft","records":[{"id":"a","of":"D05","what":"set","time":1}]}',
  );
  files.set('new.records.json', '{"format":"overrow/records","version":2,"site":"lot","units":"ft","records":[]}');
  expect(merge(['lot.site.json', 'bad.records.json', 'none.json']).err).toMatch(
    /bad\.records\.json: records\[0\]\.by: [\s\S]*none\.json: cannot be read/,
  );
  expect(merge(['lot.site.json', 'new.records.json']).err).toContain('version');
  expect(merge([]).err).toContain('name a site file');
  expect(merge(['lot.site.json'], { out: 'rl.site.json' }).err).toContain('--replace');
});

test('photos of two people come together in one file, each once, and a picture under a false name is not taken', () => {
  const photo = { hash: TINY_JPEG_HASH, bytes: TINY_JPEG.byteLength, width: 16, height: 12 };
  const withPhoto = (by: string, drop: string): SiteFile =>
    applyEdit(LOT, recordMarks(LOT, 'Photo', [{ of: drop, part: photo.hash, what: 'photo', photo }], testPen(by)));
  const packed = new Map<string, Uint8Array>(
    (['JB', 'RL'] as const).map((by, i) => [
      `${by}.records.zip`,
      writeRecordsBundle({
        records: recordsOf(withPhoto(by, `D0${i + 5}`)),
        photos: new Map([[TINY_JPEG_HASH, TINY_JPEG]]),
      }),
    ]),
  );
  packed.set(
    'false.records.zip',
    writeRecordsBundle({ records: recordsOf(LOT), photos: new Map([['0'.repeat(64), TINY_JPEG]]) }),
  );
  const written = new Map<string, Uint8Array>();
  const here = {
    ...machine,
    bytes: (path: string) => packed.get(path)!,
    write: (path: string, content: Uint8Array) => written.set(path, content),
  } as unknown as Machine;
  const taken = mergeVerb(
    ['lot.site.json', 'JB.records.zip', 'RL.records.zip'],
    { json: false, replace: false, out: 'all.records.zip' },
    here,
  );
  expect(taken.status).toBe(0);
  const all = readRecordsBundle(written.get('all.records.zip')!);
  expect(all.ok && [all.records.records.length, all.photos.size]).toEqual([2, 1]);
  const refused = mergeVerb(['lot.site.json', 'false.records.zip'], { json: false, replace: false }, here);
  expect(refused).toMatchObject({ status: 2, err: expect.stringContaining('another picture than its name says') });
});
