import { proposeRaceways } from '../../routing/propose/raceways/propose-raceways.ts';
import { newIds } from '../../routing/site/new-id.ts';
import type { Raceway, SiteFile } from '../../routing/site/site.ts';
import { toSite } from '../../routing/site/to-site.ts';
import type { PriceList } from '../takeoff/price-list.ts';
import { placeIn } from './in-file.ts';
import type { ProposalPart } from './part.ts';
import { withPullPoints } from './pull-points.ts';
import { routePrices } from './route-prices.ts';
import { USUAL_RACEWAY } from './usual.ts';

/** Raceways for the chargers that have no run and the feeders that have no way, and pull points where they bend much. */
export function racewaysPart(
  file: SiteFile,
  prices: PriceList,
  tell: (done: number, of: number) => void,
): { readonly file: SiteFile; readonly part: ProposalPart } {
  const site = toSite(file);
  const proposal = proposeRaceways(site, { method: USUAL_RACEWAY, price: routePrices(prices, site.rules) }, tell);
  const n = proposal.raceways.length;
  const ids = newIds(file, 'R', n);
  const raceways = proposal.raceways.map(
    ({ path, method, place }, i): Raceway => ({
      id: ids[i]!,
      path: path.map((at) => placeIn(file.units, at)),
      method,
      place,
    }),
  );
  const laid = n === 0 ? file : { ...file, raceways: [...(file.raceways ?? []), ...raceways] };
  const { file: next, added } = n === 0 ? { file, added: 0 } : withPullPoints(laid);
  return {
    file: next,
    part: {
      what: 'raceways',
      says: [
        n === 0
          ? site.chargers.length === 0
            ? 'There is nothing to route to: no charger is drawn.'
            : 'No new raceway is wanted.'
          : `${n} ${n === 1 ? 'raceway' : 'raceways'}${added > 0 ? ` and ${added} pull ${added === 1 ? 'point' : 'points'} on ${n === 1 ? 'it' : 'them'}` : ''}. Routes are weighed by ${prices.name}.`,
      ],
      measure: n === 0 ? null : { of: 'routes', value: proposal.cost, bound: proposal.bound, unit: 'dollars' },
      without: proposal.without,
    },
  };
}
