import { spawnSync } from 'node:child_process';
import { existsSync, statSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = join(dirname(fileURLToPath(import.meta.url)), '..');
const installed = join(root, 'node_modules', '.package-lock.json');
const wanted = join(root, 'package-lock.json');

// npm writes its own copy of the lock file at the end of an install: where it is there and newer, all is in place.
if (!existsSync(installed) || statSync(installed).mtimeMs < statSync(wanted).mtimeMs) {
  console.log('Installing what the project needs (once) ...');
  const { status } = spawnSync('npm', ['ci', '--no-audit', '--no-fund'], {
    cwd: root,
    stdio: 'inherit',
    shell: process.platform === 'win32',
  });
  if (status !== 0) process.exit(status ?? 1);
}
