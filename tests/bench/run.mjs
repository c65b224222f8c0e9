import '../ensure-installed.mjs';
import { copyFileSync, rmSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

/** Builds the benchmarks to one file and runs them. Times differ from machine to machine; compare within one run. */
const { build } = await import('vite');
const root = join(dirname(fileURLToPath(import.meta.url)), '..', '..');
const folder = join(root, '.build', 'bench');
await build({
  configFile: false,
  root,
  logLevel: 'error',
  publicDir: false,
  build: {
    ssr: join(root, 'tests', 'bench', 'main.ts'),
    outDir: folder,
    target: 'node20',
    minify: false,
    emptyOutDir: true,
  },
});
// The server reads its headers from beside itself.
copyFileSync(join(root, 'web', 'serving', 'headers.json'), join(folder, 'headers.json'));
// Frames are measured on the page as people get it, and on a page of peers.
await build({ root: join(root, 'web'), configFile: join(root, 'vite.config.ts'), logLevel: 'error' });
const peers = join(root, '.build', 'peers');
await build({
  configFile: false,
  root: join(root, 'tests', 'bench', 'frames', 'peers'),
  base: './',
  logLevel: 'error',
  publicDir: false,
  build: { outDir: peers, emptyOutDir: true, target: 'es2022', modulePreload: { polyfill: false } },
});
process.env.OVERROW_PEERS = peers;
await import(pathToFileURL(join(folder, 'main.js')).href);
rmSync(folder, { recursive: true });
rmSync(peers, { recursive: true });
