import { basename, join } from 'node:path';
import { alternativeOf } from '../../alternative.ts';
import type { Alternative } from '../../comparison.ts';
import { SHEET_FILES } from '../../sheets/every-sheet.ts';
import { writePlan } from '../../write-plan.ts';
import type { Machine } from '../machine.ts';
import { done, type Outcome, wrong } from '../outcome.ts';
import { pricesIn } from '../prices.ts';
import { type NamedSite, readSites } from '../sites.ts';
import { summary } from '../summary.ts';

export interface PlanOptions {
  readonly json: boolean;
  /** Folder to write every sheet of every file to. */
  readonly out?: string;
  readonly prices?: string;
}

/**
 * `plan FILE...`: a readable summary of each; with `json` each file's plan as one line of JSON, in order; with `out`
 * every sheet of each in that folder, named after the file, and the names of what was written.
 */
export async function planVerb(paths: readonly string[], options: PlanOptions, machine: Machine): Promise<Outcome> {
  if (paths.length === 0) return wrong('plan: name one site file or more');
  if (options.json && options.out !== undefined) return wrong('plan: --json prints, --out writes; choose one');
  const prices = pricesIn(options.prices, machine);
  if (!prices.ok) return wrong(prices.reason);
  const read = readSites(paths, machine);
  if (!read.ok) return wrong(read.reason);
  const planned = read.sites.map((named) => ({
    named,
    alternative: alternativeOf(named.path, named.site, prices.list),
  }));
  if (options.out !== undefined) return writeSheets(planned, options.out, machine);
  const printed = planned.map(({ alternative }) =>
    options.json ? `${JSON.stringify(writePlan(alternative.plan, alternative.site))}\n` : summary(alternative),
  );
  return done(printed.join(options.json ? '' : '\n'));
}

async function writeSheets(
  planned: readonly { readonly named: NamedSite; readonly alternative: Alternative }[],
  folder: string,
  machine: Machine,
): Promise<Outcome> {
  const names = planned.map(({ named }) => basename(named.path).replace(/(\.site)?\.json$/, ''));
  const twice = names.find((name, i) => names.indexOf(name) !== i);
  if (twice !== undefined)
    return wrong(`plan --out: two of the files are named ${twice}; their sheets would overwrite one another`);
  const written: string[] = [];
  for (const [i, { alternative }] of planned.entries())
    for (const { ending, write } of SHEET_FILES) {
      const content = await write(
        { ...alternative, name: basename(alternative.name) },
        { fonts: machine.fonts, date: machine.today() },
      );
      if (content === null) continue;
      const path = join(folder, `${names[i]}${ending}`);
      try {
        machine.write(path, content);
      } catch (error) {
        return wrong(`${path}: cannot be written: ${error instanceof Error ? error.message : String(error)}`);
      }
      written.push(path);
    }
  return done(`${written.join('\n')}\n`);
}
