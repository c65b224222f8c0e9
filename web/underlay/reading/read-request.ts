import type { GroundFeature } from '../../../routing/site/import/geojson.ts';
import type { DrawnWords, ImportFault } from '../../../routing/site/import/imported.ts';
import type { Georef } from '../../../routing/site/site.ts';
import type { MainExtent } from './main-extent.ts';
import type { PackedLines } from './packed-lines.ts';

/** What the reader is asked to read, and what it answers. */
export interface ReadRequest {
  readonly kind: 'dxf' | 'geojson';
  readonly bytes: Uint8Array;
}

/** What it says on its way, and at the end. */
export type ReadMessage = { readonly share: number } | { readonly answer: ReadAnswer };

export type ReadAnswer =
  | { readonly ok: false; readonly fault: ImportFault }
  | {
      readonly ok: true;
      readonly lines: PackedLines;
      readonly words: readonly DrawnWords[];
      readonly extent: MainExtent;
      readonly feetPerUnit: number | null;
      /** "in inches, by its header"; null where there is no question of units. */
      readonly unitSays: string | null;
      /** Half of the last digit of its coordinates, units of the drawing. */
      readonly rounding: number;
      readonly notes: readonly string[];
      readonly features?: readonly GroundFeature[];
      readonly ground?: readonly [lon: number, lat: number];
      readonly georef?: Georef | null;
    };
