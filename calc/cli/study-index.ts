import { createHash } from 'node:crypto';
import { join } from 'node:path';
import type { Machine } from './machine.ts';

/** A file that a study wrote: its name in the folder, and the SHA-256 of what it wrote. */
interface Written {
  readonly name: string;
  readonly sha256: string;
}

export const digestOf = (content: string | Uint8Array): string => createHash('sha256').update(content).digest('hex');

/** The list of the files of a study, which a later study in the same place goes by. */
export const studyIndex = (files: readonly (readonly [string, string])[], earlier: readonly Written[]): string =>
  `${JSON.stringify({ format: 'overrow/study-files', version: 1, files: [...files.map(([name, sha256]) => ({ name, sha256 })), ...earlier] }, null, 1)}\n`;

/** The files that the list of an earlier study names; none where there is no such list, or it cannot be read. */
export function filesOf(index: string, machine: Machine): readonly Written[] {
  if (!machine.isTaken(index)) return [];
  try {
    const { format, files } = JSON.parse(machine.read(index)) as { format?: unknown; files?: unknown };
    return format === 'overrow/study-files' && Array.isArray(files) ? files.filter(isWritten) : [];
  } catch {
    return [];
  }
}

const isWritten = (one: unknown): one is Written =>
  typeof one === 'object' &&
  one !== null &&
  typeof (one as Written).name === 'string' &&
  typeof (one as Written).sha256 === 'string';

/** Names of the site and plan of a way: nothing else is ever taken away. */
const OF_A_WAY = /^W\d+\.(site\.json|svg)$/;

/**
 * Takes away the ways that an earlier study wrote and this one did not, of the same lot in the same folder. What somebody
 * changed since, or nobody listed, stays.
 */
export function removeStale(
  folder: string,
  lot: string,
  earlier: readonly Written[],
  fresh: ReadonlyMap<string, string>,
  machine: Machine,
): void {
  for (const { name, sha256 } of earlier) {
    if (fresh.has(name) || !name.startsWith(`${lot}.`) || !OF_A_WAY.test(name.slice(lot.length + 1))) continue;
    const path = join(folder, name);
    if (machine.isTaken(path) && digestOf(machine.read(path)) === sha256) machine.remove(path);
  }
}
