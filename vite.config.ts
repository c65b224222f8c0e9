import { createHash } from 'node:crypto';
import { readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import { brotliCompress, constants } from 'node:zlib';
import react from '@vitejs/plugin-react';
import { defineConfig, type Plugin } from 'vite';
import { VitePWA } from 'vite-plugin-pwa';
import { FETCHED_LATER } from './calc/sheets/pdf/kit/scripts/faces.ts';
import { version } from './package.json' with { type: 'json' };
import headers from './web/serving/headers.json' with { type: 'json' };

/** What of the content policy the built page itself can carry; the development server needs a looser one. */
const POLICY = headers['Content-Security-Policy']
  .split('; ')
  .filter((part) => !part.startsWith('frame-ancestors'))
  .join('; ');

const contentPolicy: Plugin = {
  name: 'content-policy',
  apply: 'build',
  transformIndexHtml: () => [
    { tag: 'meta', attrs: { 'http-equiv': 'Content-Security-Policy', content: POLICY }, injectTo: 'head-prepend' },
    { tag: 'meta', attrs: { name: 'referrer', content: 'no-referrer' }, injectTo: 'head-prepend' },
  ],
};

/** Has the built page say its version: the package's, and a sign of what is in this build. */
const versionOfBuild: Plugin = {
  name: 'version-of-build',
  apply: 'build',
  transformIndexHtml: {
    order: 'post',
    handler: (_, { bundle }) => {
      const files = Object.keys(bundle ?? {}).sort();
      const build = createHash('sha256').update(files.join('\n')).digest('hex').slice(0, 7);
      return [{ tag: 'meta', attrs: { name: 'version', content: `${version}, build ${build}` }, injectTo: 'head' }];
    },
  },
};

/** Keeps every file of the page in the browser, so that it opens without a network; `web/kept-page/` does the rest. */
const keptPage = VitePWA({
  registerType: 'prompt',
  injectRegister: false,
  manifest: {
    name: 'Overrow',
    short_name: 'Overrow',
    description: 'A planner for overhead EV-charging drops over parking rows',
    start_url: './',
    scope: './',
    display: 'standalone',
    background_color: '#f1f2ec',
    theme_color: '#1b2226',
    icons: [
      { src: 'icon-192.png', sizes: '192x192', type: 'image/png' },
      { src: 'icon-512.png', sizes: '512x512', type: 'image/png' },
      { src: 'icon-whole-512.png', sizes: '512x512', type: 'image/png', purpose: 'maskable' },
    ],
  },
  workbox: {
    globPatterns: ['**/*'],
    // Packed copies are for the host to send; what the browser keeps is unpacked. Typefaces that few lots need are kept
    // once a site needs them (web/kept-page/face-files.ts).
    globIgnores: ['**/*.br', ...FETCHED_LATER.map((name) => `assets/${name}-*.woff`)],
    maximumFileSizeToCacheInBytes: 8_000_000,
    // A folder of a host may hold other pages below this one: only this page's own addresses are answered for.
    navigateFallback: null,
    ignoreURLParametersMatching: [/./],
    // The first tab, too, keeps the parts that it has not loaded yet when the host is updated.
    clientsClaim: true,
    skipWaiting: false,
  },
});

/**
 * Writes a packed copy (Brotli) beside each script and style, as hosts send them. The first screen waits for its own, so
 * these are packed as small as they get, which takes seconds; the others fast.
 */
const packedCopies: Plugin = {
  name: 'packed-copies',
  apply: 'build',
  writeBundle: async ({ dir }, bundle) => {
    const pack = promisify(brotliCompress);
    const names = Object.keys(bundle).filter((name) => /\.(js|css)$/.test(name));
    await Promise.all(
      names.map(async (name) => {
        const path = join(dir ?? '', name);
        const quality = /\/(page|libraries)-/.test(name) ? constants.BROTLI_MAX_QUALITY : 6;
        const params = { [constants.BROTLI_PARAM_QUALITY]: quality };
        await writeFile(`${path}.br`, await pack(await readFile(path), { params }));
      }),
    );
  },
};

/**
 * Leaves out of the page what the tables say of how far they were verified and what is in doubt: long texts for who reads or
 * tests the code, which nothing on the page shows.
 */
const leanTables: Plugin = {
  name: 'lean-tables',
  apply: 'build',
  enforce: 'post',
  transform(code, id) {
    if (!id.includes('/calc/tables/')) return null;
    const texts: { readonly start: number; readonly end: number; readonly empty: string }[] = [];
    const look = (node: unknown): void => {
      if (Array.isArray(node)) for (const one of node) look(one);
      if (typeof node !== 'object' || node === null || Array.isArray(node)) return;
      const { type, key, value } = node as {
        readonly type?: string;
        readonly key?: { readonly name?: string };
        readonly value?: { readonly start: number; readonly end: number };
      };
      const empty = key?.name === 'verified' ? "''" : key?.name === 'doubts' ? '[]' : undefined;
      if (type === 'Property' && value !== undefined && empty !== undefined)
        texts.push({ start: value.start, end: value.end, empty });
      else for (const part of Object.values(node)) look(part);
    };
    look(this.parse(code));
    let lean = code;
    for (const { start, end, empty } of texts.sort((a, b) => b.start - a.start))
      lean = `${lean.slice(0, start)}${empty}${lean.slice(end)}`;
    return { code: lean, map: null };
  },
};

const PAGE = fileURLToPath(new URL('./web/main.tsx', import.meta.url));

/** The modules of the first screen: what the page's own script imports, and what those import, but not what comes later. */
const firstScreen = (moduleInfo: (id: string) => { readonly importedIds: readonly string[] } | null): Set<string> => {
  const found = new Set([PAGE]);
  for (const id of found) for (const imported of moduleInfo(id)?.importedIds ?? []) found.add(imported);
  return found;
};

let first: ReadonlySet<string> | null = null;

const FFLATE = fileURLToPath(new URL('./web/sheets/fflate-in-one-thread.ts', import.meta.url));

export default defineConfig({
  root: 'web',
  base: './',
  plugins: [react(), leanTables, contentPolicy, versionOfBuild, packedCopies, keptPage],
  worker: { format: 'es' },
  resolve: { alias: [{ find: /^fflate$/, replacement: FFLATE }] },
  server: { port: 5173, strictPort: true },
  build: {
    outDir: '../dist',
    emptyOutDir: true,
    // What is loaded when asked for lists no more than itself: the lists would be a part of the first screen.
    modulePreload: {
      polyfill: false,
      resolveDependencies: (_, deps, { hostType }) => (hostType === 'html' ? deps : []),
    },
    assetsInlineLimit: 0,
    target: 'es2022',
    chunkSizeWarningLimit: 1300,
    rolldownOptions: {
      output: {
        // In two files: of many small ones each costs a request, and is packed by itself.
        codeSplitting: {
          groups: [
            {
              name: (id, chunks) => {
                first ??= firstScreen((each) => chunks.getModuleInfo(each));
                if (!first.has(id)) return null;
                return id.includes('node_modules') ? 'libraries' : 'page';
              },
            },
          ],
        },
      },
    },
  },
});
