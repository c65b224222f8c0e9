import '../tests/ensure-installed.mjs';
import { spawn } from 'node:child_process';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** Builds the page where that is needed, serves it at its one address, and opens it where there is a screen. */
const root = join(dirname(fileURLToPath(import.meta.url)), '..');
const { buildIfNeeded } = await import('./serving/build.mjs');
const { start } = await import('./serving/start.mjs');

buildIfNeeded(root);
const { url, says, status } = await start(join(root, 'dist'));
console[status === 0 ? 'log' : 'error'](says);
process.exitCode = status;

const OPENERS = { darwin: ['open'], win32: ['cmd', '/c', 'start', ''] };
const screen = process.platform in OPENERS || process.env.DISPLAY || process.env.WAYLAND_DISPLAY;
if (url && screen && !process.env.CI) {
  const [command, ...words] = OPENERS[process.platform] ?? ['xdg-open'];
  spawn(command, [...words, url], { stdio: 'ignore', detached: true })
    .on('error', () => undefined)
    .unref();
}
