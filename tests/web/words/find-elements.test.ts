import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { readSite } from '../../../routing/site/file/read.ts';
import { findElements } from '../../../web/words/find-elements.ts';

const read = readSite(readFileSync('samples/hospital-lot.site.json', 'utf8'));
if (!read.ok) throw new RangeError('the sample is not read');
const { file } = read;
const names = (text: string, most = 10): readonly string[] => findElements(file, text, most).found.map(({ id }) => id);

test('a name goes to the one that has it, however its letters are written', () => {
  expect(names('D117')[0]).toBe('D117');
  expect(names(' d117 ')[0]).toBe('D117');
  expect(names('p1')[0]).toBe('P1');
  expect(findElements(file, 'no such thing', 10)).toEqual({ found: [], more: 0 });
  expect(findElements(file, '  ', 10)).toEqual({ found: [], more: 0 });
});

test('a number finds what is called so, then what bears it; with the word before it, that kind alone', () => {
  expect(findElements(file, '117', 3).found.map(({ list }) => list)).toEqual(['stalls', 'drops', 'chargers']);
  const stalls = findElements(file, 'stall 117', 30).found;
  expect(stalls.length).toBeGreaterThan(0);
  expect(new Set(stalls.map(({ list }) => list))).toEqual(new Set(['stalls']));
});

test('a stall is found by the label that is painted on it, and its label is told', () => {
  const stall = file.stalls!.find(({ label, id }) => label !== undefined && label !== id)!;
  const found = findElements({ ...file, drops: [], chargers: [] }, stall.label!, 5).found;
  expect(found.some(({ id, also }) => id === stall.id && also === stall.label)).toBe(true);
});

test('whatever is typed, no more are given than asked for, each once, and the rest is counted', () => {
  const everything = Object.values(file).flatMap((each) => (Array.isArray(each) ? each : []));
  fc.assert(
    fc.property(fc.string({ maxLength: 6 }), fc.integer({ min: 1, max: 40 }), (text, most) => {
      const { found, more } = findElements(file, text, most);
      expect(found.length).toBeLessThanOrEqual(most);
      expect(found.length + more).toBeLessThanOrEqual(everything.length);
      expect(new Set(found.map(({ list, id }) => `${list} ${id}`)).size).toBe(found.length);
      if (more > 0) expect(found.length).toBe(most);
    }),
  );
});

test('a circuit number of the door card finds its charger', () => {
  const circuits = new Map([[file.chargers![4]!.id, 'P1-9/11']]);
  expect(findElements(file, 'p1-9', 5, circuits).found[0]).toEqual({
    list: 'chargers',
    id: file.chargers![4]!.id,
    also: 'P1-9/11',
  });
});
