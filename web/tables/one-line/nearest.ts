export type Arrow = 'ArrowLeft' | 'ArrowRight' | 'ArrowUp' | 'ArrowDown';
export const isArrow = (key: string): key is Arrow => /^Arrow(Left|Right|Up|Down)$/.test(key);

/** A place on the screen: its middle, pixels. */
export interface Middle {
  readonly x: number;
  readonly y: number;
}

/** How much a step aside weighs against a step ahead. */
const ASIDE = 2.5;
const LEAST_STEP = 4;

/** The place that an arrow leads to: the nearest ahead, one that lies straight on before one aside; -1 where none is. */
export function nearest(from: Middle, places: readonly Middle[], arrow: Arrow): number {
  const across = arrow === 'ArrowLeft' || arrow === 'ArrowRight';
  const sign = arrow === 'ArrowRight' || arrow === 'ArrowDown' ? 1 : -1;
  let [best, least] = [-1, Infinity];
  places.forEach(({ x, y }, i) => {
    const [ahead, aside] = across ? [sign * (x - from.x), y - from.y] : [sign * (y - from.y), x - from.x];
    if (ahead < LEAST_STEP) return;
    const far = ahead + ASIDE * Math.abs(aside);
    if (far < least) [best, least] = [i, far];
  });
  return best;
}
