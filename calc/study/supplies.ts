import { byId } from '../../routing/site/look-up.ts';
import { newId } from '../../routing/site/new-id.ts';
import { metalOf } from '../../routing/site/schema/vocabulary.ts';
import type { Equipment, Feeder, Site, SiteFile } from '../../routing/site/site.ts';
import { toSite } from '../../routing/site/to-site.ts';
import { designOf } from '../branches/design.ts';
import { plan } from '../plan/plan.ts';
import type { PriceList } from '../prices/price-list.ts';
import { feederWaySite } from '../propose/feeder-way.ts';
import { panelsOf } from '../propose/feeding.ts';
import { lengthIn } from '../propose/in-file.ts';
import { feederConductor } from '../supply/feeders/feeder-conductor.ts';
import { type FeederProspect, feederProspects } from '../supply/feeders/feeder-prospects.ts';
import { treeOf } from '../supply/tree/supply-lines.ts';
import { standardRatingAtLeast } from '../tables/protection-of.ts';
import { dealtLine } from './at-full-rate.ts';
import type { StudyBase } from './base.ts';
import { type LayoutOutcome, routed, withAmps } from './layouts.ts';

/** A standing feeder beyond which chargers hang. */
export interface StandingFeeder {
  readonly feeder: Feeder;
  /** Feet. */
  readonly length: number;
  readonly ways: readonly FeederProspect[];
  readonly chargers: number;
}

/** The standing feeders of a lot beyond which all chargers hang, and what each can carry; or why that is not known. */
export function standingFeeders(site: Site): {
  readonly known: readonly StandingFeeder[];
  readonly unknown: readonly string[];
} {
  const known: StandingFeeder[] = [];
  const unknown: string[] = [];
  for (const prospects of feederProspects(site)) {
    if (!prospects.ok) unknown.push(`${prospects.feeder.id}: ${prospects.says}`);
    else if (prospects.wish.chargers > 0 && leadsToBoards(site, prospects.feeder))
      known.push({
        feeder: prospects.feeder,
        length: prospects.length,
        ways: prospects.ways,
        chargers: prospects.wish.chargers,
      });
  }
  return { known, unknown };
}

/** Not the conductors of the service itself: what they feed is no board that chargers hang on, nor a transformer of one. */
const leadsToBoards = ({ equipment }: Site, { to }: Feeder): boolean => {
  const kind = byId(equipment).get(to)?.kind;
  return kind !== 'service' && kind !== 'source';
};

/** A layout with a standing feeder used in some way, its transformer apart from the board. */
export const usedSo = (file: SiteFile, { feeder, length }: StandingFeeder, way: FeederProspect): LayoutOutcome =>
  feederWaySite(file, feeder.id, way, length);

/** Feet of busbar between a transformer and a board in one enclosure, and feet between their cases. Common practice, no source. */
const IN_ONE = { bus: 2, gap: 0.01 } as const;

/**
 * The same with the transformer and the board in one assembly: side by side, their fronts in one line, on whichever side
 * less stands in the way, and no conduit between.
 */
export function usedInBoard(file: SiteFile, standing: StandingFeeder, way: FeederProspect): LayoutOutcome {
  const made = usedSo(file, standing, way);
  if (!made.ok) return made;
  const before = byId(file.equipment ?? []);
  const { equipment = [], feeders = [] } = made.file;
  const fresh = equipment.find(({ id }) => !before.has(id));
  const between = feeders.find(({ from }) => from === fresh?.id);
  const board = equipment.find(({ id }) => id === between?.to);
  if (fresh === undefined || between === undefined || board === undefined)
    return { ok: false, says: 'The transformer stands already, apart from the board.' };
  const { raceway: _, ...bus } = between;
  const length = lengthIn(file.units, IN_ONE.bus);
  const beside = ([1, -1] as const).map((side): SiteFile => {
    const stood = { ...fresh, ...placeBeside(board, fresh, side, lengthIn(file.units, IN_ONE.gap)) };
    return {
      ...made.file,
      equipment: equipment.map((one) => (one.id === fresh.id ? stood : one)),
      feeders: feeders.map((one) => (one.id === between.id ? { ...bus, length } : one)),
    };
  });
  const fails = (one: SiteFile): number =>
    plan(toSite(one)).findings.filter(({ severity, about }) => severity === 'fail' && about.includes(fresh.id)).length;
  const [right, left] = beside as [SiteFile, SiteFile];
  return {
    ok: true,
    file: fails(right) <= fails(left) ? right : left,
    says: [
      ...made.says.filter((one) => !one.startsWith(`${fresh.id},`)),
      `${fresh.id}, ${way.kva} kVA, and ${board.id} are one assembly, listed so, with busbars between them.`,
    ],
  };
}

type Placed = Pick<Equipment, 'at' | 'size' | 'entry' | 'rotation'>;

/** Beside a board, to its right or left, the fronts in one line; a front looks down in the plan where nothing is turned. */
function placeBeside(
  board: Placed,
  { size, entry }: Placed,
  side: 1 | -1,
  gap: number,
): Pick<Placed, 'at' | 'entry' | 'rotation'> {
  const turn = ((board.rotation ?? 0) * Math.PI) / 180;
  const [ux, uy] = [Math.cos(turn), Math.sin(turn)];
  const along = side * ((board.size[0] + size[0]) / 2 + gap);
  const back = (size[1] - board.size[1]) / 2;
  const at: [number, number] = [tidy(board.at[0] + along * ux - back * uy), tidy(board.at[1] + along * uy + back * ux)];
  return { at, entry: [at[0], at[1], entry[2]], rotation: board.rotation ?? 0 };
}

const tidy = (value: number): number => Math.round(value * 1e4) / 1e4 + 0;

/** Spaces that boards are made with, and amperes of their busbars. Common practice, no source. */
const SPACES = [42, 54, 66, 84];
const BUSES = [225, 400, 600, 800, 1000, 1200, 1600, 2000, 2500, 3000, 4000];
const LARGEST_PANELBOARD = 1200;

/**
 * A layout in which one board, in the place of the first that stands, feeds all chargers through a new feeder from the
 * service; the feeder that led there is left unused.
 */
export function oneNewFeeder(file: SiteFile, base: StudyBase, amps: number, prices: PriceList): LayoutOutcome {
  const site = toSite(file);
  const tree = treeOf(site);
  const [board] = panelsOf(site);
  const place = board && tree.placeOf.get(board.id);
  if (board === undefined || place === undefined)
    return { ok: false, says: 'No board stands that a feeder could lead to.' };
  let above = tree.nodes[place]!.parent;
  while (above >= 0 && !['service', 'source'].includes(tree.nodes[above]!.equipment.kind))
    above = tree.nodes[above]!.parent;
  const from = tree.nodes[above];
  if (from === undefined) return { ok: false, says: `No service or source is drawn ahead of ${board.id}.` };
  const { volts, phases } = tree.nodes[place]!.system;
  if (Math.abs(from.system.volts - volts) > 1)
    return {
      ok: false,
      says: `${from.equipment.id} is of ${from.system.volts} V: a board of ${volts} V needs a transformer, and stands with one where panels are proposed.`,
    };
  const { tables } = designOf(site.rules);
  const others = panelsOf(site).slice(1);
  const stranded = site.loads.find((load) => others.some(({ id }) => id === load.from));
  if (stranded) return { ok: false, says: `${stranded.from} feeds ${stranded.id} too, and cannot be taken away.` };
  const line = dealtLine(
    site.chargers.map((one) => ({ ...one, amps })),
    phases,
  );
  const besides = site.loads
    .filter((load) => load.from === board.id && load.generation !== true)
    .reduce(
      (sum, load) => sum + (load.va * (load.continuous ? tables.continuous.factor : 1)) / (Math.sqrt(phases) * volts),
      0,
    );
  const mainAmps = standardRatingAtLeast(tables, tables.continuous.factor * line + besides);
  const busAmps = BUSES.find((bus) => bus >= mainAmps);
  const poles = site.chargers.reduce((sum, one) => sum + (one.phases === 3 ? 3 : 2), 0) + 3 * site.loads.length;
  const spaces = Math.max(board.spaces ?? 0, SPACES.find((each) => each >= poles) ?? poles + (poles % 2));
  if (busAmps === undefined)
    return {
      ok: false,
      says: `One board would need a main of ${Number.isFinite(mainAmps) ? `${mainAmps} A` : 'more than any standard rating'}, over the largest bus.`,
    };
  const conductor = feederConductor(tables, mainAmps, site.rules, site.rules.placeAmbientC.underground);
  const gone = new Set(others.map(({ id }) => id));
  const left = (file.feeders ?? []).filter(({ to }) => to === board.id || gone.has(to));
  const feeder: NonNullable<SiteFile['feeders']>[number] = {
    id: newId(file, 'F'),
    from: from.equipment.id,
    to: board.id,
    conductor: { ...conductor, metal: metalOf(conductor.metal) },
    breakerAmps: mainAmps,
  };
  const kind = busAmps > LARGEST_PANELBOARD || spaces > SPACES.at(-1)! ? 'switchboard' : 'panelboard';
  const next: SiteFile = {
    ...file,
    equipment: (file.equipment ?? []).flatMap((one) => {
      if (gone.has(one.id)) return [];
      if (one.id !== board.id) return [one];
      const { managedAmps: _, existing: __, ...rest } = one;
      return [{ ...rest, kind, mainAmps, busAmps, spaces }];
    }),
    feeders: [...(file.feeders ?? []).filter((one) => !left.includes(one)), feeder],
    chargers: (file.chargers ?? []).map((charger) => ({ ...charger, from: board.id })),
    // Branches that came from other boards are laid anew.
    ...(others.length > 0 && { raceways: base.file.raceways ?? [], pullpoints: base.file.pullpoints ?? [] }),
  };
  const stood = left.filter(({ existing }) => existing === true).map(({ id }) => id);
  return routed(withAmps(next, amps), prices, [
    `${feeder.id} feeds ${board.id}, a board of ${mainAmps} A, from ${from.equipment.id}.`,
    ...(stood.length > 0 ? [`${stood.join(', ')} ${stood.length === 1 ? 'is' : 'are'} left unused.`] : []),
  ]);
}
