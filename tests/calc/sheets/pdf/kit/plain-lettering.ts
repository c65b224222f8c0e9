import type { Lettering } from '../../../../../calc/sheets/pdf/kit/lettering/lettering.ts';
import { LETTERS } from '../../../../../calc/sheets/pdf/kit/lettering/letters.ts';
import type { Paper } from '../../../../../calc/sheets/pdf/kit/paper.ts';

/** Lettering in which every sign is half as wide as its size: for tests of layout that need no font. */
export const plainLettering = (paper: Paper = 'tabloid'): Lettering => ({
  sizes: LETTERS[paper],
  width: (text, size, weight = 'regular') => [...text].length * size * (weight === 'bold' ? 0.55 : 0.5),
  encoded: (text) => `<${Buffer.from(text, 'utf16le').toString('hex')}>`,
  has: () => true,
  refs: undefined as never,
});
