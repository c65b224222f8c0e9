import { type PointerEvent as HandEvent, useEffect, useRef, useState } from 'react';
import { usePageStore } from '../page-state/page-store.ts';

/** Circuits that are held, by the hand or by the keys, and where they would be put. */
export interface Moving<Target> {
  readonly ids: readonly string[];
  readonly over: Target | null;
  /** Where the hand is on the screen; null while the keys hold them. */
  readonly hand: readonly [number, number] | null;
}

const STARTS_PX = 5;
const EDGE_PX = 36;
const SCROLL_PX = 14;

/** Places where circuits can be put. */
export interface Places<Target> {
  /** The place that something on the screen stands for. */
  readonly targetOf: (element: Element | null) => Target | null;
  readonly words: (over: Target) => string;
  readonly put: (ids: readonly string[], over: Target) => void;
}

/** What the hand or the keys do with circuits. */
export interface MovingHand<Target> {
  readonly moving: Moving<Target> | null;
  /** A press on a circuit, that may become a drag; `ids` is what goes along. */
  readonly press: (event: HandEvent<HTMLElement>, ids: readonly string[]) => void;
  readonly pickUp: (ids: readonly string[], from: Target) => void;
  readonly aim: (over: Target) => void;
  readonly putHeld: () => void;
  readonly letGo: () => void;
  /** True for the click that ends a drag. */
  readonly hasDragged: () => boolean;
}

/** Holds circuits and puts them elsewhere, as one edit. */
export function useMoving<Target>(
  frame: React.RefObject<HTMLElement | null>,
  places: Places<Target>,
): MovingHand<Target> {
  const page = usePageStore();
  const [moving, setMoving] = useState<Moving<Target> | null>(null);
  const pressed = useRef<{ readonly ids: readonly string[]; readonly x: number; readonly y: number } | null>(null);
  const held = useRef<Moving<Target> | null>(null);
  const dragged = useRef(false);
  const say = (spoken: string): void => page.setState({ spoken });
  const hold = (next: Moving<Target> | null): void => {
    held.current = next;
    setMoving(next);
  };
  const putHeld = (): void => {
    const now = held.current;
    hold(null);
    if (now?.over) places.put(now.ids, now.over);
  };
  const letGo = (): void => {
    if (held.current) say('Let go, nothing is changed.');
    pressed.current = null;
    hold(null);
  };
  const acts = useRef({ putHeld, letGo, targetOf: places.targetOf });
  acts.current = { putHeld, letGo, targetOf: places.targetOf };

  useEffect(() => {
    const move = (event: PointerEvent): void => {
      const start = pressed.current;
      if (!start) return;
      const { clientX: x, clientY: y } = event;
      if (!held.current && Math.hypot(x - start.x, y - start.y) < STARTS_PX) return;
      dragged.current = true;
      event.preventDefault();
      const under = window.document.elementFromPoint(x, y);
      const over = frame.current?.contains(under) ? acts.current.targetOf(under) : null;
      const next: Moving<Target> = { ids: start.ids, over, hand: [x, y] };
      held.current = next;
      setMoving(next);
      scrollAtEdge(frame.current, x, y);
    };
    const up = (): void => {
      if (!pressed.current) return;
      pressed.current = null;
      acts.current.putHeld();
    };
    const cancel = (): void => {
      if (pressed.current) acts.current.letGo();
    };
    const key = (event: KeyboardEvent): void => {
      if (event.key !== 'Escape' || !held.current) return;
      event.preventDefault();
      event.stopPropagation();
      acts.current.letGo();
    };
    const down = (): void => {
      dragged.current = false;
    };
    window.addEventListener('pointerdown', down, true);
    window.addEventListener('pointermove', move);
    window.addEventListener('pointerup', up);
    window.addEventListener('pointercancel', cancel);
    window.addEventListener('keydown', key, true);
    return () => {
      window.removeEventListener('pointerdown', down, true);
      window.removeEventListener('pointermove', move);
      window.removeEventListener('pointerup', up);
      window.removeEventListener('pointercancel', cancel);
      window.removeEventListener('keydown', key, true);
    };
  }, [frame]);

  return {
    moving,
    press: ({ button, clientX, clientY }, ids) => {
      if (button === 0) pressed.current = { ids, x: clientX, y: clientY };
    },
    pickUp: (ids, from) => {
      hold({ ids, over: from, hand: null });
      say(`${held.current!.ids.join(', ')} picked up. Arrows choose where, Enter puts down, Escape lets go.`);
    },
    aim: (over) => {
      if (held.current) hold({ ...held.current, over });
      say(places.words(over));
    },
    putHeld,
    letGo,
    hasDragged: () => dragged.current,
  };
}

/** Brings on what lies beyond the edge that the hand is at. */
function scrollAtEdge(frame: HTMLElement | null, x: number, y: number): void {
  if (!frame) return;
  const { left, right, top, bottom } = frame.getBoundingClientRect();
  const step = (at: number, low: number, high: number): number =>
    at < low + EDGE_PX ? -SCROLL_PX : at > high - EDGE_PX ? SCROLL_PX : 0;
  frame.scrollBy(step(x, left, right), step(y, top, bottom));
}
