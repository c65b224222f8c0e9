import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'vite';
import { buildCommandLine } from './build.mjs';

const root = join(dirname(fileURLToPath(import.meta.url)), '..', '..');
const folder = join(root, '.build', 'package');

/**
 * Makes the package that others install, in `.build/package`: the command, the library as two bundles with nothing
 * left to install but what its types name, and the samples. Gives the folder.
 */
export async function buildPackage() {
  rmSync(folder, { recursive: true, force: true });
  mkdirSync(folder, { recursive: true });
  await buildCommandLine();
  await build({
    configFile: false,
    root,
    logLevel: 'error',
    publicDir: false,
    build: {
      outDir: join(folder, 'lib'),
      target: 'es2022',
      minify: false,
      rolldownOptions: { external: ['graphology'] },
      lib: {
        entry: {
          overrow: join(root, 'calc', 'library', 'overrow.ts'),
          calc: join(root, 'calc', 'library', 'calc.ts'),
        },
        formats: ['es'],
      },
    },
  });
  run('npx', ['tsc', '-p', join('calc', 'library')]);
  for (const name of ['README.md', 'LICENSE', 'samples'])
    cpSync(join(root, name), join(folder, name), { recursive: true });
  for (const name of ['overrow.mjs', 'highs.wasm', 'scripts'])
    cpSync(join(root, '.build', name), join(folder, name), { recursive: true });
  writeFileSync(join(folder, 'package.json'), `${JSON.stringify(manifest(), null, 2)}\n`);
  return folder;
}

function manifest() {
  const { name, version, description, license, type, engines, dependencies } = JSON.parse(
    readFileSync(join(root, 'package.json'), 'utf8'),
  );
  const door = (entry) => ({ types: `./types/calc/library/${entry}.d.ts`, default: `./lib/${entry}.js` });
  return {
    name,
    version,
    description,
    license,
    type,
    engines,
    bin: { overrow: 'overrow.mjs' },
    exports: { '.': door('overrow'), './calc': door('calc') },
    // Named by the types: a site file's are read off its schema, raceways come as a graph.
    dependencies: { valibot: dependencies.valibot, graphology: dependencies.graphology },
  };
}

function run(command, words, cwd = root) {
  const { status } = spawnSync(command, words, { cwd, stdio: 'inherit', shell: process.platform === 'win32' });
  if (status !== 0) throw new Error(`${command} ${words.join(' ')} failed`);
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) {
  run('npm', ['pack', '--pack-destination', join(root, '.build')], await buildPackage());
}
