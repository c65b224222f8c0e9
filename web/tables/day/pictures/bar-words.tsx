import type { CarView } from '../../../../calc/day/figures/day-view.ts';
import { lackWords } from '../../../../calc/day/figures/day-words.ts';

/** Units of the drawing that a letter takes, about, at the size of the marks. */
const LETTER = 6.4;
const GAP = 4;

interface WordsProps {
  readonly car: CarView;
  /** Left and right end of the bar, and of the room beside it up to the next bars or the edges, in the drawing's units. */
  readonly from: number;
  readonly to: number;
  readonly room: { readonly from: number; readonly to: number };
  readonly y: number;
}

/** What a car got of what it asked, beside its bar where there is room; what it lacks always, at need within the bar. */
export function BarWords({ car, from, to, room, y }: WordsProps) {
  const lacks = car.isShort ? lackWords(car.most - car.got) : null;
  const got = `${car.got.toFixed(1)} of ${car.need.toFixed(1)} kWh`;
  const wide = lacks === null ? got : `${got}, ${lacks} short`;
  const fits = (words: string): 'after' | 'before' | null => {
    const units = LETTER * words.length + 2 * GAP;
    return room.to - to >= units ? 'after' : from - room.from >= units ? 'before' : null;
  };
  const short = `−${lacks}`;
  const place = fits(wide);
  const side = place ?? (lacks === null ? null : (fits(short) ?? 'within'));
  if (side === null) return null;
  const x = side === 'after' ? to + GAP : side === 'before' ? from - GAP : to - 2 * GAP;
  return (
    <text
      className={lacks === null ? 'day-got' : 'day-short'}
      data-within={side === 'within'}
      x={x}
      y={y}
      textAnchor={side === 'after' ? 'start' : 'end'}
    >
      {place === null ? short : wide}
    </text>
  );
}
