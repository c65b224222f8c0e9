import type { Alternative } from '../plan/comparison.ts';
import type { Revision } from '../plan/revision.ts';
import type { SheetSurroundings } from './every-sheet.ts';

/** The drawing set of the later version, ANSI D, as a revision of the earlier: clouds, deltas, and what changed. */
export async function revisedSet(
  before: Alternative,
  after: Alternative,
  changes: Revision,
  { fonts, date, underlays, tell, drawn }: SheetSurroundings,
  number = '1',
): Promise<Uint8Array> {
  const { drawingSet } = await import('./pdf/drawing-set.ts');
  return drawingSet(after.site, after.plan, {
    fonts: await fonts(),
    date,
    paper: 'ANSI D',
    file: after.name,
    underlays: (await underlays?.()) ?? [],
    ...(tell && { tell }),
    ...(drawn && { drawn }),
    revision: { number, since: before.name, before: before.site, changes },
  });
}
