import bidiFactory from 'bidi-js';
import { runsFromRight } from './base-direction.ts';

const bidi = bidiFactory();

/** A text with the embedding level of each of its code units, as Unicode's bidirectional algorithm gives them (UAX 9). */
export interface Directed {
  readonly levels: Uint8Array;
  /** Brackets and the like that are printed as their mirror images, by their place. */
  readonly mirrored: ReadonlyMap<number, string>;
}

/** The levels of a text, from left to right unless all of it runs the other way. */
export function directed(text: string): Directed {
  const { levels } = bidi.getEmbeddingLevels(text, runsFromRight(text) ? 'rtl' : 'ltr');
  return { levels, mirrored: bidi.getMirroredCharactersMap(text, levels) };
}

/** Pieces of one level each, from left to right as they are seen (UAX 9, L2). */
export function inSight<T extends { readonly level: number }>(pieces: readonly T[]): readonly T[] {
  const seen = [...pieces];
  const most = Math.max(0, ...seen.map(({ level }) => level));
  for (let level = most; level > 0; level--) {
    for (let from = 0; from < seen.length; from++) {
      if (seen[from]!.level < level) continue;
      let to = from;
      while (to < seen.length && seen[to]!.level >= level) to++;
      seen.splice(from, to - from, ...seen.slice(from, to).reverse());
      from = to;
    }
  }
  return seen;
}
