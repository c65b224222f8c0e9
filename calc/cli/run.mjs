#!/usr/bin/env node
import { spawnSync } from 'node:child_process';
import { existsSync, statSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { newestIn } from './newest.mjs';

/** Builds the command line to one file where the sources are newer than the last build, then runs it. */
const root = join(dirname(fileURLToPath(import.meta.url)), '..', '..');
const built = join(root, '.build', 'overrow.mjs');

const sources = Math.max(
  newestIn(join(root, 'calc')),
  newestIn(join(root, 'routing')),
  statSync(join(root, 'package.json')).mtimeMs,
);
if (!existsSync(built) || statSync(built).mtimeMs < sources) {
  // A pull may have brought a package; what is built already has all in it.
  await import('../../tests/ensure-installed.mjs');
  const { buildCommandLine } = await import('./build.mjs');
  await buildCommandLine();
}
// An interrupt is for the command, which ends with what it has.
process.on('SIGINT', () => {});
// Room for what is young, MB: a sheet's text and tables else outlive it by the thousand, and are copied again and again.
const node = ['--stack-size=2000', '--max-semi-space-size=64'];
const { status, signal } = spawnSync(process.execPath, [...node, built, ...process.argv.slice(2)], {
  stdio: 'inherit',
});
process.exit(signal ? 1 : (status ?? 1));
