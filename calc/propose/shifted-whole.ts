import { lotFrame } from '../../routing/propose/raceways/lattice/lot-frame.ts';
import { joined, mixed } from '../../routing/propose/raceways/mixed.ts';
import { byId } from '../../routing/site/look-up.ts';
import type { Point2, Site } from '../../routing/site/site.ts';
import { toSite } from '../../routing/site/to-site.ts';
import type { EquipmentPart } from './panels/equipment-part.ts';
import { siteFloor } from './raceways/branch-floor.ts';
import { answersJudged } from './raceways/paid.ts';
import { drawnIn, type RacewaysEffort, racewaysPart } from './raceways/raceways-part.ts';
import { chargedLot, isBetter, type SetLot, type Whole, wholeWith } from './whole.ts';

/** So many places times all the chargers of the lot are tried: each charger takes its time to plan. */
const EFFORT = 3600;
/** Fewer than these for each panel are not worth beginning, nor are more looked at. */
const FEW = 4;
const MOST = 10;
/** Panels are moved by these feet, or until they are in line with what leads on from them, no farther than that. */
const STEPS = [-6, -3, 3, 6] as const;
const IN_LINE = 12;
/** Ways are laid anew to tell places apart in such a share of the usual search. */
const SHARE = 0.2;

/** Places that are tried for each of some panels of a lot with so many chargers. */
export function placesTried(panels: number, chargers: number): number {
  const each = Math.min(MOST, Math.floor(EFFORT / Math.max(1, panels * chargers)));
  return each < FEW ? 0 : each;
}

/**
 * A whole with its new panels moved a little, one after the other, each to the place near it at which the plan comes to
 * least: where panels stand was told by straight feet, not by the trunks, bends and lifts that their branches take. Places
 * are told apart with ways laid to the same drops in less of a search, and the best of them is taken where the whole that is
 * searched as before is cheaper.
 * @param ready hears each that is better
 */
export function shiftedWhole(
  lot: SetLot,
  whole: Whole,
  answers: number | undefined,
  ready: (better: Whole) => void,
  mayGoOn: () => boolean,
): Whole {
  let best = { whole, way: lot.way, by: new Map<string, Point2>() };
  const tried = placesTried(lot.way.panels.length, lot.cords.length);
  for (const panel of tried > 0 ? lot.way.panels : []) {
    if (!mayGoOn()) break;
    const quick: RacewaysEffort = { isBounded: false, answers: 0, effort: SHARE };
    const here = relaid(lot, best.way, best.whole, panel, quick);
    let least = { way: best.way, by: best.by, whole: here };
    for (const { way, by } of placesNear(lot.way, best.way, best.by, best.whole, panel).slice(0, tried)) {
      if (!mayGoOn()) break;
      const one = relaid(lot, way, best.whole, panel, quick);
      if (isBetter(one, least.whole)) least = { way, by, whole: one };
    }
    if (least.way === best.way || !mayGoOn()) continue;
    const found = isBetter(least.whole, best.whole) ? least.whole : best.whole;
    const searched = relaid(lot, least.way, best.whole, panel, {
      answers: answers ?? Math.ceil(answersJudged(lot.cords.length) / 2),
      isBounded: true,
    });
    const next = isBetter(searched, found) && searched.proposal.isSteady ? searched : found;
    if (!isBetter(next, best.whole)) continue;
    best = { whole: next, way: least.way, by: least.by };
    ready(next);
  }
  return best.whole;
}

/** The same panels with one of them at other places, the one by straight feet least first; those in line before others. */
function placesNear(
  from: EquipmentPart,
  now: EquipmentPart,
  by: ReadonlyMap<string, Point2>,
  { proposal }: Whole,
  panel: string,
): readonly { readonly way: EquipmentPart; readonly by: Map<string, Point2> }[] {
  const site = toSite(now.file);
  const { into } = lotFrame(site);
  const at = into(byId(site.equipment).get(panel)!.at);
  const turns = proposal.raceways
    .filter(({ of }) => of === panel)
    .flatMap(({ path }) => path.map(([x, y]) => into([x, y])));
  const alongAxis = (axis: 0 | 1): Along => {
    const inLine = turns.map((turn) => Math.round(turn[axis] - at[axis])).filter((feet) => Math.abs(feet) <= IN_LINE);
    return { inLine: new Set(inLine), all: [...new Set([0, ...inLine, ...STEPS])] };
  };
  const along = [alongAxis(0), alongAxis(1)] as const;
  const [u0, v0] = by.get(panel) ?? [0, 0];
  const measureOf = ({ part }: EquipmentPart): number => part.measure?.value ?? 0;
  return along[0].all
    .flatMap((u) => along[1].all.map((v): Point2 => [u, v]))
    .filter(([u, v]) => u !== 0 || v !== 0)
    .flatMap(([u, v]) => {
      const next = new Map(by).set(panel, [u0 + u, v0 + v]);
      const way = from.shifted(next);
      const out = (along[0].inLine.has(u) ? 0 : 1) + (along[1].inLine.has(v) ? 0 : 1);
      return way === null ? [] : [{ way, by: next, out, weighs: measureOf(way), far: Math.abs(u) + Math.abs(v), u, v }];
    })
    .sort((a, b) => cents(a.weighs - b.weighs) || a.out - b.out || a.far - b.far || a.u - b.u || a.v - b.v);
}

interface Along {
  readonly inLine: ReadonlySet<number>;
  readonly all: readonly number[];
}

const cents = (dollars: number): number => Math.round(dollars * 100);

/** A whole with its panels set in another way: the ways of feeders and of the branches of one panel laid anew, all others as they are. */
function relaid(lot: SetLot, way: EquipmentPart, whole: Whole, panel: string, effort: RacewaysEffort): Whole {
  const { prices } = lot;
  const file = chargedLot({ ...lot, way });
  const own = new Set((file.chargers ?? []).flatMap(({ id, from }) => (from === panel ? [id] : [])));
  const others = new Set([...(file.equipment ?? []), ...(file.chargers ?? [])].map(({ id }) => id));
  for (const id of [panel, ...own]) others.delete(id);
  const { chargers, ...bare } = file;
  const all = (): boolean => true;
  const quiet = (): void => {};
  const feeders = racewaysPart(bare, prices, quiet, all, { isBounded: false, answers: 0 }).proposal;
  const beside = mixed(feeders, whole.proposal, (id) => others.has(id));
  const stood = drawnIn(file, beside, prices, { isBounded: false }).file;
  const held = heldAs(toSite(whole.file), toSite(way.file));
  const theirs = racewaysPart(stood, prices, quiet, all, { ...effort, only: own, held }).proposal;
  const floor = effort.isBounded === false ? null : siteFloor(toSite(file), prices);
  const isBounded = whole.parts.some(({ what, measure }) => what === 'raceways' && measure !== null);
  return wholeWith({ ...lot, way }, drawnIn(file, joined(beside, theirs), prices, { isBounded, floor }));
}

/** A site whose equipment stands where it does in another. */
function heldAs(site: Site, { equipment }: Site): Site {
  const there = byId(equipment);
  return {
    ...site,
    equipment: site.equipment.map((one) => {
      const { at, entry } = there.get(one.id) ?? one;
      return { ...one, at, entry };
    }),
  };
}
