import type { GroundFeature } from '../../routing/site/import/geojson.ts';
import type { DrawnWords, ImportFault } from '../../routing/site/import/imported.ts';
import type { Georef } from '../../routing/site/site.ts';
import type { PackedLines } from './packed-lines.ts';

/** What the reader is asked to read, and what it answers. */
export interface ReadRequest {
  readonly kind: 'dxf' | 'geojson';
  readonly text: string;
}

export type ReadAnswer =
  | { readonly ok: false; readonly fault: ImportFault }
  | {
      readonly ok: true;
      readonly lines: PackedLines;
      readonly words: readonly DrawnWords[];
      readonly feetPerUnit: number | null;
      readonly skipped: ReadonlyMap<string, number>;
      readonly features?: readonly GroundFeature[];
      readonly ground?: readonly [lon: number, lat: number];
      readonly georef?: Georef | null;
    };
