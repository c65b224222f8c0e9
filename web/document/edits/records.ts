import type { Motion } from '../../../routing/site/place/motion.ts';
import { drawingOf } from '../../../routing/site/records/brought-up.ts';
import { missingFrom } from '../../../routing/site/records/merge.ts';
import { type Author, newMarks, nextTime, type Saying } from '../../../routing/site/records/new-mark.ts';
import { MAX_ID_LENGTH } from '../../../routing/site/schema/schema-parts.ts';
import type { AsBuilt, Mark, SiteFile } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import type { Edit, Step } from '../change/edit.ts';
import { fieldInFile } from '../change/file-lengths.ts';
import { setStep } from '../change/set-field.ts';
import { alike } from './gather.ts';

/** Who writes, and what gives each mark a name that no other has. */
export interface Pen extends Author {
  readonly newId: () => string;
}

/** Writes down what was found or done in the field, site feet. */
export function recordMarks(file: SiteFile, name: string, sayings: readonly Saying[], { newId, ...author }: Pen): Edit {
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
export function recordAsBuilt(file: SiteFile, drop: string, found: AsBuilt | null, pen: Pen): Edit {
  const was: AsBuilt = toSite(file).asBuilt.get(drop) ?? {};
  const now: AsBuilt = found ?? {};
  const by = now.checkedBy ?? pen.by;
  const places = (['box', 'retractor'] as const).flatMap((part): Saying[] =>
    alike(was[part], now[part])
      ? []
      : [{ of: drop, part, what: 'place', ...(now[part] ? { place: now[part] } : { gone: true }) }],
  );
  const note: Saying[] =
    was.note === now.note ? [] : [{ of: drop, what: 'note', ...(now.note ? { text: now.note } : { gone: true }) }];
  const checked = was.checkedOn !== now.checkedOn || was.checkedBy !== now.checkedBy;
  const set: Saying[] = checked ? [{ of: drop, what: 'set', ...(now.checkedOn === undefined && { gone: true }) }] : [];
  const day = DAY.test(now.checkedOn ?? '') ? now.checkedOn : undefined;
  const known = toSite(file).records;
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

/** The steps that put marks to those of the file, which get a list for them where there is none. */
function marksSteps(file: SiteFile, added: readonly Mark[]): readonly Step[] {
  if (added.length === 0) return [];
  const marks: Step = { kind: 'marks', added, taken: [] };
  return file.records === undefined ? [setStep(file, 'records', []), marks] : [marks];
}

/** What is told of the drawing goes by the records of who recorded against an older one; where there are none, by nothing. */
function drawingSteps(file: SiteFile, told: readonly Pick<Mark, 'of' | 'what' | 'to' | 'motion'>[]): readonly Step[] {
  const { records = [] } = file;
  if (records.length === 0 || told.length === 0) return [];
  const [time, drawing] = [nextTime(records), drawingOf(records)];
  const marks = told.map(
    (part, i): Mark => ({
      id: `drawing-${drawing}-${i}`,
      ...part,
      by: '',
      time,
      ...(drawing > 0 && { drawing }),
    }),
  );
  return marksSteps(file, marks);
}

/** Marks of what is renamed are found under its new name, those too that others bring of the old. */
export const renamedSteps = (file: SiteFile, names: ReadonlyMap<string, string>): readonly Step[] =>
  drawingSteps(
    file,
    [...names].flatMap(([of, to]) => (of === to ? [] : [{ of, what: 'renamed', to }])),
  );

const DELETED = ', deleted';

/** Marks of what is deleted stay, under a name by which nothing that is drawn later takes them for its own. */
export const deletedSteps = (file: SiteFile, ids: readonly string[]): readonly Step[] =>
  renamedSteps(file, new Map(ids.map((id) => [id, `${id.slice(0, MAX_ID_LENGTH - DELETED.length)}${DELETED}`])));

/** What was measured goes with the lot that it was measured in. */
export const movedLotSteps = (file: SiteFile, motion: Motion): readonly Step[] =>
  drawingSteps(file, [
    {
      of: 'lot',
      what: 'moved',
      motion: {
        to: motion.point([0, 0]),
        rotation: motion.direction(0),
        ...(motion.mirrors && { mirrored: true }),
      },
    },
  ]);

/** What was measured at a drop as it stands now, in the file's units. */
export function asBuiltOf(file: SiteFile, drop: string): AsBuilt | undefined {
  const found = toSite(file).asBuilt.get(drop);
  return found && fieldInFile(file, 'asBuilt', { [drop]: found })[drop];
}
