import type { Motion } from '../../../../routing/site/place/motion.ts';
import { drawingOf } from '../../../../routing/site/records/brought-up.ts';
import { nextTime } from '../../../../routing/site/records/merge.ts';
import { MAX_ID_LENGTH } from '../../../../routing/site/schema/schema-parts.ts';
import type { AsBuilt, Mark, SiteFile } from '../../../../routing/site/site.ts';
import { toSite } from '../../../../routing/site/to-site.ts';
import type { EditStep } from '../../change/edit.ts';
import { fieldInFile } from '../../change/file-lengths.ts';
import { setStep } from '../../change/set-field.ts';

/** The steps that put marks to those of the file, which get a list for them where there is none. */
export function marksSteps(file: SiteFile, added: readonly Mark[]): readonly EditStep[] {
  if (added.length === 0) return [];
  const marks: EditStep = { kind: 'marks', added, taken: [] };
  return file.records === undefined ? [setStep(file, 'records', []), marks] : [marks];
}

/** What is told of the drawing goes by the records of who recorded against an older one; where there are none, by nothing. */
function drawingSteps(
  file: SiteFile,
  told: readonly Pick<Mark, 'of' | 'what' | 'to' | 'motion'>[],
): readonly EditStep[] {
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
export const renamedSteps = (file: SiteFile, names: ReadonlyMap<string, string>): readonly EditStep[] =>
  drawingSteps(
    file,
    [...names].flatMap(([of, to]) => (of === to ? [] : [{ of, what: 'renamed', to }])),
  );

const DELETED = ', deleted';

/** Marks of what is deleted stay, under a name by which nothing that is drawn later takes them for its own. */
export const deletedSteps = (file: SiteFile, ids: readonly string[]): readonly EditStep[] =>
  renamedSteps(file, new Map(ids.map((id) => [id, `${id.slice(0, MAX_ID_LENGTH - DELETED.length)}${DELETED}`])));

/** What was measured goes with the lot that it was measured in. */
export const movedLotSteps = (file: SiteFile, motion: Motion): readonly EditStep[] =>
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
export function measuredAt(file: SiteFile, drop: string): AsBuilt | undefined {
  const found = toSite(file).asBuilt.get(drop);
  return found && fieldInFile(file, 'asBuilt', { [drop]: found })[drop];
}
