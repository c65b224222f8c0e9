import { basename, join } from 'node:path';
import type { Alternative } from '../../plan/compared/comparison.ts';
import type { RevisionFile, Versions } from '../../sheets/revised-set.ts';
import type { RevisionEnding } from '../../sheets/revision-names.ts';
import { sheetsNameOf } from '../file-name.ts';
import type { Machine } from '../machine.ts';
import { done, type VerbOutcome, wrong } from '../outcome.ts';
import { alone } from './crew.ts';
import { underlaysBeside } from './underlays.ts';
import { isLargeLot } from './write-sheets.ts';

/** Those that share their work, in the order in which they are taken: the longest at either end. */
const GROUPS: readonly (readonly RevisionEnding[])[] = [
  ['.changes.pdf'],
  ['.changes.csv'],
  ['.changes.dxf', '.changes.svg'],
];

interface Written {
  /** By its place in the list. */
  readonly file: number;
  readonly path: string;
  readonly told: readonly string[];
  readonly fault?: string;
}

/**
 * Writes what a revision changes to files in a folder, those of a large lot by two threads; their names, and on standard
 * error what is to be told of them.
 */
export async function writeChanges(
  { before, after, changes }: Versions,
  files: readonly RevisionFile[],
  folder: string,
  machine: Machine,
): Promise<VerbOutcome> {
  const [earlier, later] = named(before, after);
  const name = sheetsNameOf(after.name);
  // Asked once, before the second thread is there.
  const date = machine.today();
  const groups = GROUPS.map((endings) =>
    endings.map((one) => files.findIndex(({ ending }) => ending === one)).filter((at) => at >= 0),
  ).filter((group) => group.length > 0);
  const crew = machine.crew?.(groups.length, isLargeLot(after)) ?? alone(groups.length);
  for (let at = crew.next(); at !== null; at = crew.next())
    for (const file of groups[at]!) {
      const { ending, says, write } = files[file]!;
      machine.progress(`${name}: ${says} (${file + 1} of ${files.length})`);
      const told: string[] = [];
      const content = await write(
        { before: earlier, after: later, changes },
        {
          fonts: machine.fonts,
          ...(machine.packer && { packer: machine.packer }),
          date,
          underlays: async () => {
            const { laid, remarks } = underlaysBeside(after.name, after.site, machine);
            told.push(...remarks.map((remark) => `${name}: ${remark}`));
            return laid;
          },
          tell: (words) => told.push(`${name}: ${words}`),
        },
      );
      const path = join(folder, `${name}${ending}`);
      try {
        machine.write(path, content);
        crew.done({ file, path, told } satisfies Written);
      } catch (error) {
        const fault = `${path}: cannot be written: ${error instanceof Error ? error.message : String(error)}`;
        crew.done({ file, path, told, fault } satisfies Written);
        crew.stop();
        break;
      }
    }
  const written = ([...(await crew.rest())] as Written[]).sort((a, b) => a.file - b.file);
  machine.progress('');
  const fault = written.find((one) => one.fault !== undefined)?.fault;
  if (fault !== undefined) return wrong(fault);
  const told = new Set(written.flatMap((one) => one.told));
  return {
    ...done(`${written.map(({ path }) => path).join('\n')}\n`),
    err: [...told].map((words) => `${words}\n`).join(''),
  };
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
