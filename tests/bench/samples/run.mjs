import '../../ensure-installed.mjs';
import { rmSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

/** Writes the samples anew from their makers. */
const { build } = await import('vite');
const root = join(dirname(fileURLToPath(import.meta.url)), '..', '..', '..');
const folder = join(root, '.build', `samples-${process.pid}`);
await build({
  configFile: false,
  root,
  logLevel: 'error',
  publicDir: false,
  build: { ssr: join(root, 'tests', 'bench', 'samples', 'write.ts'), outDir: folder, target: 'node20', minify: false },
});
process.chdir(root);
await import(pathToFileURL(join(folder, 'write.js')).href);
rmSync(folder, { recursive: true });
