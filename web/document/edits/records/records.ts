import { missingFrom } from '../../../../routing/site/records/merge.ts';
import { type Author, newMarks, type Saying } from '../../../../routing/site/records/new-mark.ts';
import { addressOf, registersOf } from '../../../../routing/site/records/registers.ts';
import type { AsBuilt, Mark, SiteFile } from '../../../../routing/site/site.ts';
import { toSite } from '../../../../routing/site/to-site.ts';
import type { Edit } from '../../change/edit.ts';
import { fieldInFile } from '../../change/file-lengths.ts';
import { alike } from '../gather.ts';
import { marksSteps } from './marks-steps.ts';

/** Who writes, and what gives each mark a name that no other has. */
export interface RecordPen extends Author {
  readonly newId: () => string;
}

/** Writes down what was found or done in the field, site feet. */
export function recordMarks(
  file: SiteFile,
  name: string,
  sayings: readonly Saying[],
  { newId, ...author }: RecordPen,
): Edit {
  const marks = newMarks(toSite(file).records, sayings, author, newId);
  return { name, steps: marksSteps(file, fieldInFile(file, 'records', marks)) };
}

/** Takes in what others wrote down, in the file's units. Nothing that is there is changed. */
export function mergeRecords(file: SiteFile, others: readonly Mark[], name = 'Merge records'): Edit {
  return { name, steps: marksSteps(file, missingFrom(others, file.records ?? [])) };
}

/**
 * Writes down what was measured at a drop, site feet, or takes it back (null): a mark for each field that is another than
 * before. `set` is the day and who checked it; the rest is by the same hand.
 */
export function recordAsBuilt(file: SiteFile, drop: string, found: AsBuilt | null, pen: RecordPen): Edit {
  const was: AsBuilt = toSite(file).asBuilt.get(drop) ?? {};
  const now: AsBuilt = found ?? {};
  const by = now.checkedBy ?? pen.by;
  const known = toSite(file).records;
  const registers = registersOf(known);
  // Whoever gives initials signs what was written without.
  const unsigned = (address: Pick<Saying, 'of' | 'part' | 'what'>): boolean =>
    by !== '' && registers.get(addressOf(address))?.now?.by === '';
  const places = (['box', 'retractor'] as const).flatMap((part): Saying[] =>
    alike(was[part], now[part]) && !unsigned({ of: drop, part, what: 'place' })
      ? []
      : [{ of: drop, part, what: 'place', ...(now[part] ? { place: now[part] } : { gone: true }) }],
  );
  const note: Saying[] =
    was.note === now.note && !unsigned({ of: drop, what: 'note' })
      ? []
      : [{ of: drop, what: 'note', ...(now.note ? { text: now.note } : { gone: true }) }];
  const checked = was.checkedOn !== now.checkedOn || was.checkedBy !== now.checkedBy;
  const signs = now.checkedOn !== undefined && unsigned({ of: drop, what: 'set' });
  const set: Saying[] =
    checked || signs ? [{ of: drop, what: 'set', ...(now.checkedOn === undefined && { gone: true }) }] : [];
  const day = DAY.test(now.checkedOn ?? '') ? now.checkedOn : undefined;
  const marks = [
    ...newMarks(known, set, authorOf(by, day), pen.newId),
    ...newMarks(known, [...places, ...note], authorOf(by, pen.on), pen.newId),
  ];
  return {
    name: `${found ? 'Record' : 'Forget'} ${drop} as built`,
    steps: marksSteps(file, fieldInFile(file, 'records', marks)),
  };
}

const DAY = /^\d{4}-\d{2}-\d{2}$/;

const authorOf = (by: string, on: string | undefined): Author => ({ by, ...(on !== undefined && { on }) });
