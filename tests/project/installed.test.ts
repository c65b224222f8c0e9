import { spawnSync } from 'node:child_process';
import { chmodSync, cpSync, mkdirSync, mkdtempSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { delimiter, join, resolve } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { isInstalled } from '../installed.mjs';

const ROOT = resolve(import.meta.dirname, '../..');
let project = '';

beforeEach(() => {
  project = mkdtempSync(join(tmpdir(), 'installed-'));
  mkdirSync(join(project, 'node_modules'));
});
afterEach(() => rmSync(project, { recursive: true }));

/** Writes the two lock files, the installed one so many seconds after the other. */
function locks(wanted: object, installed: object, after: number): void {
  const write = (path: string, packages: object, at: number): void => {
    writeFileSync(join(project, path), JSON.stringify({ lockfileVersion: 3, packages }));
    utimesSync(join(project, path), at, at);
  };
  write('package-lock.json', wanted, 1000);
  write('node_modules/.package-lock.json', installed, 1000 + after);
}

const ONE = { 'node_modules/one': { version: '1.0.0', integrity: 'a' } };

describe('whether what is needed is installed', () => {
  test('not where nothing is', () => {
    writeFileSync(join(project, 'package-lock.json'), '{}');
    expect(isInstalled(project)).toBe(false);
  });
  test('where the install is newer than the lock file, without a look into either', () => {
    locks({ '': {}, ...ONE }, {}, 1);
    expect(isInstalled(project)).toBe(true);
  });
  test('where a pull touched the lock file and asks for nothing else', () => {
    locks({ '': { name: 'x' }, ...ONE }, ONE, -1);
    expect(isInstalled(project)).toBe(true);
  });
  test('not where a pull added a package, or another version of one', () => {
    locks({ '': {}, ...ONE, 'node_modules/two': { version: '2.0.0' } }, ONE, -1);
    expect(isInstalled(project)).toBe(false);
    locks({ 'node_modules/one': { version: '1.0.1', integrity: 'b' } }, ONE, -1);
    expect(isInstalled(project)).toBe(false);
  });
  test('where only what is optional is missing, as for another system', () => {
    locks({ ...ONE, 'node_modules/mac': { version: '1.0.0', optional: true } }, ONE, -1);
    expect(isInstalled(project)).toBe(true);
  });
});

test.skipIf(process.platform === 'win32')(
  'the command line installs what a pull asks for before it is built, and says so where errors go',
  () => {
    for (const file of ['calc/cli/run.mjs', 'calc/cli/newest.mjs', 'tests/ensure-installed.mjs', 'tests/installed.mjs'])
      cpSync(join(ROOT, file), join(project, file));
    mkdirSync(join(project, 'routing'));
    mkdirSync(join(project, '.build'));
    writeFileSync(join(project, 'package.json'), '{ "type": "module" }');
    // The builder finds the new package only where the install has been; both are stand-ins.
    writeFileSync(
      join(project, 'calc/cli/build.mjs'),
      `import 'two';
       import { writeFileSync } from 'node:fs';
       export const buildCommandLine = () => writeFileSync(new URL('../../.build/overrow.mjs', import.meta.url), 'console.log("planned")');`,
    );
    const bin = join(project, 'bin');
    mkdirSync(bin);
    writeFileSync(
      join(bin, 'npm'),
      `#!/bin/sh\necho "$@"\nmkdir -p node_modules/two && echo '{}' > node_modules/two/package.json && : > node_modules/two/index.js\ncp package-lock.json node_modules/.package-lock.json\n`,
    );
    chmodSync(join(bin, 'npm'), 0o755);
    locks({ '': {}, ...ONE, 'node_modules/two': { version: '2.0.0' } }, ONE, -1);
    const run = () =>
      spawnSync(process.execPath, [join(project, 'calc/cli/run.mjs')], {
        encoding: 'utf8',
        env: { ...process.env, PATH: `${bin}${delimiter}${process.env.PATH}` },
      });
    const first = run();
    expect(first.stdout).toBe('planned\n');
    expect(first.stderr).toBe('Installing what the project needs (once) ...\nci --no-audit --no-fund\n');
    const second = run();
    expect(second.stdout).toBe('planned\n');
    expect(second.stderr).toBe('');
  },
);
