import { proposeRaceways } from '../../routing/propose/raceways/propose-raceways.ts';
import { newIds } from '../../routing/site/new-id.ts';
import type { Member, Raceway, SiteFile } from '../../routing/site/site.ts';
import { toSite } from '../../routing/site/to-site.ts';
import { counted } from '../../routing/words/counted.ts';
import type { PriceList } from '../prices/price-list.ts';
import { tablesOf } from '../tables/editions.ts';
import { parkingCover, supportSpacings } from '../tables/raceway-of.ts';
import { heldWords } from './held-words.ts';
import { placeIn } from './in-file.ts';
import type { ProposalPart } from './part.ts';
import { withPullPoints } from './pull-points.ts';
import { routePrices } from './route-prices.ts';
import { USUAL_RACEWAY } from './usual.ts';

/** A lot of more chargers has a lesser search for each of its panels, so that it ends in about the same time. */
const SEARCHED_WHOLE = 300;

/**
 * Raceways for the chargers that have no run and the feeders that have no way, and pull points where they bend much.
 * @param only chargers whose ways are sought anew instead, and nobody else's
 */
export function racewaysPart(
  file: SiteFile,
  prices: PriceList,
  tell: (done: number, of: number) => void,
  mayGoOn: () => boolean = () => true,
  isBounded = true,
  only?: ReadonlySet<string>,
): { readonly file: SiteFile; readonly part: ProposalPart } {
  const site = toSite(file);
  const tables = tablesOf(site.rules);
  const spacings = supportSpacings(tables);
  const supportEvery = spacings[USUAL_RACEWAY.overhead].feet;
  const make = {
    method: USUAL_RACEWAY,
    ...routePrices(prices, site.rules),
    supportEvery,
    cover: parkingCover(tables),
    share: Math.min(1, SEARCHED_WHOLE / Math.max(1, site.chargers.length)),
    mayGoOn,
    isBounded,
    ...(only && { only }),
  };
  const proposal = proposeRaceways(site, make, tell);
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
  const struts = newIds(file, 'ST', proposal.stringers.length);
  const stringers = proposal.stringers.map(
    ({ from, to }, i): Member => ({
      id: struts[i]!,
      from: placeIn(file.units, from),
      to: placeIn(file.units, to),
      stringer: true,
    }),
  );
  const laid = {
    ...file,
    ...(stringers.length > 0 && { members: [...(file.members ?? []), ...stringers] }),
    ...(n > 0 && { raceways: [...(file.raceways ?? []), ...raceways] }),
  };
  const { file: next, added } = n === 0 ? { file, added: 0 } : withPullPoints(laid, only);
  return {
    file: next,
    part: {
      what: 'raceways',
      says: [
        n === 0
          ? site.chargers.length === 0
            ? 'There is nothing to route to: no charger is drawn.'
            : 'No new raceway is wanted.'
          : `${counted(n, 'raceway')}${added > 0 ? ` and ${added} pull ${added === 1 ? 'point' : 'points'} on ${n === 1 ? 'it' : 'them'}` : ''}. Routes are weighed by ${prices.name}.`,
        ...heldWords(toSite(next), new Set([...ids, ...struts]), proposal.inAir, spacings),
      ],
      measure:
        n === 0 || !isBounded ? null : { of: 'routes', value: proposal.cost, bound: proposal.bound, unit: 'dollars' },
      without: proposal.without,
    },
  };
}
