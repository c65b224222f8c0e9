import type { Mount } from '../../../../routing/site/schema/vocabulary.ts';
import { mountDrops } from '../../../document/edits/charging/mount-drops.ts';
import { useDocumentStore } from '../../../document/use-document.tsx';
import { mountedWords } from '../../../words/mounted.ts';
import { waylessAt } from './wayless.ts';

/** Mounts drops otherwise as one edit, and says what it did. */
export function useMount(): (ids: readonly string[], mount: Mount) => void {
  const document = useDocumentStore();
  return (ids, mount) => {
    const { file, site, apply } = document.getState();
    const mounted = mountDrops(file, site, ids, mount);
    if (!apply(mounted.edit)) return;
    const { plan, notify, site: now } = document.getState();
    notify(mountedWords(mounted, mount, waylessAt(plan, now, new Set(ids)).length, now.units));
  };
}
