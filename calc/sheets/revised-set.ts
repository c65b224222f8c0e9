import type { Alternative } from '../plan/compared/comparison.ts';
import type { Revision } from '../plan/compared/revision.ts';
import { revisionIssue, unissuedWords } from '../plan/compared/revision-issue.ts';
import type { SheetSurroundings } from './every-sheet.ts';
import type { LetteredParts } from './lettered/lettered-plan.ts';
import type { Revised } from './pdf/set/set-sheets.ts';
import { REVISION_NAMES, type RevisionEnding, type RevisionName } from './revision-names.ts';

/** Two versions of a site, and what the later changes in the earlier. */
export interface Versions {
  readonly before: Alternative;
  readonly after: Alternative;
  readonly changes: Revision;
}

type Write = (versions: Versions, around: SheetSurroundings) => Promise<string | Uint8Array>;

/** A file that a revision is written to. */
export interface RevisionFile extends RevisionName {
  readonly write: Write;
}

// The larger writers are loaded when they are asked for.
const WRITERS: Readonly<Record<RevisionEnding, Write>> = {
  '.changes.pdf': revisedSet,
  '.changes.dxf': async (versions, around) => {
    const { planDxf } = await import('./dxf/plan-dxf.ts');
    return planDxf(versions.after.site, versions.after.plan, await lettered(versions, around));
  },
  '.changes.svg': async (versions, around) => {
    const { planSvg } = await import('./svg/plan-svg.ts');
    return planSvg(versions.after.site, versions.after.plan, await lettered(versions, around));
  },
  '.changes.csv': async ({ after, changes }) => {
    const [{ csv }, { changeOrderSheet }] = await Promise.all([
      import('./csv.ts'),
      import('./cost/change-order-sheet.ts'),
    ]);
    return csv(changeOrderSheet(after.site, changes.order));
  },
};

/** The later version clouded, as drawing set, DXF and SVG, and the change order. */
export const REVISION_FILES: readonly RevisionFile[] = REVISION_NAMES.map((name) => ({
  ...name,
  write: WRITERS[name.ending],
}));

/** The revision as sheets mark and date it: by the issue that the later version is, else as the next, which is told. */
function revisedBy({ before, after, changes }: Versions, { date, tell }: SheetSurroundings): Revised {
  const issue = revisionIssue(before.site, after.site, date);
  const unissued = unissuedWords(issue);
  if (unissued !== null) tell?.(unissued);
  return { number: issue.mark, date: issue.date, text: issue.text, since: before.name, before, changes };
}

const lettered = async (versions: Versions, around: SheetSurroundings): Promise<LetteredParts> => ({
  fonts: await around.fonts(),
  date: around.date,
  file: versions.after.name,
  revision: revisedBy(versions, around),
});

/** The drawing set of the later version, ANSI D, as a revision of the earlier: clouds, deltas, and what changed. */
async function revisedSet(versions: Versions, around: SheetSurroundings): Promise<Uint8Array> {
  const { drawingSet } = await import('./pdf/drawing-set.ts');
  const { fonts, date, underlays, tell, drawn, packer } = around;
  const { after } = versions;
  return drawingSet(after.site, after.plan, {
    fonts: await fonts(),
    date,
    paper: 'ANSI D',
    file: after.name,
    underlays: (await underlays?.()) ?? [],
    cost: after.cost,
    ...(tell && { tell }),
    ...(drawn && { drawn }),
    ...(packer && { packer }),
    revision: revisedBy(versions, around),
  });
}
