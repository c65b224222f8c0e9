import { brokenIn } from '../../calc/propose/anew/broken.ts';
import type { SiteFile } from '../../routing/site/site.ts';
import { toSite } from '../../routing/site/to-site.ts';
import { counted } from '../../routing/words/counted.ts';
import { applyEdit, type Edit, invertEdit } from '../document/change/edit.ts';
import { editBetween } from '../document/edits/edit-between.ts';
import { priceStore, pricesCome } from '../document/files/price-store.ts';
import { pagePlan } from '../document/planning.ts';
import type { DocumentStore } from '../document/store.ts';
import { priceMore, priceWords } from '../words/dollars.ts';
import { askPart } from './ask-part.ts';
import type { PartNews } from './part-request.ts';

/** A change is left alone for so long before what it broke is looked at, ms. */
const RESTS_MS = 500;
/** More chargers than these are no slip of the hand. */
const MOST_BROKEN = 30;
/** A search for a mend ends with the best that it has after so long. */
const MOST_SECONDS = 60;

/** What the mend is called among the things that can be undone. */
const MEND = 'Mend what the move broke';

/**
 * Offers a mend where a change by hand broke ways or cords of chargers: what broke, the price of leaving it, the price of
 * the mend and one button. Worked out beside the page once the hand rests; the offer goes with the next change. Returns how to stop.
 */
export function offerMends(document: DocumentStore): () => void {
  let offered: string | null = null;
  /** What stood before the moves that have not been looked at, or whose offer nobody has answered. */
  let before: SiteFile | null = null;
  let resting: ReturnType<typeof setTimeout> | undefined;
  let stop: () => void = () => {};
  const withdraw = (): void => {
    clearTimeout(resting);
    stop();
    stop = () => {};
    if (offered !== null && document.getState().alerts.every(({ says }) => says !== offered)) before = null;
    if (offered !== null) document.getState().unwarn(offered);
    offered = null;
  };
  const offer = (file: SiteFile, made: Extract<PartNews, { kind: 'mended' }>): void => {
    if (document.getState().committed().file !== file) return;
    offered = offerWords(made);
    const act = (): void => void document.getState().apply(editBetween(file, made.file, MEND));
    document.getState().warn({ says: offered, acts: [{ name: 'Mend it', act }] });
  };
  const look = async (file: SiteFile, older: SiteFile): Promise<void> => {
    const [now, was] = [toSite(file), toSite(older)];
    const { chargers } = brokenIn({ site: now, plan: pagePlan(now) }, { site: was, plan: pagePlan(was) });
    if (chargers.length === 0) before = null;
    if (chargers.length === 0 || chargers.length > MOST_BROKEN) return;
    await pricesCome();
    if (document.getState().committed().file !== file) return;
    const request = {
      kind: 'mend',
      file,
      before: older,
      prices: priceStore.getState().list,
      seconds: MOST_SECONDS,
    } as const;
    stop = askPart(request, (made) => made.kind === 'mended' && offer(file, made));
  };
  const silent = document.listen((event) => {
    if (event.what === 'saved') return;
    withdraw();
    if (event.what !== 'do' || event.edit.name === MEND || !isMove(event.edit)) {
      before = null;
      return;
    }
    const { edit, history } = event;
    const older = before ?? applyEdit(history.file, invertEdit(edit));
    before = older;
    resting = setTimeout(() => void look(history.file, older).catch(() => undefined), RESTS_MS);
  });
  const deaf = document.subscribe((state, last) => {
    if (state.opened === last.opened && state.station === last.station) return;
    withdraw();
    before = null;
  });
  return () => {
    withdraw();
    silent();
    deaf();
  };
}

/** Something was moved or given other figures, and nothing came or went. */
const isMove = ({ steps }: Edit): boolean => steps.length > 0 && steps.every(({ kind }) => kind === 'change');

function offerWords({ broke, left, mended, says }: Extract<PartNews, { kind: 'mended' }>): string {
  const { list } = priceStore.getState();
  const more = priceMore(mended.price, left.price, list);
  const off = more === 0 ? 'the same' : `${priceWords(Math.abs(more), list)} ${more > 0 ? 'more' : 'less'}`;
  const fails = (count: number): string =>
    count === 0 ? 'nothing fails' : counted(count, 'finding fails', 'findings fail');
  return [
    `That broke: ${broke.join(' ')}`,
    `Left as drawn: ${priceWords(left.price, list)}, ${fails(left.fails)}.`,
    `Mended: ${priceWords(mended.price, list)}, ${off}; ${fails(mended.fails)}. ${says}`,
  ].join('\n');
}
