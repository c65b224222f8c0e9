import { basename, join } from 'node:path';
import type { Alternative } from '../../plan/compared/comparison.ts';
import type { RevisionFile, Versions } from '../../sheets/revised-set.ts';
import { sheetsNameOf } from '../file-name.ts';
import type { Machine } from '../machine.ts';
import { done, type VerbOutcome, wrong } from '../outcome.ts';
import { underlaysBeside } from './underlays.ts';

/** Writes what a revision changes to files in a folder; their names, and on standard error what is to be told of them. */
export async function writeChanges(
  { before, after, changes }: Versions,
  files: readonly RevisionFile[],
  folder: string,
  machine: Machine,
): Promise<VerbOutcome> {
  const [earlier, later] = named(before, after);
  const name = sheetsNameOf(after.name);
  const written: string[] = [];
  const told = new Set<string>();
  for (const [i, { ending, says, write }] of files.entries()) {
    machine.progress(`${name}: ${says} (${i + 1} of ${files.length})`);
    const content = await write(
      { before: earlier, after: later, changes },
      {
        fonts: machine.fonts,
        ...(machine.packer && { packer: machine.packer }),
        date: machine.today(),
        underlays: async () => {
          const { laid, remarks } = underlaysBeside(after.name, after.site, machine);
          for (const remark of remarks) told.add(`${name}: ${remark}`);
          return laid;
        },
        tell: (words) => told.add(`${name}: ${words}`),
      },
    );
    const path = join(folder, `${name}${ending}`);
    try {
      machine.write(path, content);
    } catch (error) {
      machine.progress('');
      return wrong(`${path}: cannot be written: ${error instanceof Error ? error.message : String(error)}`);
    }
    written.push(path);
  }
  machine.progress('');
  return { ...done(`${written.join('\n')}\n`), err: [...told].map((words) => `${words}\n`).join('') };
}

/** The two as sheets name them: by their file, and by their path too where both files have one name. */
function named(before: Alternative, after: Alternative): readonly [Alternative, Alternative] {
  const file = basename(after.name);
  const since = basename(before.name);
  return [
    { ...before, name: since === file ? before.name : since },
    { ...after, name: file },
  ];
}
