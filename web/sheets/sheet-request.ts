import type { PriceList } from '../../calc/prices/price-list.ts';
import type { Underlay } from '../../calc/sheets/pdf/kit/underlay.ts';
import type { RevisionEnding } from '../../calc/sheets/revision-names.ts';
import type { SheetEnding } from '../../calc/sheets/sheet-names.ts';
import type { NamedSite } from '../document/files/named-site.ts';

/** What is to be written: one sheet, every sheet as one ZIP, or one file of a revision of another version. */
export type Wanted =
  | { readonly kind: 'sheet'; readonly ending: SheetEnding }
  | { readonly kind: 'every' }
  | { readonly kind: 'revision'; readonly before: NamedSite; readonly ending: RevisionEnding }
  /** What is handed over of the work as one ZIP, with photos by their hashes, and what goes beside by how it ends. */
  | {
      readonly kind: 'handover';
      readonly photos: ReadonlyMap<string, Uint8Array>;
      readonly beside: Readonly<Record<string, string | Uint8Array>>;
    };

export interface SheetRequest extends NamedSite {
  readonly wanted: Wanted;
  readonly prices: PriceList;
  /** As it is to be printed on the sheets. */
  readonly date: string;
  readonly underlays: readonly Underlay[];
  /** Address of this page, which codes on paper open. */
  readonly page: string;
}

export type SheetContent = string | Uint8Array<ArrayBuffer>;

export type SheetNews =
  | { readonly kind: 'doing'; readonly says: string; readonly done: number; readonly of: number }
  /** What could not be printed as it was given. */
  | { readonly kind: 'remark'; readonly says: string }
  /** Null where the site has no such sheet. */
  | { readonly kind: 'done'; readonly content: SheetContent | null }
  | { readonly kind: 'failed'; readonly says: string };
