import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { drawingSet, type SetParts } from '../../../../calc/sheets/pdf/drawing-set.ts';
import type { Planned } from '../planned-samples.ts';

const font = (name: string): Uint8Array =>
  readFileSync(join(import.meta.dirname, '../../../../calc/sheets/fonts', `overpass-${name}.ttf`));

/** The typeface of the sheets. */
export const FONTS = { regular: font('regular'), bold: font('semibold') };

/** The drawing set of a planned site, on tabloid unless said otherwise. */
export const setOf = ({ site, planned }: Planned, more: Partial<SetParts> = {}): Promise<Uint8Array> =>
  drawingSet(site, planned, { fonts: FONTS, date: '2026-11-25', paper: 'tabloid', file: 'lot.site.json', ...more });
