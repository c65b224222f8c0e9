import { type Pen, penWith } from '../pen.ts';
import type { Lettering } from './lettering.ts';

/** All words that something draws, in the order of their letters: what tells whether a revision changed it. */
export function wordsDrawn(lettering: Lettering, draw: (pen: Pen) => void): string {
  const words: string[] = [];
  draw({ ...penWith(lettering), text: (text) => words.push(text) });
  return words.sort().join('\n');
}
