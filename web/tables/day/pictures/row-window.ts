import { type RefObject, useEffect, useState } from 'react';

/** Rows past so many scroll in a frame of their own, and only those in view are drawn. */
export const MOST_WHOLE = 40;
const BEYOND = 6;

export interface RowWindow {
  /** Rows that are drawn: from the first up to, not including, the last. */
  readonly first: number;
  readonly last: number;
  /** Pixels. */
  readonly rowPx: number;
  readonly onScroll: () => void;
  /** Scrolls until a row is in view, if it is not. */
  readonly bring: (row: number) => void;
}

/**
 * Which rows of a drawing are in view in the frame that it scrolls in.
 *
 * @param units width of the drawing, and `rowUnits` the height of a row, in its own units
 */
export function useRowWindow(
  frame: RefObject<HTMLElement | null>,
  rows: number,
  { units, rowUnits, mostPx }: { readonly units: number; readonly rowUnits: number; readonly mostPx: number },
): RowWindow {
  const [seen, setSeen] = useState({ top: 0, width: units, height: 400 });
  const look = (): void => {
    const at = frame.current;
    if (at === null) return;
    const [top, width, height] = [at.scrollTop, at.clientWidth, at.clientHeight];
    setSeen((was) => (was.top === top && was.width === width && was.height === height ? was : { top, width, height }));
  };
  useEffect(() => {
    const at = frame.current;
    if (at === null) return;
    const sized = new ResizeObserver(look);
    sized.observe(at);
    return () => sized.disconnect();
  }, [frame]);
  const rowPx = (rowUnits * Math.min(seen.width, mostPx)) / units;
  const whole = rows <= MOST_WHOLE;
  return {
    first: whole ? 0 : Math.max(0, Math.min(rows - 1, Math.floor(seen.top / rowPx) - BEYOND)),
    last: whole ? rows : Math.min(rows, Math.ceil((seen.top + seen.height) / rowPx) + BEYOND),
    rowPx,
    onScroll: look,
    bring: (row) => {
      const at = frame.current;
      if (at === null || whole) return;
      const [top, bottom] = [row * rowPx, (row + 1) * rowPx];
      if (top < at.scrollTop || bottom > at.scrollTop + at.clientHeight)
        at.scrollTop = Math.max(0, top - (at.clientHeight - rowPx) / 2);
      look();
    },
  };
}
