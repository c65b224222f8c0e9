import { alternativeOf } from '../../calc/plan/compared/alternative.ts';
import type { PriceList } from '../../calc/prices/price-list.ts';
import type { SiteFile } from '../../routing/site/site.ts';
import { toSite } from '../../routing/site/to-site.ts';
import { thumbnailOf } from '../board/painting/thumbnail.ts';
import type { CardRecord } from '../document/keeping/store/storage-records.ts';
import { warm } from '../document/warm-up.ts';

/** What a list shows of a site, worked out in slices so that the page stays alive. */
export async function cardOf(doc: string, seq: number, file: SiteFile, prices: PriceList): Promise<CardRecord> {
  const site = toSite(file);
  await warm(site, () => {});
  const { cost } = alternativeOf(file.name, site, prices);
  const { stalls, drops } = site;
  const picture = thumbnailOf(site);
  return { doc, seq, stalls: stalls.length, drops: drops.length, price: cost.price, prices: prices.name, picture };
}
