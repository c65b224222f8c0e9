import type { Raceway, Site } from '../../site/site.ts';
import type { SharedPrice } from '../shared/shared-cost.ts';
import type { Stringer } from './lattice/held-line.ts';
import type { FloorPrice, FloorWay } from './least-under.ts';
import type { Judged } from './paid-search.ts';

export type RacewayPlace = 'overhead' | 'underground';

/** What new raceways are of, and what a foot of raceway, of a circuit's conductors and of conduit weighs. */
export interface RacewayMake {
  /** What comes up at a column, where a car may hit it, is of a kind of its own. */
  readonly method: Readonly<Record<RacewayPlace | 'riser', Raceway['method']>>;
  readonly price: Readonly<Record<RacewayPlace, SharedPrice>>;
  /** Supports of what is laid overhead may be so far apart, feet. */
  readonly supportEvery: number;
  /** Dollars of a foot of stringer. */
  readonly stringerFoot: number;
  /** What is laid in the ground lies so deep, feet. */
  readonly cover: number;
  /** Share of the usual steps of the search for each piece of equipment: less where there are many. */
  readonly share: number;
  /** Asked as it goes; what is found by then is drawn once it says no. */
  readonly mayGoOn: () => boolean;
  /** Chargers whose ways are sought anew, have they a run or none; without it those that have none, and feeders. */
  readonly only?: ReadonlySet<string>;
  /** False where nobody asks for the bound, which is then loose. */
  readonly isBounded?: boolean;
  /** False for the routes that a search begins with. */
  readonly isSearched?: boolean;
  /** False where conduits that stand with room are taken for no cheaper than new ones: what fills them may come to more. */
  readonly isFilling?: boolean;
  /** By what answers near the best are told apart; where it is not said the weights decide. */
  readonly paid?: RacewaysPaid;
}

/** What branches come to when their raceways are drawn, in place of weights a foot. */
export interface RacewaysPaid {
  /** How many answers are looked at for each piece of equipment. */
  readonly rounds: number;
  /** Of the branches from a piece of equipment to some chargers, on the site with raceways for them; with all others where these are the last. */
  readonly judge: (drawn: Site, from: string, chargers: ReadonlySet<string>, isLast: boolean) => Judged;
  /** Prices under which no branches can be had. */
  readonly floor?: FloorPrice;
}

/** Branches from a piece of equipment that were sought by what they come to, and what their feet come to at the least. */
export interface PaidBranches {
  readonly from: string;
  readonly chargers: readonly string[];
  readonly floor: number;
  readonly ways: readonly FloorWay[];
}

/** With the equipment whose branches it was laid for; without it where it was laid for a feeder. */
export type ProposedRaceway = Pick<Raceway, 'path' | 'method' | 'place'> & { readonly of?: string };

/** A strut from member to member, with the equipment whose branches it holds. */
export type ProposedStringer = Stringer & { readonly of?: string };

/** Routes of the branches of a piece of equipment by the prices, and the least that any could cost. */
interface RoutedFrom {
  readonly of?: string;
  readonly cost: number;
  readonly bound: number;
}

export interface RacewaysProposal {
  readonly raceways: readonly ProposedRaceway[];
  /** Struts from member to member that hold some of them. */
  readonly stringers: readonly ProposedStringer[];
  /** Chargers to which nothing that is drawn holds a way, nor leads one through the ground: theirs hangs in the air. */
  readonly inAir: readonly string[];
  /** Of all routes by the prices, and the least that any routes on the lines looked at could cost. */
  readonly cost: number;
  readonly bound: number;
  /** Of those of each piece of equipment; those of feeders have none. */
  readonly routed: readonly RoutedFrom[];
  readonly paid: readonly PaidBranches[];
  /**
   * False where it was stopped with several to lay for, some of which were sought and others not: a longer search may come
   * to more. With one to lay for it is what a search begins with, or the best that was judged.
   */
  readonly isSteady: boolean;
  /** Chargers and feeders that no raceway reaches, and why. */
  readonly without: readonly { readonly id: string; readonly says: string }[];
}
