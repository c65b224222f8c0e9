import { type Alternative, stallsServed } from '../../calc/comparison.ts';
import { revision } from '../../calc/revision.ts';
import { dayOf } from '../../calc/sheets/day.ts';
import { SHEET_FILES, type SheetFile, type SheetSurroundings } from '../../calc/sheets/every-sheet.ts';
import regular from '../../calc/sheets/fonts/overpass-regular.ttf?url';
import semibold from '../../calc/sheets/fonts/overpass-semibold.ttf?url';
import type { FontBytes } from '../../calc/sheets/pdf/lettering.ts';
import { ZIP_TIME } from '../../calc/sheets/zip-time.ts';
import { costOf } from '../../calc/takeoff/cost.ts';
import type { DocumentState } from '../document/document-state.ts';
import { download, fileNameOf } from '../document/files.ts';
import { priceStore } from '../document/price-store.ts';
import { drawingUnderlays } from './drawing-underlays.ts';

export { SHEET_FILES };

/** Headings under which the menu lists the sheets. */
export const GROUPS: Readonly<Record<SheetFile['group'], string>> = {
  tables: 'Tables',
  drawings: 'Drawings',
  models: 'Models and data',
};

/** Writes one sheet of the open plan to a file, or says why there is none. */
export async function saveSheet(state: DocumentState, sheet: SheetFile): Promise<void> {
  const content = await written(state, sheet);
  if (content === null) state.notify(`${sheet.says}: the site does not say where on the ground it lies (georef).`);
  else if (content !== undefined) download(named(state, sheet.ending), sheet.type, content);
}

/** Writes every sheet of the open plan into one ZIP file. */
export async function saveEverySheet(state: DocumentState): Promise<void> {
  const files: Record<string, Uint8Array> = {};
  for (const sheet of SHEET_FILES) {
    const content = await written(state, sheet);
    if (content === undefined) return;
    if (content !== null)
      files[named(state, sheet.ending)] = typeof content === 'string' ? new TextEncoder().encode(content) : content;
  }
  const { zipSync } = await import('fflate');
  download(named(state, '.sheets.zip'), 'application/zip', new Uint8Array(zipSync(files, { mtime: ZIP_TIME })));
}

/** Writes the open plan's drawing set as a revision of another version, what changed in clouds. */
export async function saveRevisedSet(state: DocumentState, before: Alternative): Promise<void> {
  const { notify } = state;
  try {
    const after = asWritten(state);
    const { revisedSet } = await import('../../calc/sheets/revised-set.ts');
    const content = await revisedSet(before, after, revision(before, after), aroundOf(state));
    download(named(state, '.changes.pdf'), 'application/pdf', new Uint8Array(content));
  } catch (error) {
    notify(`The revised drawing set could not be written: ${error instanceof Error ? error.message : String(error)}`);
  }
}

/** The open site, planned, under the name of its file, at the prices in use. */
const asWritten = ({ name, site, plan }: DocumentState): Alternative => ({
  name: fileNameOf(name),
  site,
  plan,
  cost: costOf(plan.takeoff, priceStore.getState().list, stallsServed(site)),
});

const aroundOf = ({ site, notify }: DocumentState): SheetSurroundings => ({
  fonts: servedFonts,
  date: dayOf(new Date()),
  underlays: () => drawingUnderlays(site),
  tell: notify,
});

/** The typeface of the drawing set, fetched from beside the page when a set is asked for. */
const servedFonts = async (): Promise<FontBytes> => {
  const [plain, bold] = await Promise.all(
    [regular, semibold].map(async (url) => new Uint8Array(await (await fetch(url)).arrayBuffer())),
  );
  return { regular: plain as Uint8Array, bold: bold as Uint8Array };
};

/** Undefined where the writer failed; the page then says so and the open site is as it was. */
async function written(
  state: DocumentState,
  sheet: SheetFile,
): Promise<string | Uint8Array<ArrayBuffer> | null | undefined> {
  try {
    const content = await sheet.write(asWritten(state), aroundOf(state));
    return content instanceof Uint8Array ? new Uint8Array(content) : content;
  } catch (error) {
    state.notify(`${sheet.says} could not be written: ${error instanceof Error ? error.message : String(error)}`);
    return undefined;
  }
}

const named = ({ name }: DocumentState, ending: string): string => fileNameOf(name).replace(/\.site\.json$/, ending);
