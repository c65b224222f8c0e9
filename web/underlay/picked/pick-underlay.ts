import { fileOpen } from 'browser-fs-access';
import type { Scene } from '../../board/scene/scene.ts';
import type { ViewStore } from '../../board/view-store.ts';
import { openFileOf } from '../../document/dropped-files.ts';
import type { DocumentStore } from '../../document/store.ts';
import { later } from '../../page-state/when-asked.tsx';
import { failureWords } from '../../words/failure-words.ts';
import type { UnderlayStore } from '../underlay-store.ts';
import { HEAD_BYTES, looksLikeGround, UNDERLAY_EXTENSIONS } from './file-kind.ts';
import type { PickedFor } from './pick-context.ts';

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

/** Both a site and a drawing of the ground may be JSON: what is in it tells. */
const MAY_BE_SITE = /\.json$/i;

/** Takes a file that was dropped on the page for an underlay, unless it may be a site: that goes to who opens sites. */
export async function takeDropped(world: UnderlayWorld, file: File): Promise<void> {
  try {
    if (MAY_BE_SITE.test(file.name)) {
      if (!looksLikeGround(new Uint8Array(await file.slice(0, HEAD_BYTES).arrayBuffer()))) {
        await openFileOf(world.document, file);
        return;
      }
    }
    await (await taking()).takeUnderlay(world, file);
  } catch (error) {
    notRead(world, error);
  }
}

const notRead = ({ document }: UnderlayWorld, error: unknown): void =>
  document.getState().notify(`The file was not read: ${failureWords(error)}`);
