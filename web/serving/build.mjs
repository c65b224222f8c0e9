import { execFileSync } from 'node:child_process';
import { existsSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { newestIn } from '../../calc/cli/newest.mjs';

/** Builds the page into `dist`, as it is served to people whatever NODE_ENV the caller runs under. */
export function buildPage(root) {
  execFileSync(process.execPath, [join('node_modules', 'vite', 'bin', 'vite.js'), 'build', '--logLevel', 'error'], {
    cwd: root,
    stdio: 'inherit',
    env: { ...process.env, NODE_ENV: 'production' },
  });
}

/** Builds the page where a source is newer than the last whole build. */
export function buildIfNeeded(root) {
  // The list of what is kept for use without a network is written last.
  const built = join(root, 'dist', 'sw.js');
  const sources = Math.max(
    ...['web', 'calc', 'routing', 'samples'].map((folder) => newestIn(join(root, folder))),
    ...['package-lock.json', 'vite.config.ts'].map((file) => statSync(join(root, file)).mtimeMs),
  );
  if (existsSync(built) && statSync(built).mtimeMs >= sources) return;
  console.log('Building the page ...');
  buildPage(root);
}
