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
// Frames are measured on the page as people get it, and on a page of peers; the best schedule by the page's worker.
await build({ root: join(root, 'web'), configFile: join(root, 'vite.config.ts'), logLevel: 'error' });
const page = async (from, name) => {
  const outDir = join(root, '.build', name);
  await build({
    configFile: false,
    root: join(root, 'tests', 'bench', ...from),
    base: './',
    logLevel: 'error',
    publicDir: false,
    worker: { format: 'es' },
    build: { outDir, emptyOutDir: true, target: 'es2022', modulePreload: { polyfill: false } },
  });
  return outDir;
};
process.env.OVERROW_PEERS = await page(['frames', 'peers'], 'peers');
process.env.OVERROW_BEST = await page(['best'], 'best');
await import(pathToFileURL(join(folder, 'main.js')).href);
for (const built of [folder, process.env.OVERROW_PEERS, process.env.OVERROW_BEST]) rmSync(built, { recursive: true });
