import { dayOf } from '../sheets/days/day.ts';
import { isWatched, mayGoOn, runApart } from './long-work.ts';
import type { Machine } from './machine.ts';
import { loadSolver } from './solver.ts';
import { isTaken, makeFolder, readBytes, readText, removeFile, STANDARD_INPUT, writeContent } from './system-files.ts';
import { runWords } from './words.ts';
import { crewOf, isHelper, readForCrew } from './writing/crew.ts';
import { packedFonts } from './writing/fonts.ts';
import { NATIVE } from './writing/packer.ts';

const file = new URL(import.meta.url);
const words = process.argv.slice(2);
const machine: Machine = {
  read: (path) => readForCrew(path, readText),
  bytes: readBytes,
  write: writeContent,
  remove: removeFile,
  makeFolder,
  isTaken,
  // No file has such a name.
  today: () => readForCrew('\0today', () => dayOf(new Date())),
  fonts: packedFonts,
  packer: NATIVE,
  solver: loadSolver,
  mayGoOn,
  crew: crewOf(file, words),
  input: () => readText(STANDARD_INPUT),
  progress: (line) => {
    // Over the line before, and only where somebody looks on: a file that standard error goes to is not filled with it.
    if (isWatched()) process.stderr.write(`\r\x1b[2K${line}`);
  },
};

if (!runApart(file, words)) {
  const { status, out, err } = await runWords(words, machine);
  // A reader that closes early (`| head`) is no fault of ours.
  process.stdout.on('error', () => {});
  // What is wrong is told last: what is above scrolls away.
  if (!isHelper()) {
    process.stdout.write(out, () => process.stderr.write(err));
    process.exitCode = status;
  }
}
