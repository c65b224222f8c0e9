import { fileOpen } from 'browser-fs-access';
import type { Scene } from '../board/scene/scene.ts';
import type { ViewStore } from '../board/view-store.ts';
import type { DocumentStore } from '../document/store.ts';
import { later } from '../page-state/when-asked.tsx';
import { failureWords } from '../words/failure-words.ts';
import { UNDERLAY_EXTENSIONS } from './file-kind.ts';
import type { PickedFor } from './pick-context.ts';
import type { UnderlayStore } from './underlay-store.ts';

/** What the taking of an underlay touches. */
export interface UnderlayWorld {
  readonly document: DocumentStore;
  readonly underlays: UnderlayStore;
  readonly view: ViewStore;
  readonly scene: () => Scene;
}

const taking = later(() => import('./take-underlay.ts'));

/** Lets a person pick a file and lays it under the drawing. */
export async function pickUnderlay(world: UnderlayWorld, how: PickedFor): Promise<void> {
  try {
    const file = await fileOpen({ extensions: [...UNDERLAY_EXTENSIONS], description: 'Site plan or picture' });
    await (await taking()).takeUnderlay(world, file, how);
  } catch (error) {
    if (!(error instanceof DOMException && error.name === 'AbortError')) notRead(world, error);
  }
}

const DROPPED = /\.(png|jpe?g|pdf|dxf|svg|geojson)$/i;

/** Takes such files as are dropped on the page for an underlay; others are left to whoever opens sites. */
export function takeDroppedUnderlays(page: Document, world: UnderlayWorld): () => void {
  const take = async (file: File): Promise<void> => {
    try {
      await (await taking()).takeUnderlay(world, file);
    } catch (error) {
      notRead(world, error);
    }
  };
  const dropped = (event: DragEvent): void => {
    const file = event.dataTransfer?.files[0];
    if (!file || !DROPPED.test(file.name)) return;
    event.preventDefault();
    void take(file);
  };
  page.addEventListener('drop', dropped, { capture: true });
  return () => page.removeEventListener('drop', dropped, { capture: true });
}

const notRead = ({ document }: UnderlayWorld, error: unknown): void =>
  document.getState().notify(`The file was not read: ${failureWords(error)}`);
