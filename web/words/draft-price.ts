import type { PriceList } from '../../calc/prices/price-list.ts';
import { EMPTY_SIZE, emptyRacewayPrice, type PriceChange } from '../../calc/takeoff/bid/price-change.ts';
import { aloftAlong } from '../../calc/takeoff/high.ts';
import { distance } from '../../routing/plane/space.ts';
import type { Raceway, Site } from '../../routing/site/site.ts';
import { priceWords } from './dollars.ts';

/** A raceway that is drawn, on the site with it, and whether any circuit or feeder runs in it. */
export interface DrawnRaceway {
  readonly raceway: Pick<Raceway, 'method' | 'path' | 'place'>;
  readonly site: Pick<Site, 'equipment' | 'chargers' | 'rules'>;
  readonly carries: boolean;
}

/** What is said of the price of what is drawn, in sentences; of a raceway always something. */
export function draftPriceWords(change: PriceChange, drawn: DrawnRaceway | null, list: PriceList): readonly string[] {
  const { adds, missing, groundOnly } = change;
  const some = Math.abs(adds) >= 0.01;
  const empty = drawn !== null && !drawn.carries;
  const digging = some && groundOnly && empty ? ', for digging and drilling alone' : '';
  return [
    ...(some ? [`${adds > 0 ? 'Adds' : 'Saves'} ${priceWords(Math.abs(adds), list)} by ${list.name}${digging}.`] : []),
    ...(missing.length > 0 ? [`The list has no price for ${missing.join('; ')}.`] : []),
    ...(empty ? [emptyWords(drawn, list)] : []),
    ...(drawn && !empty && !some && missing.length === 0 ? [`Changes nothing in the price by ${list.name}.`] : []),
  ];
}

/** Raceway is counted with what runs in it: why nothing does, and what it would come to as a bare conduit. */
function emptyWords({ raceway, site }: DrawnRaceway, list: PriceList): string {
  const { method, path, place } = raceway;
  const why =
    site.equipment.length === 0
      ? 'No equipment stands yet, so nothing runs in it'
      : site.chargers.length === 0
        ? 'No charger hangs yet, so nothing runs in it'
        : 'No circuit or feeder runs in it';
  const feet = path.slice(1).reduce((sum, at, i) => sum + distance(path[i]!, at), 0);
  const price = emptyRacewayPrice(method, feet, aloftAlong(path, place, site.rules.workHeight), list);
  const what = method === 'tray' ? 'a bare tray' : `one bare ${EMPTY_SIZE}" ${method}`;
  return price === null
    ? `${why}, and its conduit is not counted.`
    : `${why}, and its conduit is not counted: as ${what} it comes to ${priceWords(price, list)} without fittings.`;
}
