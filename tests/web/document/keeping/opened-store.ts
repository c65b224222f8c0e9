import '../../../../web/document/counted-plan.ts';
import type { SiteFile } from '../../../../routing/site/site.ts';
import type { Ref } from '../../../../web/document/change/element-lists.ts';
import { moveElements } from '../../../../web/document/edits/moving/move.ts';
import type { FileDoor } from '../../../../web/document/files/files.ts';
import { createDocumentStore, type DocumentStore } from '../../../../web/document/store.ts';
import { SMALL } from '../small-site.ts';

export const D1: Ref = { list: 'drops', id: 'D1' };

/** A document store with a site open, by default the small one. */
export async function opened(file: SiteFile = SMALL, files?: FileDoor): Promise<DocumentStore> {
  const store = createDocumentStore(files ? { files } : {});
  await store.getState().openFile(file);
  return store;
}

/** The edit that moves the first drop. */
export const moved = (file: SiteFile, dx: number) => moveElements(file, [D1], dx, 0);
