import { proposeRaceways } from '../../../routing/propose/raceways/propose-raceways.ts';
import type { PaidBranches, RacewaysProposal } from '../../../routing/propose/raceways/raceway-make.ts';
import { byId } from '../../../routing/site/look-up.ts';
import { newIds } from '../../../routing/site/new-id.ts';
import type { Member, Raceway, Site, SiteFile } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { counted } from '../../../routing/words/counted.ts';
import type { PriceList } from '../../prices/price-list.ts';
import { tablesOf } from '../../tables/editions.ts';
import { parkingCover, supportSpacings } from '../../tables/raceway-of.ts';
import { placeIn } from '../in-file.ts';
import type { ProposalPart } from '../part.ts';
import { USUAL_RACEWAY } from '../usual.ts';
import { type SiteFloor, siteFloor } from './branch-floor.ts';
import { heldWords } from './held-words.ts';
import { answersJudged, branchesCost, racewaysPaid } from './paid.ts';
import { withPullPoints } from './pull-points.ts';
import { routePrices } from './route-prices.ts';

/** A lot of more chargers has a lesser search for each of its panels, so that it ends in about the same time. */
const SEARCHED_WHOLE = 300;

/** How long is searched, and for what. */
export interface RacewaysEffort {
  /** False where nobody asks how near the best the routes are, nor for more than a price a foot. */
  readonly isBounded?: boolean | undefined;
  /** False for the routes that a search begins with: those of one that is stopped at once. */
  readonly isSearched?: boolean;
  /** False where conduits that stand with room count as new ones. */
  readonly isFilling?: boolean;
  /** Chargers whose ways are sought anew instead, and nobody else's. */
  readonly only?: ReadonlySet<string>;
  /** Answers for the branches of each piece of equipment that are planned and priced; by the size of the lot unless said. */
  readonly answers?: number | undefined;
  /** Share of the usual search by a price a foot. */
  readonly effort?: number;
  /** The site with its feeders as wide as they are: what makes any of them too narrow is no better. */
  readonly held?: Site | undefined;
}

export interface LaidRaceways {
  readonly file: SiteFile;
  readonly part: ProposalPart;
  /** What is drawn in, piece by piece. */
  readonly proposal: RacewaysProposal;
}

/** Raceways for the chargers that have no run and the feeders that have no way, and pull points where they bend much. */
export function racewaysPart(
  file: SiteFile,
  prices: PriceList,
  tell: (done: number, of: number) => void,
  mayGoOn: () => boolean = () => true,
  { isBounded = true, isSearched = true, isFilling = true, only, answers, effort = 1, held }: RacewaysEffort = {},
): LaidRaceways {
  const site = toSite(file);
  const judged = answers ?? (isBounded ? answersJudged(site.chargers.length) : 0);
  const tables = tablesOf(site.rules);
  const supportEvery = supportSpacings(tables)[USUAL_RACEWAY.overhead].feet;
  const floor = judged > 0 ? siteFloor(site, prices) : null;
  const make = {
    method: USUAL_RACEWAY,
    ...routePrices(prices, site.rules),
    supportEvery,
    cover: parkingCover(tables),
    share: effort * Math.min(1, SEARCHED_WHOLE / Math.max(1, site.chargers.length)),
    mayGoOn,
    isBounded,
    isSearched,
    isFilling,
    ...(only && { only }),
    ...(judged > 0 && { paid: racewaysPaid(prices, judged, floor?.feet ?? null, held) }),
  };
  return drawnIn(file, proposeRaceways(site, make, tell), prices, { isBounded, only, floor });
}

interface Drawing {
  readonly isBounded?: boolean;
  readonly only?: ReadonlySet<string> | undefined;
  readonly floor?: SiteFloor | null;
}

/** The file with proposed raceways and their pull points, and what there is to say of them. */
export function drawnIn(
  file: SiteFile,
  proposal: RacewaysProposal,
  prices: PriceList,
  { isBounded = true, only, floor = null }: Drawing,
): LaidRaceways {
  const site = toSite(file);
  const spacings = supportSpacings(tablesOf(site.rules));
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
    proposal,
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
        n === 0 || !isBounded ? null : { of: WEIGHED, value: proposal.cost, bound: proposal.bound, unit: 'dollars' },
      ...(floor && proposal.paid.length > 0 && { also: [paidMeasure(toSite(next), prices, proposal.paid, floor)] }),
      without: proposal.without,
    },
  };
}

/** What the bound on routes is a bound of. */
const WEIGHED = 'routes, by what a foot of raceway, conductors and conduit adds to the bid, no fittings or boxes in it';

/**
 * What branches overhead add to the bid, and the least that any along the lines that were looked at add to it, their
 * conductors as wide as the limits of drop of the site as it is now have them.
 */
export function paidMeasure(
  site: Site,
  prices: PriceList,
  paid: readonly PaidBranches[],
  floor: SiteFloor,
): NonNullable<ProposalPart['measure']> {
  const chargerOf = byId(site.chargers);
  const boxAt = new Map(site.drops.map(({ id, box }) => [id, box[2]]));
  const sum = <T>(list: readonly T[], of: (one: T) => number): number => list.reduce((all, one) => all + of(one), 0);
  const least = ({ chargers, floor: feet, ways }: PaidBranches): number =>
    feet +
    sum(ways, ({ id, feet: long, counted: by }) => by * floor.over(chargerOf.get(id)!, long)) +
    chargers.length * floor.circuit +
    sum([...new Set(chargers.map((id) => chargerOf.get(id)!.drop))], (id) => floor.drop(boxAt.get(id)!));
  return {
    of: 'new branches overhead, by what they add to the bid: feet, fittings, boxes and breakers with all that is laid on them, lifts and traffic control by parts of days',
    value: sum(paid, ({ from, chargers }) => branchesCost(site, prices, from, chargers)),
    bound: sum(paid, least),
    unit: 'dollars',
  };
}
