import type { Alternative } from '../plan/compared/comparison.ts';
import { SHEET_FILES, type SheetSurroundings } from './every-sheet.ts';
import type { SheetEnding } from './sheet-names.ts';

/** What is handed over of the work beside the site and its records: its drawing set as built, its tables. */
const HANDED: readonly SheetEnding[] = ['.drawings.pdf', '.checklist.csv', '.open-items.csv', '.setting-out.csv'];

/** The site with its drawing set as that of the work as built. */
export const asBuiltSet = (planned: Alternative): Alternative => {
  const { sheets: _, ...drawings } = planned.site.drawings;
  return { ...planned, site: { ...planned.site, drawings: { ...drawings, purpose: 'as-built' } } };
};

/** The files that are handed over, by what stands after the name of the site. `doing` hears which of how many is written. */
export async function handoverFiles(
  planned: Alternative,
  around: SheetSurroundings,
  doing: (says: string, done: number, of: number) => void = () => {},
): Promise<ReadonlyMap<string, string | Uint8Array>> {
  const set = asBuiltSet(planned);
  const files = new Map<string, string | Uint8Array>();
  for (const [i, ending] of HANDED.entries()) {
    const { says, write } = SHEET_FILES.find((file) => file.ending === ending)!;
    doing(says, i, HANDED.length);
    const content = await write(set, {
      ...around,
      drawn: (page, pages) => doing(says, i + page / pages, HANDED.length),
    });
    if (content !== null) files.set(ending === '.drawings.pdf' ? '.as-built.pdf' : ending, content);
  }
  return files;
}
