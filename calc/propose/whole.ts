import { mixed } from '../../routing/propose/raceways/mixed.ts';
import type { RacewaysProposal } from '../../routing/propose/raceways/raceway-make.ts';
import type { Finding } from '../../routing/site/rules/finding.ts';
import type { SiteFile } from '../../routing/site/site.ts';
import { toSite } from '../../routing/site/to-site.ts';
import type { PriceList } from '../prices/price-list.ts';
import { bidOfRows } from './bid-worth.ts';
import { withChargers } from './drops/chargers.ts';
import type { CordToCome } from './drops/drops-part.ts';
import { failsOf, forcedWords } from './forced-words.ts';
import type { EquipmentPart } from './panels/equipment-part.ts';
import { planOf } from './plan-of.ts';
import type { Proposal } from './proposal.ts';
import { siteFloor } from './raceways/branch-floor.ts';
import { withPullPoints } from './raceways/pull-points.ts';
import {
  drawnIn,
  type LaidRaceways,
  paidMeasure,
  type RacewaysEffort,
  racewaysPart,
} from './raceways/raceways-part.ts';
import { dropWords } from './volts/drop-words.ts';
import { behindWider, withDropHeld } from './volts/hold-drop.ts';

/** A proposal whole, and what decides between it and another. */
export interface Whole extends Proposal {
  readonly fails: number;
  /** Its bid. */
  readonly dollars: number;
  /** Its raceways, piece by piece. */
  readonly proposal: RacewaysProposal;
}

/** Fewer failing findings come first, then its bid: days as they are paid, by wholes. */
export const isBetter = (a: Pick<Whole, 'fails' | 'dollars'>, b: Pick<Whole, 'fails' | 'dollars'>): boolean =>
  a.fails < b.fails || (a.fails === b.fails && a.dollars < b.dollars - 0.005);

/** A lot with panels set in one way, and the chargers to come. */
export interface SetLot {
  readonly file: SiteFile;
  /** What is found of it as it is. */
  readonly had: readonly Finding[];
  readonly way: EquipmentPart;
  readonly cords: readonly CordToCome[];
  readonly prices: PriceList;
}

/** A lot with its chargers and raceways laid, new feeders wide enough: planned and priced. */
export function wholeOf(
  lot: SetLot,
  effort: RacewaysEffort,
  tell: (done: number, of: number) => void,
  mayGoOn: () => boolean,
): Whole {
  return wholeWith(lot, racewaysPart(chargedLot(lot), lot.prices, tell, mayGoOn, effort));
}

/**
 * A whole with the raceways that another one has from the panels whose feeders are narrower in that: their branches lose less
 * volts, and a feeder costs more than its branches save. Null where none is narrower there.
 */
export function withNarrower(lot: SetLot, whole: Whole, other: Whole): Whole | null {
  const site = toSite(whole.file);
  const behind = behindWider(site, toSite(other.file));
  if (behind.size === 0) return null;
  const from = new Map(site.chargers.map((charger) => [charger.id, charger.from]));
  const pieces = mixed(whole.proposal, other.proposal, (id) => behind.has(from.get(id) ?? id));
  const isBounded = whole.parts.some(({ what, measure }) => what === 'raceways' && measure !== null);
  return wholeWith(lot, drawnIn(chargedLot(lot), pieces, lot.prices, { isBounded }));
}

/** A lot with the chargers to come, fed from its panels. */
export const chargedLot = ({ way, cords }: Pick<SetLot, 'way' | 'cords'>): SiteFile =>
  withChargers(way.file, cords, way.fromOf);

/** A lot with raceways that were laid for it, new feeders wide enough: planned and priced. */
export function wholeWith(
  { file, had, way, prices }: SetLot,
  { file: laid, part: raceways, proposal }: LaidRaceways,
): Whole {
  const fresh = [
    ...(laid.feeders ?? []).slice(file.feeders?.length ?? 0),
    ...(laid.equipment ?? []).slice(file.equipment?.length ?? 0),
    ...(laid.chargers ?? []).slice(file.chargers?.length ?? 0),
  ];
  const held = withDropHeld(laid, new Set(fresh.map(({ id }) => id)), prices);
  // Larger branches may lie in other conduits, which bend more between two places where they can be opened.
  const grown = (held.file.chargers ?? []).filter(({ from }) => held.limited.has(from));
  const next = grown.length > 0 ? withPullPoints(held.file, new Set(grown.map(({ id }) => id))).file : held.file;
  const { findings, takeoff } = planOf(next);
  const dollars = bidOfRows(takeoff, prices);
  const says = dropWords(held);
  // Limits of drop make some conductors wider, and so what the branches come to and the least that they could.
  const paid = raceways.also && held.limited.size > 0 ? toSite(next) : null;
  const floor = paid && siteFloor(paid, prices);
  const told = paid && floor ? { ...raceways, also: [paidMeasure(paid, prices, proposal.paid, floor)] } : raceways;
  const forced = forcedWords(file, had, findings);
  return {
    file: next,
    parts: [{ ...way.part, says: [...way.part.says, ...says, ...forced] }, told],
    fails: failsOf(findings).length,
    dollars,
    proposal,
  };
}
