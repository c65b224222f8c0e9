import {
  closeSync,
  existsSync,
  fstatSync,
  lstatSync,
  mkdirSync,
  openSync,
  readSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { dirname, resolve } from 'node:path';

/** Most bytes that are read of one file or of standard input: no site file, price list or calculation is so long. */
export const MOST_BYTES = 256 * 1024 * 1024;
const PIECE = 1024 * 1024;

/** The name that means standard input. */
export const STANDARD_INPUT = '-';

const REASONS: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such file or folder',
  EISDIR: 'it is a folder, not a file',
  ENOTDIR: 'a part of its path is a file, not a folder',
  EACCES: 'this user may not',
  EPERM: 'the system does not allow it',
  EROFS: 'the disk is read-only',
  ENOSPC: 'the disk is full',
  ENAMETOOLONG: 'its name is too long',
  EMFILE: 'too many files are open',
  ELOOP: 'its links go round in a circle',
  EBUSY: 'another program holds it',
};

/** What went wrong with a file, in words and not in the system's letters. */
export function reasonOf(error: unknown): string {
  const code = (error as { readonly code?: unknown } | null)?.code;
  return REASONS[String(code)] ?? (error instanceof Error ? error.message : String(error));
}

/** The text of a file, or of standard input where it is named `-`, as `readBytes` reads it. */
export const readText = (path: string, most = MOST_BYTES): string => readBytes(path, most).toString('utf8');

/**
 * The bytes of a file, or of standard input where it is named `-`. Read in pieces, so that what never ends (a device) is
 * left off at `most` bytes. Throws an Error in words.
 */
export function readBytes(path: string, most = MOST_BYTES): Buffer {
  const file = path === STANDARD_INPUT ? 0 : inWords(() => openSync(path, 'r'));
  try {
    if (fstatSync(file).isDirectory()) throw new Error('it is a folder, not a file');
    const pieces: Buffer[] = [];
    let length = 0;
    for (;;) {
      const piece = Buffer.allocUnsafe(PIECE);
      const got = inWords(() => readPiece(file, piece));
      if (got === 0) break;
      length += got;
      if (length > most) throw new Error(`it is over ${(most / 1024 / 1024).toFixed(0)} MB long, and no more is read`);
      pieces.push(piece.subarray(0, got));
    }
    return Buffer.concat(pieces);
  } finally {
    if (file !== 0) closeSync(file);
  }
}

/** Of a terminal or a pipe that has nothing yet, waits for more. */
function readPiece(file: number, piece: Buffer): number {
  for (;;) {
    try {
      return readSync(file, piece, 0, piece.length, null);
    } catch (error) {
      const { code } = error as { readonly code?: string };
      if (code === 'EOF') return 0;
      if (code !== 'EAGAIN') throw error;
      Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 20);
    }
  }
}

/**
 * Writes a file, its folder made where it is missing, whole or not at all: beside its place, then into it in one step. What
 * stands there is lost only once the new one is written. Throws an Error in words.
 */
export function writeContent(path: string, content: string | Uint8Array): void {
  makeFolder(dirname(path));
  inWords(() => {
    // A device, a pipe or a link is written to as it is.
    if (existsSync(path) && !lstatSync(path).isFile()) return writeFileSync(path, content);
    const beside = `${path}.${process.pid}.part`;
    try {
      writeFileSync(beside, content);
      renameSync(beside, path);
    } catch (error) {
      rmSync(beside, { force: true });
      throw error;
    }
  });
}

/** Takes a file away. Throws an Error in words. */
export const removeFile = (path: string): void => inWords(() => rmSync(path));

/** True where something that holds anything stands at a path. */
export function isTaken(path: string): boolean {
  return existsSync(path) && !(statSync(path).isFile() && statSync(path).size === 0);
}

/**
 * Makes a folder and those that it lies in, one after the other from the first that is missing: a place where the system
 * lets nobody make one (/proc) is refused at once, where making all in one call goes on for ever.
 */
export function makeFolder(folder: string): void {
  const missing: string[] = [];
  let at = resolve(folder);
  while (!existsSync(at)) {
    missing.push(at);
    const above = dirname(at);
    if (above === at) break;
    at = above;
  }
  if (existsSync(at) && !statSync(at).isDirectory()) throw new Error(`${at} is a file, not a folder`);
  for (const each of missing.reverse()) {
    try {
      mkdirSync(each);
    } catch (error) {
      if ((error as { readonly code?: string }).code === 'EEXIST') continue;
      const { code } = error as { readonly code?: string };
      throw new Error(`no folder ${each} can be made${code === 'ENOENT' ? ' there' : `: ${reasonOf(error)}`}`);
    }
  }
}

function inWords<T>(work: () => T): T {
  try {
    return work();
  } catch (error) {
    throw new Error(reasonOf(error), { cause: error });
  }
}
