import { dayOf } from '../../calc/sheets/days/day.ts';
import type { RevisionName } from '../../calc/sheets/revision-names.ts';
import type { SHEET_NAMES } from '../../calc/sheets/sheet-names.ts';
import type { DocumentState } from '../document/document-state.ts';
import { download, fileNameOf } from '../document/files/files.ts';
import type { NamedSite } from '../document/files/named-site.ts';
import { pricesInUse } from '../document/files/price-store.ts';
import { beginWork, type TellWork } from '../long-work/work-store.ts';
import { drawingUnderlays } from './drawing-underlays.ts';
import { sheetFileName } from './sheet-file-name.ts';
import type { SheetContent, SheetNews, SheetRequest, Wanted } from './sheet-request.ts';

/** Writes one sheet of the open plan to a file. */
export function saveSheet(state: DocumentState, { ending, says, type, group }: (typeof SHEET_NAMES)[number]): void {
  ask(state, { kind: 'sheet', ending }, { says, ending, type, drawn: group === 'drawings' });
}

/** Writes every sheet of the open plan into one ZIP file. */
export const saveEverySheet = (state: DocumentState): void =>
  ask(state, { kind: 'every' }, { says: 'Every sheet', ending: '.sheets.zip', type: 'application/zip', drawn: true });

/** Writes a file of the open plan as a revision of another version, what changed in clouds. */
export const saveRevised = (
  state: DocumentState,
  before: NamedSite,
  { ending, says, type, isDrawn }: RevisionName,
): void => {
  const titled = `${says[0]!.toUpperCase()}${says.slice(1)}`;
  ask(state, { kind: 'revision', before, ending }, { says: titled, ending, type, drawn: isDrawn });
};

/** Writes what is handed over of the work as one ZIP: the set as built with its photos, tables, and what goes beside. */
export const saveHandover = (state: DocumentState, wanted: Extract<Wanted, { readonly kind: 'handover' }>): void =>
  ask(state, wanted, { says: 'Handover', ending: '.handover.zip', type: 'application/zip', drawn: true });

interface Product {
  readonly says: string;
  readonly ending: string;
  readonly type: string;
  /** Whether what lies under the drawing is in it. */
  readonly drawn: boolean;
}

/** Has the open plan, as it is now, written by a worker of its own; what comes of it is said at the foot of the page. */
function ask(
  { name, site, notify, warn }: DocumentState,
  wanted: Wanted,
  { says, ending, type, drawn }: Product,
): void {
  const file = fileNameOf(name);
  const title = `${says} of ${name}`;
  const told = new Set<string>();
  const tellOnce = (words: string): void => {
    if (!told.has(words)) notify(words);
    told.add(words);
  };
  const begun = beginWork(title, async (signal, tell) => {
    if (/pdf|zip/.test(type)) {
      // All of it together, until it is closed: notices take one another's place.
      const unprinted = await unprintedIn(site, file);
      if (unprinted.length > 0) warn({ says: unprinted.join('\n') });
      for (const words of unprinted) told.add(words);
    }
    tell('reading what lies under the drawing', 0, 1);
    const underlays = drawn ? await drawingUnderlays(site) : [];
    const content = await written(
      {
        name: file,
        site,
        wanted,
        underlays,
        prices: await pricesInUse(),
        date: dayOf(new Date()),
        page: location.href.replace(/[?#].*$/, ''),
      },
      signal,
      tell,
      tellOnce,
    );
    if (content === null) throw new Error(nothingToWrite(ending));
    download(sheetFileName(file, ending), type, content);
    return `It went to your downloads as ${sheetFileName(file, ending)}`;
  });
  if (!begun) notify(`${title} is being written already, or too much is.`);
}

/** What of a site's names cannot be printed as it is, place by place: said before anything is written. */
async function unprintedIn(site: DocumentState['site'], file: string): Promise<readonly string[]> {
  const [{ unprintedWords }, { isDrawn, isDrawnBy }, { laterFaces }, { keepFaces }] = await Promise.all([
    import('../../calc/sheets/pdf/kit/lettering/unprinted.ts'),
    import('../../calc/sheets/pdf/kit/scripts/signs.ts'),
    import('./needed-faces.ts'),
    import('../kept-page/face-files.ts'),
  ]);
  const absent = new Set(await keepFaces(laterFaces([site, file])));
  return unprintedWords({ ...site, file }, isDrawnBy(absent), isDrawn);
}

/** Why a site has nothing for a sheet. */
const nothingToWrite = (ending: string): string =>
  ending.startsWith('.day-')
    ? 'the site has no day of charging that can be worked'
    : 'the site does not say where on the ground it lies (georef)';

/** What a worker makes of a request; it ends where the signal says so. */
function written(
  request: SheetRequest,
  signal: AbortSignal,
  tell: TellWork,
  notify: (says: string) => void,
): Promise<SheetContent | null> {
  if (signal.aborted) return new Promise(() => undefined);
  const worker = new Worker(new URL('./sheet-worker.ts', import.meta.url), { type: 'module' });
  const stop = (): void => worker.terminate();
  signal.addEventListener('abort', stop);
  return new Promise<SheetContent | null>((resolve, reject) => {
    worker.onmessage = ({ data }: MessageEvent<SheetNews>) => {
      if (data.kind === 'doing') tell(data.says, data.done, data.of);
      else if (data.kind === 'remark') notify(data.says);
      else if (data.kind === 'done') resolve(data.content);
      else reject(new Error(data.says));
    };
    // Without words it is the worker's own file that did not come.
    worker.onerror = ({ message }) => reject(new Error(message || 'module script failed'));
    worker.postMessage(request);
  }).finally(stop);
}
