import type { PriceList } from '../../calc/prices/price-list.ts';
import type { AnewWhat, Figures } from '../../calc/propose/anew/propose-anew.ts';
import type { Asked } from '../../calc/propose/anew/scope.ts';
import type { SiteFile } from '../../routing/site/site.ts';

/** A part of a lot that is to be drawn again: what a change broke, or what somebody chose. */
export type PartRequest = { readonly file: SiteFile; readonly prices: PriceList; readonly seconds: number } & (
  | { readonly kind: 'mend'; readonly before: SiteFile }
  | {
      readonly kind: 'anew';
      readonly what: AnewWhat;
      readonly asked: Asked;
      readonly keep: readonly string[];
      readonly cordsADrop: number;
    }
);

/** What came of it. */
export type PartNews =
  | {
      readonly kind: 'mended';
      readonly file: SiteFile;
      /** What is broken, the first of it. */
      readonly broke: readonly string[];
      readonly left: Figures;
      readonly mended: Figures;
      readonly says: string;
    }
  | {
      readonly kind: 'anew';
      readonly file: SiteFile;
      readonly says: readonly string[];
      readonly before: Figures;
      readonly after: Figures;
    }
  | { readonly kind: 'doing'; readonly done: number; readonly of: number }
  /** Nothing is to be drawn, and why where there is a reason. */
  | { readonly kind: 'none'; readonly says: string };
