import { alternativeOf } from '../../calc/plan/compared/alternative.ts';
import type { Alternative } from '../../calc/plan/compared/comparison.ts';
import { revision } from '../../calc/plan/compared/revision.ts';
import { SHEET_FILES, type SheetSurroundings } from '../../calc/sheets/every-sheet.ts';
import { handoverFiles } from '../../calc/sheets/handover.ts';
import type { FontBytes } from '../../calc/sheets/pdf/kit/lettering/lettering.ts';
import { REVISION_FILES } from '../../calc/sheets/revised-set.ts';
import { sheetFileName } from './sheet-file-name.ts';
import type { SheetContent, SheetNews, SheetRequest } from './sheet-request.ts';
import { zipOf } from './zip.ts';

type Tell = (news: SheetNews) => void;

/** Plans the site of a request and writes what is wanted of it, telling how far it is. */
export async function writeRequest(
  request: SheetRequest,
  fonts: () => Promise<FontBytes>,
  tell: Tell,
): Promise<SheetContent | null> {
  const { name, site, wanted, prices, date, underlays, page } = request;
  const doing = (says: string, done: number, of: number): void => tell({ kind: 'doing', says, done, of });
  doing('working out the plan', 0, 1);
  const planned = alternativeOf(name, site, prices);
  const remarks = new Set<string>();
  const around: SheetSurroundings = {
    fonts,
    date,
    page,
    underlays: async () => underlays,
    tell: (says) => {
      // Each drawing set of a ZIP says the same.
      if (!remarks.has(says)) tell({ kind: 'remark', says });
      remarks.add(says);
    },
  };
  const pages = (done: number, of: number): void => doing(`sheet ${done} of ${of}`, done, of);
  if (wanted.kind === 'sheet') {
    const sheet = SHEET_FILES.find(({ ending }) => ending === wanted.ending)!;
    return owned(await sheet.write(planned, { ...around, drawn: pages }));
  }
  if (wanted.kind === 'revision') {
    const before = alternativeOf(wanted.before.name, wanted.before.site, prices);
    const versions = { before, after: planned, changes: revision(before, planned) };
    const file = REVISION_FILES.find(({ ending }) => ending === wanted.ending)!;
    return owned(await file.write(versions, { ...around, drawn: pages }));
  }
  if (wanted.kind === 'handover') {
    const { photos, beside } = wanted;
    const files = await handoverFiles(planned, { ...around, photos: async (hash) => photos.get(hash) ?? null }, doing);
    return zipOf(
      Object.fromEntries(
        [...Object.entries(beside), ...files].map(([ending, content]) => [sheetFileName(name, ending), content]),
      ),
    );
  }
  return zipOf(await everySheet(planned, around, doing));
}

async function everySheet(
  planned: Alternative,
  around: SheetSurroundings,
  doing: (says: string, done: number, of: number) => void,
): Promise<Readonly<Record<string, string | Uint8Array>>> {
  const files: Record<string, string | Uint8Array> = {};
  const of = SHEET_FILES.length;
  for (const [i, { says, ending, write }] of SHEET_FILES.entries()) {
    doing(`${i + 1} of ${of}, ${says}`, i, of);
    const content = await write(planned, {
      ...around,
      drawn: (page, pages) => doing(`${i + 1} of ${of}, ${says}`, i + page / pages, of),
    });
    if (content !== null) files[sheetFileName(planned.name, ending)] = content;
  }
  return files;
}

const owned = (content: string | Uint8Array | null): SheetContent | null =>
  content instanceof Uint8Array ? new Uint8Array(content) : content;
