import { readdirSync } from 'node:fs';
import { expect, test } from 'vitest';
import { readSiteValue } from '../../../../routing/site/file/read.ts';
import { DEFAULT_SAMPLE, SAMPLES, sample } from '../../../../web/document/files/samples.ts';

test('every site file among the samples can be opened by its name', async () => {
  const files = readdirSync('samples').filter((name) => name.endsWith('.site.json'));
  expect(SAMPLES).toEqual(files.map((name) => name.replace('.site.json', '')).sort());
  for (const name of SAMPLES) expect(readSiteValue(await sample(name))).toMatchObject({ ok: true });
});

test('the one that a new page opens is among them', () => {
  expect(SAMPLES).toContain(DEFAULT_SAMPLE);
});

test('another name is an error of the program', async () => {
  await expect(sample('nowhere')).rejects.toThrow(RangeError);
  await expect(sample('../package')).rejects.toThrow(RangeError);
});
