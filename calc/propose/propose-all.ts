import type { SiteFile } from '../../routing/site/site.ts';
import { toSite } from '../../routing/site/to-site.ts';
import { fromBestSource, withSays } from './by-source.ts';
import { dayLoad, leavesShort, slightlyMore } from './day-load.ts';
import { bestDrops } from './drops/best-drops.ts';
import { withChargers } from './drops/chargers.ts';
import type { DropsPart } from './drops/drops-part.ts';
import { FULL_RATE, type LoadWish } from './panels/charger-amps.ts';
import { type EquipmentPart, equipmentPart, type Shape } from './panels/equipment-part.ts';
import { planOf } from './plan-of.ts';
import type { Doing, Proposal, ProposalWish } from './proposal.ts';
import { fillsStanding } from './raceways/best-raceways.ts';
import { answersJudged } from './raceways/paid.ts';
import type { RacewaysEffort } from './raceways/raceways-part.ts';
import { shiftedWhole } from './shifted-whole.ts';
import { otherMetalWords } from './volts/other-metal.ts';
import { isBetter, type SetLot, type Whole, wholeOf, withNarrower } from './whole.ts';

/** Ways in which panels are tried, the first first; the others as far as the lot is small enough to plan them all. */
const SHAPES: readonly Shape[] = [
  { more: 0, isShared: true },
  { more: 0, isShared: false },
  { more: 0, isShared: true, isAcross: true },
  { more: 3000, isShared: true },
  { more: -1500, isShared: true },
];
/** On larger lots another metal of feeders is not weighed: it takes some plans more. */
const MOST_IN_METAL = 600;
/** So many stalls may be planned for, over all ways that are tried. */
const MOST_PLANNED = 240;

/**
 * Drops with their chargers, panels for them, and raceways: in each of some ways to set panels, from each source that could
 * feed them, of which the one that is cheapest when it is planned and priced is taken, fewer failing findings first. A longer
 * search never gives a dearer one than a shorter one.
 */
export function proposeAll(
  file: SiteFile,
  wish: ProposalWish,
  tell: (doing: Doing) => void,
  ready: (soFar: Proposal) => void,
  mayGoOn: () => boolean,
): Proposal {
  tell({ what: 'drops', done: 0, of: 1 });
  const { usual, best } = bestDrops(file, wish, mayGoOn);
  const { load = FULL_RATE, feederMetal } = wish;
  const setting = (source: string | undefined): Setting => ({
    ...(source !== undefined && { source }),
    ...(feederMetal && { metal: feederMetal }),
  });
  const better = onlyBetter(ready);
  const from = (load: LoadWish, source: string | undefined, mayGoOn: () => boolean): Whole => {
    const of = (drops: DropsPart, from: Whole | null, may: () => boolean): Whole => {
      tell({ what: 'equipment', done: 0, of: 1 });
      const withDrops = <P extends Proposal>(one: P): P => ({ ...one, parts: [drops.part, ...one.parts] });
      const told = (soFar: Proposal): void => better(withDrops(soFar));
      const found = bestWhole(file, drops, { ...wish, load, setting: setting(source) }, from, tell, told, may);
      return found === from ? found : withDrops(found);
    };
    // What a search that is stopped at once gives is weighed with all that comes after.
    return of(best, best === usual ? null : of(usual, null, () => false), mayGoOn);
  };
  const under = (load: LoadWish): Whole => fromBestSource(file, (source, may) => from(load, source, may), mayGoOn);
  const withMetal = (whole: Whole): Whole =>
    wish.isBounded === false || best.cords.length > MOST_IN_METAL || !mayGoOn()
      ? whole
      : withSays(whole, otherMetalWords(file, whole.file, wish.prices));
  if (load.kind !== 'day') return withMetal(under(load));
  const full = under(FULL_RATE);
  let held = dayLoad(full.file, new Set(newIn(full.file, file)));
  let least: Whole | null = null;
  for (let tries = 0; held !== null && least === null && tries < MOST_TRIES && mayGoOn(); tries++) {
    const whole = under(held);
    if (leavesShort(whole.file)) held = slightlyMore(held);
    else least = tightened(whole);
  }
  function tightened(whole: Whole): Whole {
    const less = dayLoad(whole.file, new Set(newIn(whole.file, file)));
    if (less === null || held?.kind !== 'each' || less.kind !== 'each' || less.amps >= held.amps || !mayGoOn())
      return whole;
    const next = under(less);
    return !leavesShort(next.file) && isBetter(next, whole) ? next : whole;
  }
  if (least !== null && !isBetter(full, least)) return withMetal(least);
  const says =
    least === null
      ? 'No ceiling was found under which the charging days lose nothing: all chargers run at full rate.'
      : 'Under the least ceilings at which the charging days lose nothing it comes to more: all chargers run at full rate.';
  return withMetal(withSays(full, [says]));
}

/** Whose panels are fed from where, and by what. */
type Setting = Pick<Shape, 'source' | 'metal'>;

/** Hears what is ready, but no whole that is no better than one before. */
function onlyBetter(ready: (soFar: Proposal) => void): (soFar: Proposal) => void {
  let best: Pick<Whole, 'fails' | 'dollars'> | null = null;
  return (soFar) => {
    const { fails, dollars } = soFar;
    if (fails === undefined || dollars === undefined) {
      if (best === null) ready(soFar);
      return;
    }
    if (best !== null && !isBetter({ fails, dollars }, best)) return;
    best = { fails, dollars };
    ready(soFar);
  };
}

const newIn = (next: SiteFile, { equipment = [] }: SiteFile): readonly string[] =>
  (next.equipment ?? []).slice(equipment.length).map(({ id }) => id);

/** So often is a ceiling raised that leaves a car short. */
const MOST_TRIES = 4;

/** Share of the search by feet where a lot is too large for answers to be planned: it is laid twice in the same time. */
const LESS = 0.6;

/**
 * Of the ways to set panels the one whose plan fails least and then costs least, or what it goes on from. What is stopped
 * on its way is taken only where a longer search would go on from it: so none gives a dearer answer than a shorter one.
 */
function bestWhole(
  file: SiteFile,
  { file: hung, cords }: DropsPart,
  { prices, load, isBounded = true, answers, setting }: ProposalWish & { readonly setting: Setting },
  from: Whole | null,
  tell: (doing: Doing) => void,
  ready: (soFar: Proposal) => void,
  mayGoOn: () => boolean,
): Whole {
  const many = Math.max(1, Math.floor(MOST_PLANNED / Math.max(1, cords.length)));
  const isStopped = !mayGoOn();
  const wayOf = (shape: Shape): EquipmentPart =>
    equipmentPart(hung, { prices, cords, shape: { ...shape, ...setting }, ...(load && { load }) });
  const ways = distinct(SHAPES.slice(0, isStopped ? 1 : Math.max(2, many)), many, wayOf);
  const first = ways[0]!;
  if (from === null) ready({ file: withChargers(first.file, cords, first.fromOf), parts: [first.part] });
  const isOne = !isStopped && ways.length === 1;
  const effort = answersJudged(cords.length) > 0 ? 1 : LESS;
  const had = planOf(file).findings;
  const lotOf = (way: EquipmentPart): SetLot => ({ file, had, way, cords, prices });
  const laid = (way: EquipmentPart, own: RacewaysEffort, done: number, tries: number): Whole => {
    const told = (part: number, of: number): void => tell({ what: 'raceways', done: done * of + part, of: tries * of });
    return wholeOf(lotOf(way), own, told, mayGoOn);
  };
  let best: { readonly whole: Whole; readonly way: EquipmentPart; readonly own: RacewaysEffort } | null = null;
  const weigh = (whole: Whole, way: EquipmentPart, own: RacewaysEffort): void => {
    if (best !== null && !(whole.proposal.isSteady && isBetter(whole, best.whole))) return;
    best = { whole, way, own };
    if (from === null || isBetter(whole, from)) ready(whole);
  };
  // Routes are sought by a price a foot: what the search begins with, and ends with where it is stopped, may come to less.
  const begun: RacewaysEffort = { isBounded: isOne && isBounded, isSearched: false, answers: 0, effort };
  const start = laid(first, begun, 0, ways.length + 1);
  weigh(start, first, begun);
  for (const [i, way] of ways.entries()) {
    if (!mayGoOn()) break;
    const own: RacewaysEffort = isOne
      ? { isBounded, answers, effort, held: toSite(start.file) }
      : { isBounded: false, answers: 0 };
    const whole = laid(way, own, i + 1, ways.length + 1);
    const narrower = way === first ? withNarrower(lotOf(way), whole, start) : null;
    weigh(whole, way, own);
    if (narrower !== null) weigh(narrower, way, own);
  }
  if (fillsStanding(file) && mayGoOn()) {
    const { way: filled, own: by } = best!;
    const bare: RacewaysEffort = { ...by, isFilling: false };
    weigh(laid(filled, bare, 0, 1), filled, bare);
  }
  const { whole, way, own } = best!;
  const found = isBounded && !isOne && mayGoOn() ? judged() : whole;
  const told = (one: Whole): void => {
    if (from === null || isBetter(one, from)) ready(one);
  };
  const shifted = isBounded && mayGoOn() ? shiftedWhole(lotOf(way), found, answers, told, mayGoOn) : found;
  return from !== null && !isBetter(shifted, from) ? from : shifted;

  /** The ways are told apart by routes at a price a foot; those of the best way are then sought by what they come to. */
  function judged(): Whole {
    const filling = own.isFilling === undefined ? {} : { isFilling: own.isFilling };
    const gone = laid(way, { answers, held: toSite(whole.file), ...filling }, 0, 1);
    if (gone.proposal.isSteady && isBetter(gone, whole)) {
      if (from === null || isBetter(gone, from)) ready(gone);
      return gone;
    }
    // The same routes once more, with their bound.
    const again = mayGoOn() ? laid(way, { ...own, isBounded: true }, 0, 1) : whole;
    return again.proposal.isSteady && !isBetter(whole, again) ? again : whole;
  }
}

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
