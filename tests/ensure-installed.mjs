import { spawnSync } from 'node:child_process';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { isInstalled } from './installed.mjs';

const root = join(dirname(fileURLToPath(import.meta.url)), '..');

// What it says goes to where errors go: the output of a command may be read by another program.
if (!isInstalled(root)) {
  console.error('Installing what the project needs (once) ...');
  const { status } = spawnSync('npm', ['ci', '--no-audit', '--no-fund'], {
    cwd: root,
    stdio: ['inherit', 2, 2],
    shell: process.platform === 'win32',
  });
  if (status !== 0) process.exit(status ?? 1);
}
