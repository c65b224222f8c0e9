import type { SiteFile } from '../../../../routing/site/site.ts';
import type { Edit } from '../../../../web/document/change/edit.ts';
import { listOf } from '../../../../web/document/change/element-lists.ts';
import { changeElements, type Patch } from '../../../../web/document/edits/change.ts';

/** Changes fields of the one element of an id, of whatever list. Lengths in the patch are site feet. */
export function changeElement(file: SiteFile, id: string, patch: Patch): Edit {
  const list = listOf(file, id);
  return changeElements(file, list ? [{ list, id }] : [], patch);
}
