import type { Deviation } from '../../calc/field/cures.ts';
import type { MovablePoint } from '../../calc/field/moved-point.ts';
import type { Tolerance } from '../../calc/field/tolerance.ts';
import type { PriceList } from '../../calc/prices/price-list.ts';
import type { SiteFile } from '../../routing/site/site.ts';

/** What the field asks that takes many plans to answer. */
export type FieldAsk =
  | { readonly kind: 'room'; readonly point: MovablePoint }
  | { readonly kind: 'deviation'; readonly drop: string; readonly prices: PriceList };

export type FieldRequest =
  /** The site that is asked about; absent where it is that of the last request. */
  { readonly number: number; readonly file?: SiteFile; readonly ask: FieldAsk } | { readonly stop: number };

export type FieldNews =
  | { readonly number: number; readonly share: number }
  | { readonly number: number; readonly room: Tolerance }
  | { readonly number: number; readonly deviation: Deviation | null };
