import { type KeyboardEvent, useEffect, useMemo, useRef, useState } from 'react';
import { type Ref, sameRef } from '../../document/change/element-lists.ts';
import { feedChargers } from '../../document/edits/charging/issue.ts';
import { useDocument, useDocumentStore } from '../../document/use-document.tsx';
import { usePageActions } from '../../page-state/page-actions.ts';
import { usePhone } from '../../parts/phone.ts';
import { Scroller } from '../../parts/scroller.tsx';
import { useTableFacts } from '../table-facts.ts';
import { type MovingHand, useMoving } from '../use-moving.ts';
import { Item, ItemLines, type ItemWorld, stopKey } from './item.tsx';
import { inView, isNear, type OneLineLayout, type PlacedItem, placesOfItems, type Window } from './layout.ts';
import { type OneLineItem, oneLineItems } from './model.ts';
import { MoveBar } from './move-bar.tsx';
import { isArrow, type Middle, nearest } from './nearest.ts';
import { type Target, targetOf, targetWords } from './target.ts';
import '../moving.css';
import './one-line.css';

const CHIP_ROW = 30;
/** Under a finger, as in the style sheet. */
const FINGER_CHIP_ROW = 48;
const UNSEEN: Window = { left: 0, top: 0, width: 1200, height: 600 };

/**
 * The supply as a one-line, drawn from the site and live: what is chosen there is chosen on the board, chargers are
 * dragged (or picked up with Space) to another board or other lines. Only what is in view is drawn.
 */
export function OneLine() {
  const { site, plan } = useTableFacts();
  const document = useDocumentStore();
  const { reveal } = usePageActions();
  const selection = useDocument((state) => state.selection);
  const frame = useRef<HTMLElement>(null);
  const [seen, setSeen] = useState<Window>(UNSEEN);
  const [opened, setOpened] = useState<ReadonlySet<string>>(new Set());
  const [active, setActive] = useState<string | null>(null);
  const put = (ids: readonly string[], { panel, lines }: Target): void => {
    const { file, apply } = document.getState();
    apply(feedChargers(file, ids, panel, lines));
  };
  const hand = useMoving(frame, { targetOf, words: targetWords, put });
  const row = usePhone() ? FINGER_CHIP_ROW : CHIP_ROW;
  const items = useMemo(() => oneLineItems(site, plan), [site, plan]);
  const layout = useMemo(() => placesOfItems(items, { row, opened }), [items, row, opened]);

  useEffect(() => {
    const element = frame.current;
    if (!element) return;
    const look = (): void => setSeen(windowOf(element));
    const sized = new ResizeObserver(look);
    sized.observe(element);
    return () => sized.disconnect();
  }, []);

  // What is newly chosen elsewhere is brought into view; at first what feeds all the rest.
  const latest = useRef(layout);
  latest.current = layout;
  useEffect(() => {
    const element = frame.current;
    const placed = placedOf(latest.current, selection[0], document.getState().site) ?? latest.current.placed[0];
    if (element && placed && !element.contains(window.document.activeElement)) bringIn(element, placed);
  }, [selection, document]);

  if (items.length === 0)
    return <p className="empty quiet">No equipment is drawn yet: the one-line begins with a source or a panel.</p>;

  const world: ItemWorld = {
    isChosen: (ref) => selection.some((one) => sameRef(one, ref)),
    choose: (ref, adds) => {
      if (adds) document.getState().select([ref], 'toggle');
      else reveal([ref]);
    },
    active: active ?? stopKey({ list: 'equipment', id: items[0]!.id }),
    hand,
    opened,
    toggle: (group) => setOpened((was) => toggled(was, group)),
    takenWith: (charger) => takenWith(charger, selection, site.chargers),
  };
  const held = hand.moving;
  const near = inView(layout, seen);
  return (
    <>
      <MoveBar items={items} put={put} />
      <Scroller
        className="ol-frame"
        ref={frame}
        aria-label="One-line"
        data-moving={held !== null}
        onScroll={(event) => setSeen(windowOf(event.currentTarget))}
        onFocus={({ target }) => setActive(target.dataset.stop || active)}
        onKeyDown={(event) => onKey(event, hand, world)}
      >
        <div className="ol-whole" style={{ width: layout.width, height: layout.height }}>
          {near.map((placed) => (
            <ItemLines
              key={placed.item.id}
              placed={placed}
              from={seen.left - seen.width}
              to={seen.left + 2 * seen.width}
            />
          ))}
          {near
            .filter((placed) => isNear(placed, seen))
            .map((placed) => (
              <Item key={placed.item.id} placed={placed} world={world} />
            ))}
        </div>
      </Scroller>
      {held?.hand && (
        <p className="move-held" style={{ left: held.hand[0] + 14, top: held.hand[1] + 10 }} aria-hidden="true">
          {held.ids.length === 1 ? held.ids[0] : `${held.ids.length} chargers`}
          {held.over ? ` to ${targetWords(held.over)}` : ''}
        </p>
      )}
    </>
  );
}

const windowOf = ({ scrollLeft, scrollTop, clientWidth, clientHeight }: HTMLElement): Window => ({
  left: scrollLeft,
  top: scrollTop,
  width: clientWidth,
  height: clientHeight,
});

function toggled(was: ReadonlySet<string>, key: string): ReadonlySet<string> {
  const next = new Set(was);
  if (!next.delete(key)) next.add(key);
  return next;
}

/** The chargers of all chosen drops where the one taken is among them; else it alone. */
function takenWith(
  charger: string,
  selection: readonly Ref[],
  chargers: readonly { readonly id: string; readonly drop: string }[],
): readonly string[] {
  const chosen = new Set(selection.flatMap(({ list, id }) => (list === 'drops' || list === 'chargers' ? [id] : [])));
  const mine = chargers.filter(({ id, drop }) => chosen.has(drop) || chosen.has(id)).map(({ id }) => id);
  return mine.includes(charger) ? mine : [charger];
}

interface Drawn {
  readonly chargers: readonly { readonly id: string; readonly drop: string; readonly from: string }[];
  readonly loads: readonly { readonly id: string; readonly from: string }[];
}

/** The item on which something chosen stands. */
function placedOf({ placed }: OneLineLayout, ref: Ref | undefined, site: Drawn): PlacedItem | undefined {
  if (ref === undefined) return undefined;
  const from =
    ref.list === 'drops' || ref.list === 'chargers'
      ? site.chargers.find(({ id, drop }) => drop === ref.id || id === ref.id)?.from
      : ref.list === 'loads'
        ? site.loads.find(({ id }) => id === ref.id)?.from
        : ref.id;
  return placed.find(({ item }: { readonly item: OneLineItem }) => item.id === from || item.feeder?.id === ref.id);
}

function bringIn(frame: HTMLElement, { x, y, symbolY }: PlacedItem): void {
  const { scrollLeft, scrollTop, clientWidth, clientHeight } = frame;
  const across = x >= scrollLeft && x + 200 <= scrollLeft + clientWidth;
  const down = y >= scrollTop - 1 && symbolY + 60 <= scrollTop + clientHeight;
  if (across && down) return;
  frame.scrollTo(across ? scrollLeft : x - clientWidth / 2 + 120, down ? scrollTop : Math.max(0, y - 8));
}

/** Arrows go from thing to thing; Space picks a charger up, then arrows choose where and Enter puts it down. */
function onKey(event: KeyboardEvent<HTMLElement>, hand: MovingHand<Target>, world: ItemWorld): void {
  const { key, currentTarget: frame, target } = event;
  const { moving } = hand;
  const taken = (): void => {
    event.preventDefault();
    event.stopPropagation();
  };
  if (moving && moving.hand === null) {
    if (key === 'Enter' || key === ' ') {
      taken();
      hand.putHeld();
    } else if (isArrow(key)) {
      taken();
      const targets = [...frame.querySelectorAll<HTMLElement>('[data-target]')];
      const over = moving.over ? targetKey(moving.over) : '';
      const from = targets.find((one) => one.dataset.target === over) ?? (target as HTMLElement);
      const next = targets[nearest(middle(from), targets.map(middle), key)];
      if (!next) return;
      next.scrollIntoView({ block: 'nearest', inline: 'nearest' });
      hand.aim(targetOf(next)!);
    }
    return;
  }
  const { charger } = (target as HTMLElement).dataset;
  if (key === ' ' && charger !== undefined) {
    taken();
    hand.pickUp(world.takenWith(charger), targetOf(target as HTMLElement)!);
  } else if (isArrow(key)) {
    const stops = [...frame.querySelectorAll<HTMLElement>('[data-stop]')];
    const next =
      target === frame
        ? (stops.find((one) => one.ariaPressed === 'true') ?? stops[0])
        : stops[nearest(middle(target as HTMLElement), stops.map(middle), key)];
    taken();
    next?.focus();
  }
}

const targetKey = ({ panel, lines }: Target): string => (lines === undefined ? panel : `${panel} ${lines}`);

function middle(element: HTMLElement): Middle {
  const { left, right, top, bottom } = element.getBoundingClientRect();
  return { x: (left + right) / 2, y: (top + bottom) / 2 };
}
