import { dayOf } from '../sheets/day.ts';
import { packedFonts } from './fonts.ts';
import type { Machine } from './machine.ts';
import { loadSolver } from './solver.ts';
import { isTaken, makeFolder, readText, STANDARD_INPUT, writeContent } from './system-files.ts';
import { runWords } from './words.ts';

const machine: Machine = {
  read: readText,
  write: writeContent,
  makeFolder,
  isTaken,
  today: () => dayOf(new Date()),
  fonts: packedFonts,
  solver: loadSolver,
  input: () => readText(STANDARD_INPUT),
  progress: (line) => {
    // Over the line before, and only where somebody looks on: a file that standard error goes to is not filled with it.
    if (process.stderr.isTTY) process.stderr.write(`\r\x1b[2K${line}`);
  },
};

const { status, out, err } = await runWords(process.argv.slice(2), machine);
process.stderr.write(err);
// A reader that closes early (`| head`) is no fault of ours.
process.stdout.on('error', () => {});
process.stdout.write(out);
process.exitCode = status;
