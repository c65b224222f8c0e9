import type { FaceName } from '../../calc/sheets/pdf/kit/scripts/faces.ts';
import type { DocumentStore } from '../document/store.ts';
import { dropOldFaces, keepFaces } from '../kept-page/face-files.ts';

/** An edit is left alone for so long before its names are looked at, ms. */
const RESTS_MS = 1500;

/** Nearly all texts are in letters and signs for which no typeface is fetched: the tables of signs are not asked for those. */
const OTHER_LETTERS = /[\u0530-\u1cff\u2300-\uffff]/;

/**
 * Has the typefaces kept that the open site's names need, once it is opened and as names come, so that its sheets can be
 * written without a network later. What does not come is asked for again when there is a network. Returns how to stop.
 */
export function keepNeededFaces(document: DocumentStore): () => void {
  const looked = new WeakSet<object>();
  let resting: ReturnType<typeof setTimeout> | undefined;
  let absent: readonly FaceName[] = [];
  const look = async (): Promise<void> => {
    const { file, name } = document.getState();
    const texts = [name, ...notLooked(file, looked)].filter((text) => OTHER_LETTERS.test(text));
    const needed = texts.length === 0 ? [] : (await import('./needed-faces.ts')).laterFaces(texts);
    absent = await keepFaces([...new Set([...absent, ...needed])]);
  };
  const soon = (): void => {
    clearTimeout(resting);
    resting = setTimeout(() => void look(), RESTS_MS);
  };
  const again = (): void => void look();
  void dropOldFaces();
  void look();
  window.addEventListener('online', again);
  const stop = document.subscribe((state, before) => {
    if (state.file !== before.file || state.name !== before.name) soon();
  });
  return () => {
    stop();
    clearTimeout(resting);
    window.removeEventListener('online', again);
  };
}

/** Texts of a file that were not looked at before: an edit shares the others. */
function notLooked(data: object, looked: WeakSet<object>): readonly string[] {
  const found: string[] = [];
  const walk = (value: unknown): void => {
    if (typeof value === 'string') found.push(value);
    if (typeof value !== 'object' || value === null || looked.has(value)) return;
    looked.add(value);
    for (const one of Object.values(value)) walk(one);
  };
  walk(data);
  return found;
}
