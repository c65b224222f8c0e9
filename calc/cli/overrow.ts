import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { packedFonts } from './fonts.ts';
import type { Machine } from './machine.ts';
import { runWords } from './words.ts';

const machine: Machine = {
  read: (path) => readFileSync(path, 'utf8'),
  write: (path, content) => {
    mkdirSync(dirname(path), { recursive: true });
    writeFileSync(path, content);
  },
  today: () => new Date().toISOString().slice(0, 10),
  fonts: packedFonts,
  input: () => readFileSync(0, 'utf8'),
};

const { status, out, err } = await runWords(process.argv.slice(2), machine);
process.stderr.write(err);
// A reader that closes early (`| head`) is no fault of ours.
process.stdout.on('error', () => {});
process.stdout.write(out);
process.exitCode = status;
