import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Machine } from '../../../calc/cli/machine.ts';
import { loadSolver } from '../../../calc/cli/solver.ts';
import { packedFonts } from '../../../calc/cli/writing/fonts.ts';

export const SAMPLES = join(import.meta.dirname, '../../../samples');

/** A machine with these files and this standard input, and the samples; what is written is kept. */
export function machineWith(
  files: Readonly<Record<string, string>> = {},
  input = '',
): Machine & { readonly written: Map<string, string | Uint8Array> } {
  const written = new Map<string, string | Uint8Array>();
  return {
    written,
    read: (path) => {
      const held = files[path];
      if (held !== undefined) return held;
      if (path.startsWith('samples/')) return readFileSync(join(SAMPLES, path.slice(8)), 'utf8');
      throw new Error('no such file');
    },
    write: (path, content) => {
      written.set(path, content);
    },
    bytes: () => new Uint8Array(),
    makeFolder: (path) => {
      if (path.startsWith('/proc/')) throw new Error(`no folder ${path} can be made there`);
    },
    isTaken: (path) => written.has(path) || files[path] !== undefined,
    progress: () => {},
    today: () => '2026-11-25',
    fonts: packedFonts,
    solver: loadSolver,
    remove: () => {},
    mayGoOn: () => () => true,
    input: () => input,
  };
}

export const LIBRARY = 'samples/library-lot.site.json';
export const HOSPITAL = 'samples/hospital-lot.site.json';
