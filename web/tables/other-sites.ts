import { useEffect, useState } from 'react';
import { writeSite } from '../../routing/site/file/write.ts';
import type { SiteFile } from '../../routing/site/site.ts';
import type { KeptSite } from '../document/keeping/kept-list/kept-work.ts';
import { usePageActions } from '../page-state/page-actions.ts';

/** So long a change waits for the next before sites are read again, in milliseconds. */
const PACE_MS = 250;

interface OtherSites {
  /** The kept sites without the open one, the newest first. */
  readonly sites: readonly KeptSite[];
  /** Those chosen, as they are now. */
  readonly files: ReadonlyMap<string, SiteFile>;
}

/**
 * The sites that stand beside the open one. They are told by their keys, never by name, and read again whenever one of
 * them is written, in this tab or in another.
 */
export function useOtherSites(chosen: readonly string[]): OtherSites {
  const { keeping, kept, siteOf } = usePageActions();
  const [others, setOthers] = useState<OtherSites>({ sites: [], files: new Map() });

  useEffect(() => {
    let gone = false;
    let open: string | undefined;
    let timer: ReturnType<typeof setTimeout> | null = null;
    const read = async (): Promise<void> => {
      timer = null;
      const all = await kept();
      const found = await Promise.all(chosen.map(async (doc) => [doc, await siteOf(doc)] as const));
      if (gone) return;
      open = all.find((site) => site.open)?.doc;
      setOthers(({ files }) => ({ sites: all.filter((site) => !site.open), files: filesOf(found, files) }));
    };
    const ask = (doc: string | null): void => {
      if (gone || (doc !== null && doc === open)) return;
      timer ??= setTimeout(() => void read().catch(() => {}), PACE_MS);
    };
    void read().catch(() => {});
    const hearing = keeping().then((sites) => sites.onChange(ask));
    return () => {
      gone = true;
      if (timer !== null) clearTimeout(timer);
      void hearing.then((unhear) => unhear());
    };
  }, [keeping, kept, siteOf, chosen]);

  return others;
}

/** The files as read now; one that reads as before stays the same object, so that its plan is not worked out anew. */
function filesOf(
  read: readonly (readonly [doc: string, file: SiteFile | undefined])[],
  before: ReadonlyMap<string, SiteFile>,
): ReadonlyMap<string, SiteFile> {
  const files = new Map<string, SiteFile>();
  for (const [doc, file] of read) {
    if (!file) continue;
    const was = before.get(doc);
    files.set(doc, was && writeSite(was) === writeSite(file) ? was : file);
  }
  return files;
}
