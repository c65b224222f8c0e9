import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { isTaken, readText, writeContent } from '../../../calc/cli/system-files.ts';

const folder = mkdtempSync(join(tmpdir(), 'overrow-files-'));
afterAll(() => rmSync(folder, { recursive: true }));
const at = (name: string): string => join(folder, name);

describe('reading', () => {
  test('gives the text, signs of several bytes across pieces too', () => {
    const text = 'é'.repeat(1_100_001);
    writeFileSync(at('long.txt'), `x${text}`);
    expect(readText(at('long.txt'))).toBe(`x${text}`);
  });

  test('says in words what is wrong, and leaves off what is too long or never ends', () => {
    expect(() => readText(at('none'))).toThrow('there is no such file or folder');
    expect(() => readText(folder)).toThrow('it is a folder, not a file');
    expect(() => readText(at('long.txt'), 1024 * 1024)).toThrow('it is over 1 MB long');
    if (existsSync('/dev/zero')) expect(() => readText('/dev/zero', 8 * 1024 * 1024)).toThrow('it is over 8 MB long');
  });
});

describe('writing', () => {
  test('makes the folders that are missing', () => {
    writeContent(at('a/b/c/d.txt'), 'x');
    expect(readFileSync(at('a/b/c/d.txt'), 'utf8')).toBe('x');
  });

  test('is refused at once where no folder can be made, and where a file is in the way', () => {
    if (existsSync('/proc/self'))
      expect(() => writeContent('/proc/x/y.txt', 'x')).toThrow(/no folder \/proc\/x can be made/);
    writeFileSync(at('file'), 'x');
    expect(() => writeContent(at('file/in/it.txt'), 'x')).toThrow('is a file, not a folder');
    expect(() => writeContent(folder, 'x')).toThrow('it is a folder, not a file');
  });

  test('is whole or not at all: what cannot be written leaves what stood there, and no part beside it', () => {
    writeContent(at('whole/one.txt'), 'old');
    writeContent(at('whole/one.txt'), 'new');
    expect(readFileSync(at('whole/one.txt'), 'utf8')).toBe('new');
    expect(() => writeContent(at('whole/one.txt'), Symbol('no content') as unknown as string)).toThrow();
    expect(readFileSync(at('whole/one.txt'), 'utf8')).toBe('new');
    expect(readdirSync(at('whole'))).toEqual(['one.txt']);
  });

  test('an empty file is not taken, one that holds something is', () => {
    writeFileSync(at('empty'), '');
    expect([at('empty'), at('file'), at('nowhere'), folder].map(isTaken)).toEqual([false, true, false, true]);
  });
});
