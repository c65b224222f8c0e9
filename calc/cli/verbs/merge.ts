import { resolve } from 'node:path';
import { writeSite } from '../../../routing/site/file/write.ts';
import { printLength } from '../../../routing/site/numbers/feet-inches.ts';
import { gridlineWords } from '../../../routing/site/place/gridline-words.ts';
import { broughtUp, isOfDrawing } from '../../../routing/site/records/brought-up.ts';
import { recordsOf, writeRecords } from '../../../routing/site/records/records-file.ts';
import { conflictsOf, type Register } from '../../../routing/site/records/registers.ts';
import type { Mark, Site, SiteFile } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { type Photos, writeRecordsBundle } from '../../field/records-bundle.ts';
import { CAUTIONS } from '../../words/cautions.ts';
import type { Machine } from '../machine.ts';
import { done, type VerbOutcome, wrong } from '../outcome.ts';
import { recordsIn } from '../records-in.ts';
import { readSites } from '../sites.ts';

export interface MergeOptions {
  readonly json: boolean;
  /**
   * A site file with all records in it, or, where its name ends in `.records.json`, the records alone; in `.records.zip`,
   * with the photos that came in.
   */
  readonly out?: string;
  /** Writes over what stands at `out` already. */
  readonly replace: boolean;
}

/**
 * `merge SITE FILE... [--out FILE]`: the site with what others wrote down of it in the field, out of records files or other
 * copies of the site. The drawing is that of the first; no mark is lost or chosen between, and where two say different
 * things it is told. Alone, SITE's own records are told, or written.
 */
export function mergeVerb(
  paths: readonly string[],
  { json, out, replace }: MergeOptions,
  machine: Machine,
): VerbOutcome {
  const [first, ...others] = paths;
  if (first === undefined) return wrong('merge: name a site file, then the files whose records it takes in');
  if (out !== undefined && !replace && machine.isTaken(out))
    return wrong(`merge --out: ${out} stands there already; --replace writes over it`);
  const read = readSites([first], machine);
  if (!read.ok) return wrong(read.reason);
  const [{ file }] = read.sites as [(typeof read.sites)[number]];
  const taken = recordsIn(file, others, machine);
  if (!taken.ok) return wrong(taken.reason);
  const { all, came, photos } = taken;
  const merged: SiteFile = all.length > 0 ? { ...file, records: all } : file;
  const site = toSite(merged);
  const conflicts = conflictsOf(site.records);
  if (out !== undefined) {
    try {
      machine.write(out, contentFor(out, merged, photos));
    } catch (error) {
      return wrong(`${out}: cannot be written: ${error instanceof Error ? error.message : String(error)}`);
    }
  }
  const work = all.filter((mark) => !isOfDrawing(mark)).length;
  if (json) {
    const files = came.map(({ path, records, marks }) => ({
      file: path,
      site: records.site,
      marks: records.records.length,
      new: marks.length,
    }));
    const told = conflicts.map(({ of, part, what, heads }) => ({ of, ...(part && { part }), what, marks: heads }));
    return done(
      `${JSON.stringify({ format: 'overrow/merge', version: 1, site: file.name, marks: work, files, conflicts: told })}\n`,
    );
  }
  return done(
    `${[
      `${file.name}: ${work} marks${out === undefined ? '' : `, written to ${out}${resolve(out) === resolve(first) ? ' (over the file that was read)' : ''}`}`,
      ...came.map(
        ({ path, records, marks }) =>
          `  ${path}: ${marks.length} new of ${records.records.length}${records.site === file.name ? '' : `, recorded of a site named ${records.site}`}`,
      ),
      ...standing(site),
      conflicts.length === 0 ? 'No two say different things.' : `${conflicts.length} where two say different things:`,
      ...conflicts.map((conflict) => conflictLines(conflict, site)),
      '',
      CAUTIONS,
    ].join('\n')}\n`,
  );
}

/** What is written to a file by what its name ends in: the site, its records, or these with the photos that came in. */
function contentFor(out: string, merged: SiteFile, photos: Photos): string | Uint8Array {
  if (out.endsWith('.records.json')) return writeRecords(recordsOf(merged));
  if (out.endsWith('.records.zip')) return writeRecordsBundle({ records: recordsOf(merged), photos });
  return writeSite(merged);
}

/** How far the work is, and marks of what is not drawn. */
function standing(site: Site): readonly string[] {
  const marks = broughtUp(site.records);
  const drawn = new Set(
    [
      ...site.drops,
      ...site.chargers,
      ...site.equipment,
      ...site.columns,
      ...site.pullpoints,
      ...site.raceways,
      ...site.members,
      ...site.stalls,
    ].map(({ id }) => id),
  );
  const stray = [
    ...new Set(
      marks.filter(({ what, of }) => what !== 'line' && what !== 'answered' && !drawn.has(of)).map(({ of }) => of),
    ),
  ];
  const set = site.drops.filter(({ id }) => site.asBuilt.get(id)?.checkedOn !== undefined).length;
  return [
    `  drops set: ${set} of ${site.drops.length}`,
    ...(stray.length > 0 ? [`  of what is not drawn: ${stray.join('; ')}`] : []),
  ];
}

function conflictLines({ of, part, what, heads }: Register, site: Site): string {
  const says = (mark: Mark): string => {
    if (mark.gone) return 'taken back';
    if (mark.place) return gridlineWords(mark.place, site.gridlines, site.units);
    if (mark.text !== undefined) return JSON.stringify(mark.text);
    if (mark.line)
      return `a line of axis ${mark.line.axis} at ${mark.line.at.map((each) => printLength(each, site.units)).join(', ')}`;
    return 'done';
  };
  return [
    `  ${of}${part ? `, ${part}` : ''}, ${what}:`,
    ...heads.map((mark) => `    ${mark.by || 'without initials'}${mark.on ? ` on ${mark.on}` : ''}: ${says(mark)}`),
  ].join('\n');
}
