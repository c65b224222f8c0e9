import type { Device } from '../../plan-file/supply.ts';
import { protectorsOf } from './protecting.ts';
import { mainIn } from './standing-in.ts';

/** What protects the busbar of a board. */
export interface BoardMain {
  /** `main 400 A`, `main 250 A, the device of F2`, `main lugs, behind the 200 A of F3 at SB1`, `no main drawn`. */
  readonly words: string;
  /** Of the main in it; null where there is none, or nobody gives its rating. */
  readonly amps: number | null;
}

/** The main of a board, or what stands in the place of one. */
export function boardMain(devices: readonly Device[], equipment: string): BoardMain {
  const main = mainIn(devices, equipment);
  if (main !== undefined) {
    if (main.amps === null) return { words: 'no main drawn', amps: null };
    return {
      words: `main ${main.amps} A${main.of === equipment ? '' : `, the device of ${main.of}`}`,
      amps: main.amps,
    };
  }
  const head = protectorsOf(devices).get(equipment)?.[0];
  if (head === undefined) return { words: 'main lugs or not given', amps: null };
  return { words: `main lugs, behind the ${head.amps} A of ${head.of} at ${head.at}`, amps: null };
}
