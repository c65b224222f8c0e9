import { byId } from '../../routing/site/look-up.ts';
import type { Feeder, Site, SiteFile } from '../../routing/site/site.ts';
import { toSite } from '../../routing/site/to-site.ts';
import { plan } from '../plan/plan.ts';
import type { Plan } from '../plan/plan-shape.ts';
import type { PriceList } from '../prices/price-list.ts';
import { worthOfRows } from './bid-worth.ts';
import { largerTransformer } from './panels/larger-transformer.ts';
import { inTheGround } from './panels/panel-source.ts';

type FileFeeder = NonNullable<SiteFile['feeders']>[number];

/** Each round makes one thing larger ahead of each piece of equipment with too much drop. */
const ROUNDS = 24;
const MOST_SETS = 16;
/** Of more feeders than these none is tried with a set less: each takes a plan. */
const MOST_TRIED = 12;

/** Something that can be made larger, how much drop it takes off for a dollar, and the file with it so. */
interface Larger {
  readonly id: string;
  readonly worth: number;
  readonly apply: (file: SiteFile) => SiteFile;
}

export interface DropHeld {
  readonly file: SiteFile;
  /** Ids of feeders with more conductors in parallel, and of larger transformers. */
  readonly widened: readonly string[];
  readonly larger: readonly string[];
}

/**
 * The file with more conductors in parallel in some of the new feeders, or larger new transformers, on whose way the drop
 * from nominal to a box is past its limit: of all that is on the way to each, what takes most off the drop for a dollar, be
 * it ahead of a transformer. Conductors that the drop does not need in the end are taken back. Says what was made larger.
 * @param fresh ids of the feeders and equipment that may be changed
 */
export function withDropHeld(file: SiteFile, fresh: ReadonlySet<string>, prices: PriceList): DropHeld {
  const before = byId(file.feeders ?? []);
  const foot = footPrices(prices);
  let next = file;
  const larger = new Set<string>();
  for (let round = 0; round < ROUNDS; round++) {
    const site = toSite(next);
    const planned = plan(site);
    const steps = new Map<string, Larger>();
    for (const equipment of tooMuch(planned)) {
      const [best] = wayTo(site, equipment)
        .flatMap((feeder) => [
          ...(fresh.has(feeder.id) ? [setMore(site, planned, feeder, foot)] : []),
          ...(fresh.has(feeder.to) ? [kvaMore(site, planned, feeder, prices)] : []),
        ])
        .filter((one) => one !== null)
        .filter(({ worth }) => worth > 0)
        .sort((a, b) => b.worth - a.worth);
      if (best) steps.set(best.id, best);
    }
    if (steps.size === 0) break;
    for (const { id, apply } of steps.values()) {
      next = apply(next);
      if (!before.has(id)) larger.add(id);
    }
  }
  next = takenBack(next, before, fresh);
  const needed = byId(next.feeders ?? []);
  const widened = [...before.values()].filter((one) => {
    const { conductor } = needed.get(one.id)!;
    return conductor.size === one.conductor.size && conductor.sets > one.conductor.sets;
  });
  return { file: next, widened: widened.map(({ id }) => id), larger: [...larger] };
}

/** Equipment at whose chargers' boxes the drop is past its limit. */
const tooMuch = ({ findings }: Plan): ReadonlySet<string> =>
  new Set(findings.flatMap(({ rule, about }) => (rule === 'total-drop' ? about.slice(-1) : [])));

/** Equipment of a site behind feeders that have more conductors in parallel, or transformers that are larger, than in another. */
export function behindWider(site: Site, other: Site): ReadonlySet<string> {
  const before = { feeders: byId(other.feeders), equipment: byId(other.equipment) };
  const isWider = ({ id, to, conductor }: Feeder): boolean =>
    conductor.sets > (before.feeders.get(id)?.conductor.sets ?? conductor.sets) ||
    (byId(site.equipment).get(to)?.kva ?? 0) > (before.equipment.get(to)?.kva ?? Number.POSITIVE_INFINITY);
  return new Set(site.equipment.filter(({ id }) => wayTo(site, id).some(isWider)).map(({ id }) => id));
}

/** The feeders from a source to a piece of equipment, the last first. */
function wayTo(site: Site, equipment: string): readonly Feeder[] {
  const way: Feeder[] = [];
  for (let to: string | undefined = equipment; to !== undefined; ) {
    const feeder: Feeder | undefined = site.feeders.find((one) => one.to === to);
    if (feeder === undefined || way.includes(feeder)) break;
    way.push(feeder);
    to = feeder.from;
  }
  return way;
}

/** A set of conductors more in a feeder: its drop goes as one over the sets. */
function setMore(site: Site, { supply }: Plan, feeder: Feeder, foot: FootPrice): Larger | null {
  const { id, conductor } = feeder;
  const fact = supply.feeders.find((one) => one.id === id);
  if (fact === undefined || !(fact.length > 0) || conductor.sets >= MOST_SETS) return null;
  return {
    id,
    worth: fact.dropPercent / (conductor.sets + 1) / (fact.length * foot(site, feeder)),
    apply: (file) => withSets(file, (one) => one.conductor.sets + (one.id === id ? 1 : 0)),
  };
}

/** The next size of the transformer that a feeder ends at, with the breaker and feeder that it wants: its drop goes as one over its size. */
function kvaMore(site: Site, { supply }: Plan, { id, to }: Feeder, prices: PriceList): Larger | null {
  const next = largerTransformer(site, to, prices);
  const length = supply.feeders.find((one) => one.id === id)?.length;
  if (next === null || length === undefined) return null;
  const dollars = next.itself + length * next.foot;
  const fell = windingDrop(site, supply, to) * (1 - next.was / next.kva);
  return { id: to, worth: dollars > 0 ? fell / dollars : 0, apply: (file) => next.apply(file, id) };
}

/** Percent of nominal that is lost in a transformer, of its worst pair of lines. */
function windingDrop(site: Site, supply: Plan['supply'], id: string): number {
  const share = (name: string, nominal: number | undefined): number => {
    const volts = supply.equipment.find((one) => one.id === name)?.volts;
    return volts === undefined || nominal === undefined ? 1 : Math.min(volts.AB, volts.BC, volts.CA) / nominal;
  };
  const feeder = site.feeders.find((one) => one.to === id);
  const equipment = byId(site.equipment);
  const ahead = feeder && equipment.get(feeder.from);
  const lost = supply.feeders.find((one) => one.id === feeder?.id)?.dropPercent ?? 0;
  if (!ahead) return 0;
  const before = 100 * share(ahead.id, ahead.secondaryVolts ?? ahead.volts) - lost;
  return Math.max(0, before - 100 * share(id, equipment.get(id)?.secondaryVolts));
}

type FootPrice = (site: Site, feeder: Feeder) => number;

/** Dollars of a foot of one set more of a feeder: the difference of two plans. */
function footPrices(prices: PriceList): FootPrice {
  const known = new Map<string, number>();
  return (site, feeder) => {
    const { conductor, id } = feeder;
    const key = `${conductor.size} ${conductor.metal}`;
    const found = known.get(key);
    if (found !== undefined) return found;
    const own = { ...site, feeders: site.feeders.filter((one) => one.id === id), chargers: [], drops: [] };
    const priced = (sets: number): number =>
      worthOfRows(plan({ ...own, feeders: [{ ...feeder, conductor: { ...conductor, sets } }] }).takeoff, prices);
    const length = plan(own).supply.feeders.find((one) => one.id === id)?.length ?? 0;
    const more = priced(conductor.sets + 1) - priced(conductor.sets);
    const dollars = length > 0 && more > 0 ? more / length : 1;
    known.set(key, dollars);
    return dollars;
  };
}

const withSets = (file: SiteFile, sets: (one: FileFeeder) => number): SiteFile => ({
  ...file,
  feeders: (file.feeders ?? []).map((one) =>
    sets(one) === one.conductor.sets ? one : { ...one, conductor: { ...one.conductor, sets: sets(one) } },
  ),
});

/** Without the sets that the drop does not need in the end. */
function takenBack(file: SiteFile, before: ReadonlyMap<string, FileFeeder>, fresh: ReadonlySet<string>): SiteFile {
  const { rules } = toSite(file);
  const wider = (file.feeders ?? []).filter(
    ({ id, conductor, breakerAmps }) =>
      fresh.has(id) && conductor.sets > Math.max(before.get(id)!.conductor.sets, inTheGround(rules, breakerAmps).sets),
  );
  if (wider.length === 0 || wider.length > MOST_TRIED) return file;
  let next = file;
  const left = tooMuch(plan(toSite(file))).size;
  for (const { id } of wider) {
    const fewer = withSets(next, (one) => one.conductor.sets - (one.id === id ? 1 : 0));
    if (tooMuch(plan(toSite(fewer))).size <= left) next = fewer;
  }
  return next;
}
