import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { build } from 'vite';
import { afterAll, beforeAll, expect, test } from 'vitest';

/** The package as somebody gets it: packed, installed into an empty folder, used from there. */
const ROOT = resolve(import.meta.dirname, '../..');
const LIBRARY = join(ROOT, 'samples', 'library-lot.site.json');
const folder = mkdtempSync(join(tmpdir(), 'overrow-package-'));
const node = (...words: string[]): string =>
  execFileSync(process.execPath, words, { cwd: folder, encoding: 'utf8', maxBuffer: 1 << 28 });

beforeAll(() => {
  execFileSync(process.execPath, [join(ROOT, 'calc', 'cli', 'pack.mjs')], { cwd: ROOT, stdio: 'ignore' });
  const tarball = readdirSync(join(ROOT, '.build')).find((name) => /^overrow-.*\.tgz$/.test(name));
  writeFileSync(join(folder, 'package.json'), '{"name": "empty", "private": true, "type": "module"}');
  execFileSync(
    'npm',
    ['install', '--prefer-offline', '--no-audit', '--no-fund', join(ROOT, '.build', tarball ?? 'no tarball')],
    { cwd: folder, stdio: 'ignore', shell: process.platform === 'win32' },
  );
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

test('a plain JavaScript file plans a site as the command does, byte for byte', () => {
  writeFileSync(
    join(folder, 'plain.js'),
    `import { readFileSync } from 'node:fs';
import { plan, readSite } from 'overrow';
const read = readSite(readFileSync(process.argv[2], 'utf8'));
if (!read.ok) throw new Error(read.errors.map(({ place, says }) => place + ': ' + says).join('\\n'));
process.stdout.write(JSON.stringify(plan(read.file)) + '\\n');
`,
  );
  expect(node('plain.js', LIBRARY)).toBe(
    node(join('node_modules', 'overrow', 'overrow.mjs'), 'plan', '--json', LIBRARY),
  );
});

test('it draws in what is missing', () => {
  writeFileSync(
    join(folder, 'propose.js'),
    `import { plan, propose, readSiteValue } from 'overrow';
const stalls = [0, 1, 2, 3].map((n) => ({ id: 'S' + n, at: [9 * n + 4.5, 0], width: 9, depth: 18, heading: 90 }));
const source = { id: 'SVC', kind: 'source', at: [-20, 20], size: [2, 2, 6], entry: [-20, 20, 5], volts: 208, phases: 3 };
const member = { id: 'B1', from: [-20, 20, 12], to: [40, 20, 12] };
const read = readSiteValue({ format: 'overrow/site', version: 1, units: 'ft', name: 'four', stalls, equipment: [source], members: [member] });
const { file } = propose(read.file);
console.log(file.drops.length, plan(file).runs.filter(({ ok }) => ok).length);
`,
  );
  expect(node('propose.js')).toMatch(/^[1-4] 4\n$/);
});

test('the raceways come as a graph for other algorithms: as many pieces and ends as are drawn', () => {
  writeFileSync(
    join(folder, 'graph.js'),
    `import { racewayGraph, readSiteValue } from 'overrow';
const raceways = [
  { id: 'R1', path: [[0, 0, 11], [100, 0, 11]], method: 'EMT', place: 'overhead' },
  { id: 'R2', path: [[40, 0, 11], [40, 30, 11]], method: 'EMT', place: 'overhead' },
];
const read = readSiteValue({ format: 'overrow/site', version: 1, units: 'ft', name: 'tee', raceways });
const graph = racewayGraph(read.file);
const ends = graph.filterNodes((node) => graph.degree(node) === 1).length;
console.log(ends, graph.reduceEdges((sum, edge, { length }) => sum + length, 0));
`,
  );
  expect(node('graph.js')).toBe('3 130\n');
});

test('a TypeScript file without DOM types finds types for all of it, and runs', () => {
  writeFileSync(
    join(folder, 'typed.ts'),
    `import { ampacity, explained, NEC, type Step } from 'overrow/calc';
import { type Finding, type PlanFile, plan, readSite, type SiteFile } from 'overrow';
const read = readSite('{"format": "overrow/site", "version": 1, "units": "m", "name": "a stall", "stalls": [{"id": "S1", "at": [0, 0], "width": 3, "depth": 5, "heading": 90}]}');
if (!read.ok) throw new Error(read.errors[0]?.says ?? '');
const file: SiteFile = read.file;
const planned: PlanFile = plan(file);
const first: Finding | undefined = planned.findings[0];
const steps: readonly Step[] = explained((tell) =>
  ampacity(NEC, { conductor: { size: '8', metal: 'copper', insulation: 'THWN-2' }, ambientC: 40, currentCarrying: 3, terminalC: 75 }, tell),
).steps;
// @ts-expect-error a plan has no such field
planned.costs;
export const said: string = \`\${planned.units} \${typeof first?.says} \${steps.length > 0}\`;
declare const console: { log(text: string): void };
console.log(said);
`,
  );
  writeFileSync(
    join(folder, 'tsconfig.json'),
    JSON.stringify({
      compilerOptions: {
        strict: true,
        target: 'ES2022',
        lib: ['ES2023'],
        module: 'NodeNext',
        moduleResolution: 'NodeNext',
        types: [],
        // The library that reads the schema names Blob and File in its own types.
        skipLibCheck: true,
        outDir: 'out',
      },
      files: ['typed.ts'],
    }),
  );
  execFileSync(process.execPath, [join(ROOT, 'node_modules', 'typescript', 'bin', 'tsc'), '-p', folder], {
    cwd: folder,
    encoding: 'utf8',
  });
  expect(node(join('out', 'typed.js'))).toBe('m string true\n');
});

test('a bundler takes it for a browser, with nothing of Node in it', async () => {
  mkdirSync(join(folder, 'page'));
  writeFileSync(
    join(folder, 'page', 'main.js'),
    `import { plan, readSite } from 'overrow'; import { NEC, ampacity } from 'overrow/calc'; globalThis.made = [plan, readSite, NEC, ampacity];`,
  );
  await build({
    configFile: false,
    root: join(folder, 'page'),
    logLevel: 'error',
    build: { outDir: join(folder, 'built'), rolldownOptions: { input: join(folder, 'page', 'main.js') } },
  });
  const scripts = readdirSync(join(folder, 'built'), { recursive: true, encoding: 'utf8' }).filter((name) =>
    name.endsWith('.js'),
  );
  expect(scripts.length).toBeGreaterThan(0);
  for (const name of scripts)
    expect(readFileSync(join(folder, 'built', name), 'utf8')).not.toMatch(/from\s*["']node:|require\(|__vite-browser/);
});
