import { useEffect, useState } from 'react';
import { isByHand } from '../../calc/prices/edit-list.ts';
import { hasCome, usePrices } from '../document/files/price-store.ts';
import type { KeptSite } from '../document/keeping/kept-list/kept-work.ts';
import type { Health } from '../document/keeping/site-keeping.ts';
import type { CardRecord } from '../document/keeping/store/storage-records.ts';
import { usePageActions } from '../page-state/page-actions.ts';
import { cardOf } from './card-of.ts';

interface KeptWorkNow {
  readonly sites: readonly KeptSite[];
  readonly bin: readonly KeptSite[];
  readonly health: Health | null;
  /** Why there is no list; undefined where there is one. */
  readonly failed?: string;
}

/** So long changes wait for one another before the list is read again, in milliseconds. */
const PACE_MS = 200;

/** The kept sites and those in the bin, as they are now; null until they are read. */
export function useKeptWork(): KeptWorkNow | null {
  const { keeping } = usePageActions();
  const [now, setNow] = useState<KeptWorkNow | null>(null);
  useEffect(() => {
    let gone = false;
    let timer: ReturnType<typeof setTimeout> | null = null;
    const read = async (): Promise<void> => {
      timer = null;
      const work = await keeping();
      try {
        const [sites, bin, health] = await Promise.all([work.list(), work.bin(), work.health()]);
        if (!gone) setNow({ sites, bin, health });
      } catch (error) {
        const failed = error instanceof Error ? error.message : String(error);
        if (!gone) setNow({ sites: [], bin: [], health: null, failed });
      }
    };
    void read();
    const hearing = keeping().then((work) =>
      work.onChange(() => {
        timer ??= setTimeout(() => void read(), PACE_MS);
      }),
    );
    return () => {
      gone = true;
      if (timer !== null) clearTimeout(timer);
      void hearing.then((unhear) => unhear());
    };
  }, [keeping]);
  return now;
}

/** The cards of sites, as they come: from the store where they are fresh, else worked out one after another and kept. */
export function useCards(sites: readonly KeptSite[]): ReadonlyMap<string, CardRecord> {
  const { keeping, siteOf } = usePageActions();
  const list = usePrices((state) => state.list);
  const [cards, setCards] = useState<ReadonlyMap<string, CardRecord>>(new Map());
  useEffect(() => {
    if (!hasCome(list)) return;
    let gone = false;
    const show = (card: CardRecord): void => setCards((before) => new Map(before).set(card.doc, card));
    const work = async (): Promise<void> => {
      const kept = await keeping();
      const missing: KeptSite[] = [];
      for (const site of sites) {
        const card = await kept.card(site.doc).catch(() => undefined);
        if (gone) return;
        if (card) show(card);
        if (card?.seq !== site.seq || card.prices !== list.name || isByHand(list)) missing.push(site);
      }
      for (const { doc, seq } of missing) {
        const file = await siteOf(doc).catch(() => undefined);
        if (gone || !file) continue;
        const card = await cardOf(doc, seq, file, list);
        if (gone) return;
        show(card);
        await kept.keepCard(card).catch(() => {});
      }
    };
    void work();
    return () => {
      gone = true;
    };
  }, [sites, list, keeping, siteOf]);
  return cards;
}
