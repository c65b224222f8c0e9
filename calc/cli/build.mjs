import { copyFileSync, cpSync, renameSync, rmSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'vite';

const root = join(dirname(fileURLToPath(import.meta.url)), '..', '..');

/** Bundles the command line with all that it needs into `.build/overrow.mjs`. */
export async function buildCommandLine() {
  // A folder of its own, then one rename: two commands started at once must not read half a file.
  const folder = join(root, '.build', `making-${process.pid}`);
  await build({
    configFile: false,
    root,
    logLevel: 'error',
    publicDir: false,
    ssr: { noExternal: true },
    build: {
      ssr: join(root, 'calc', 'cli', 'overrow.ts'),
      outDir: folder,
      target: 'node20',
      minify: false,
      rolldownOptions: {
        output: { entryFileNames: 'overrow.mjs', codeSplitting: false, banner: '#!/usr/bin/env node' },
      },
    },
  });
  renameSync(join(folder, 'overrow.mjs'), join(root, '.build', 'overrow.mjs'));
  // The solver of linear programs finds its module beside the bundle.
  copyFileSync(createRequire(import.meta.url).resolve('highs/runtime'), join(root, '.build', 'highs.wasm'));
  // Typefaces of other scripts are read where a name needs one.
  cpSync(join(root, 'calc', 'sheets', 'fonts', 'scripts'), join(root, '.build', 'scripts'), { recursive: true });
  rmSync(folder, { recursive: true });
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) await buildCommandLine();
