import type { SiteFile } from '../../routing/site/site.ts';
import { toSite } from '../../routing/site/to-site.ts';
import { plan } from '../plan/plan.ts';
import { bestDrops } from './best-drops.ts';
import { withChargers } from './chargers.ts';
import { dayLoad, leavesShort, slightlyMore } from './day-load.ts';
import type { CordToCome } from './drops-part.ts';
import { failsOf, forcedWords } from './forced-words.ts';
import { withDropHeld } from './hold-drop.ts';
import { answersJudged } from './paid.ts';
import { FULL_RATE, type LoadWish } from './panels/charger-amps.ts';
import { type EquipmentPart, equipmentPart, type Shape } from './panels/equipment-part.ts';
import { dollarsOf } from './panels/trial-price.ts';
import type { Doing, Proposal, ProposalWish } from './proposal.ts';
import { type RacewaysEffort, racewaysPart } from './raceways-part.ts';

/** Ways in which panels are tried, the first first; the others as far as the lot is small enough to plan them all. */
const SHAPES: readonly Shape[] = [
  { more: 0, isShared: true },
  { more: 0, isShared: false },
  { more: 0, isShared: true, isAcross: true },
  { more: 3000, isShared: true },
  { more: -1500, isShared: true },
];
/** So many stalls may be planned for, over all ways that are tried. */
const MOST_PLANNED = 240;

/** A proposal whole, and what decides between it and another. */
interface Whole extends Proposal {
  readonly fails: number;
  readonly dollars: number;
}

/**
 * Drops with their chargers, panels for them, and raceways: in each of some ways to set panels, of which the one that is
 * cheapest when it is planned and priced is taken, fewer failing findings first. A search that goes on never gives a
 * dearer one than the routes that it begins with.
 */
export function proposeAll(
  file: SiteFile,
  wish: ProposalWish,
  tell: (doing: Doing) => void,
  ready: (soFar: Proposal) => void,
  mayGoOn: () => boolean,
): Proposal {
  tell({ what: 'drops', done: 0, of: 1 });
  const { file: hung, cords, part: drops } = bestDrops(file, wish, mayGoOn);
  const under = (load: LoadWish): Whole => {
    tell({ what: 'equipment', done: 0, of: 1 });
    const told = ({ parts, ...soFar }: Proposal): void => ready({ ...soFar, parts: [drops, ...parts] });
    const whole = bestWhole(file, hung, cords, { ...wish, load }, tell, told, mayGoOn);
    return { ...whole, parts: [drops, ...whole.parts] };
  };
  const { load = FULL_RATE } = wish;
  if (load.kind !== 'day') return under(load);
  const full = under(FULL_RATE);
  let held = dayLoad(full.file, new Set(newIn(full.file, file)));
  for (let tries = 0; held !== null && tries < MOST_TRIES && mayGoOn(); tries++) {
    const whole = under(held);
    if (!leavesShort(whole.file)) return tightened(whole);
    held = slightlyMore(held);
  }
  function tightened(whole: Whole): Whole {
    const less = dayLoad(whole.file, new Set(newIn(whole.file, file)));
    if (less === null || held?.kind !== 'each' || less.kind !== 'each' || less.amps >= held.amps || !mayGoOn())
      return whole;
    const next = under(less);
    return !leavesShort(next.file) && isBetter(next, whole) ? next : whole;
  }
  const says = 'No ceiling was found under which the charging days lose nothing: all chargers run at full rate.';
  return {
    ...full,
    parts: full.parts.map((part) => (part.what === 'equipment' ? { ...part, says: [...part.says, says] } : part)),
  };
}

const newIn = (next: SiteFile, { equipment = [] }: SiteFile): readonly string[] =>
  (next.equipment ?? []).slice(equipment.length).map(({ id }) => id);

/** So often is a ceiling raised that leaves a car short. */
const MOST_TRIES = 4;

/** Share of the search by feet where a lot is too large for answers to be planned: it is laid twice in the same time. */
const LESS = 0.6;

/** Of the ways to set panels the one whose plan fails least and then costs least. */
function bestWhole(
  file: SiteFile,
  hung: SiteFile,
  cords: readonly CordToCome[],
  { prices, load, isBounded = true, answers }: ProposalWish,
  tell: (doing: Doing) => void,
  ready: (soFar: Proposal) => void,
  mayGoOn: () => boolean,
): Whole {
  const many = Math.max(1, Math.floor(MOST_PLANNED / Math.max(1, cords.length)));
  const ways = distinct(SHAPES.slice(0, Math.max(2, many)), many, (shape) =>
    equipmentPart(hung, { prices, cords, shape, ...(load && { load }) }),
  );
  const first = ways[0]!;
  ready({ file: withChargers(first.file, cords, first.fromOf), parts: [first.part] });
  const isOne = ways.length === 1;
  const effort = answersJudged(cords.length) > 0 ? 1 : LESS;
  // Routes are sought by a price a foot: what the search begins with, and ends with where it is stopped, may come to less.
  const tries: readonly { readonly way: EquipmentPart; readonly effort: RacewaysEffort }[] = [
    { way: first, effort: { isBounded: isOne && isBounded, isSearched: false, answers: 0, effort } },
    ...ways.map((way) => ({ way, effort: isOne ? { isBounded, answers, effort } : { isBounded: false, answers: 0 } })),
  ];
  let best: { readonly whole: Whole; readonly way: EquipmentPart; readonly isSearched: boolean } | null = null;
  for (const [done, { way, effort: own }] of tries.entries()) {
    if (best !== null && !mayGoOn()) break;
    const told = (part: number, of: number): void =>
      tell({ what: 'raceways', done: done * of + part, of: tries.length * of });
    const whole = wholeOf(file, way, cords, prices, own, told, mayGoOn);
    if (best !== null && !isBetter(whole, best.whole)) continue;
    best = { whole, way, isSearched: own.isSearched !== false };
    ready(whole);
  }
  const { whole, way, isSearched } = best!;
  if (!isBounded || ways.length === 1 || !mayGoOn()) return whole;
  // The ways are told apart by routes at a price a foot; those of the best way are then sought by what they come to.
  const told = (part: number, of: number): void => tell({ what: 'raceways', done: part, of });
  const gone = wholeOf(file, way, cords, prices, { answers }, told, mayGoOn);
  // The same routes once more, with their bound.
  if (isBetter(whole, gone)) return wholeOf(file, way, cords, prices, { isSearched, answers: 0 }, told, mayGoOn);
  ready(gone);
  return gone;
}

const isBetter = (a: Whole, b: Whole): boolean =>
  a.fails < b.fails || (a.fails === b.fails && a.dollars < b.dollars - 0.005);

/** Ways that differ in what they draw, so many at most; no more are worked than that takes. */
function distinct(
  shapes: readonly Shape[],
  most: number,
  wayOf: (shape: Shape) => EquipmentPart,
): readonly EquipmentPart[] {
  const ways = new Map<string, EquipmentPart>();
  for (const shape of shapes) {
    if (ways.size >= most) break;
    const way = wayOf(shape);
    const { file, fromOf } = way;
    const key = JSON.stringify([file.equipment, file.feeders, [...fromOf]]);
    if (!ways.has(key)) ways.set(key, way);
  }
  return [...ways.values()];
}

function wholeOf(
  file: SiteFile,
  way: EquipmentPart,
  cords: readonly CordToCome[],
  prices: ProposalWish['prices'],
  effort: RacewaysEffort,
  tell: (done: number, of: number) => void,
  mayGoOn: () => boolean,
): Whole {
  const charged = withChargers(way.file, cords, way.fromOf);
  const { file: laid, part: raceways } = racewaysPart(charged, prices, tell, mayGoOn, effort);
  const fresh = [
    ...(laid.feeders ?? []).slice(file.feeders?.length ?? 0),
    ...(laid.equipment ?? []).slice(file.equipment?.length ?? 0),
  ];
  const { file: next, widened, larger } = withDropHeld(laid, new Set(fresh.map(({ id }) => id)), prices);
  const says = [
    ...some(
      widened,
      (has) => `${has('has', 'have')} more conductors in parallel than the breaker asks for, to hold the drop.`,
    ),
    ...some(larger, (is) => `${is('is', 'are')} larger than the load asks for, to hold the drop.`),
  ];
  const { findings, takeoff } = plan(toSite(next));
  const forced = forcedWords(file, plan(toSite(file)).findings, findings);
  return {
    file: next,
    parts: [{ ...way.part, says: [...way.part.says, ...says, ...forced] }, raceways],
    fails: failsOf(findings).length,
    dollars: dollarsOf(takeoff, prices),
  };
}

const some = (
  names: readonly string[],
  says: (verb: (one: string, many: string) => string) => string,
): readonly string[] =>
  names.length === 0 ? [] : [`${names.join(', ')} ${says((one, many) => (names.length === 1 ? one : many))}`];
