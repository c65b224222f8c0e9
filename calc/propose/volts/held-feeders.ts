import { kept } from '../../../routing/kept/kept.ts';
import { byId } from '../../../routing/site/look-up.ts';
import type { Equipment, Feeder, Rules, Site, SiteFile } from '../../../routing/site/site.ts';
import { designOf } from '../../branches/design.ts';
import type { Plan } from '../../plan/plan-shape.ts';
import type { PriceList } from '../../prices/price-list.ts';
import { usualImpedance } from '../../supply/feeders/feeder-trial.ts';
import { circularMils, findImpedance } from '../../tables/conductor-of.ts';
import { CONDUCTOR_SIZES } from '../../tables/sizes.ts';
import { inTheGround, transformerFor } from '../panels/panel-source.ts';
import { type FedPrice, fedPrice } from '../panels/trial-price.ts';
import type { Choice } from './least-of-each.ts';

type Conductor = Feeder['conductor'];

/** A feeder, with the transformer that it ends at where that may be larger: what it may be. */
export interface HeldFeeder extends Choice {
  readonly conductor: Conductor;
  /** Larger than it was; absent where it is as it was. */
  readonly transformer?: { readonly id: string; readonly kva: number; readonly breakerAmps: number };
  readonly apply: (file: SiteFile) => SiteFile;
}

const MOST_SETS = 16;
/** Larger conductors are run in parallel sets instead. Common practice, no source. */
const LARGEST = '600';
/** So many standard sizes more are looked at for a transformer. */
const MOST_LARGER = 4;

/**
 * What a new feeder may be: as it is, or of larger conductors or more of them in parallel, and where a new transformer stands
 * at its end also with that of one of the next standard sizes. Ohms go by Table 9 (R cos + X sin), dollars by the plans of
 * trial sites. Empty for a feeder without a length.
 * @param canGrow which feeders and transformers are new
 * @param excess percent that is lost too much with all as it is: no more is put in parallel than takes off all of it
 */
export function heldFeeders(
  site: Site,
  { supply }: Plan,
  feeder: Feeder,
  canGrow: ReadonlySet<string>,
  excess: number,
  prices: PriceList,
): readonly HeldFeeder[] {
  const fact = supply.feeders.find(({ id }) => id === feeder.id);
  const piece = byId(site.equipment).get(feeder.to);
  if (fact === undefined || piece === undefined || !(fact.length > 0)) return [];
  const winding = windingDrop(site, supply, feeder);
  const asIs: HeldFeeder = {
    percent: fact.dropPercent + winding,
    dollars: 0,
    conductor: feeder.conductor,
    apply: (file) => file,
  };
  const { rules } = site;
  const { volts, phases } = byId(site.equipment).get(feeder.from)!;
  const { id: _id, at: _at, entry: _entry, rotation: _rotation, existing: _existing, ...made } = piece;
  const source = { ...(volts !== undefined && { volts }), ...(phases !== undefined && { phases }) };
  const whole = (conductor: Conductor, breakerAmps: number, kva: number | undefined): number => {
    const each = kva === undefined ? made : { ...made, kva };
    const price = trialPrice(rules, prices, { source, piece: each, conductor, breakerAmps });
    return price.itself + fact.length * (price.feeder + price.trench);
  };
  const now = whole(feeder.conductor, feeder.breakerAmps, piece.kva);
  const own = ohmsOf(rules, feeder.conductor);
  const lossOf = (conductor: Conductor, kva: number | undefined): number =>
    (fact.dropPercent * ohmsOf(rules, conductor)) / own + (winding * (piece.kva ?? 1)) / (kva ?? 1);
  const choice = (conductor: Conductor, to: HeldFeeder['transformer']): HeldFeeder => {
    const [kva, breakerAmps] = [to?.kva ?? piece.kva, to?.breakerAmps ?? feeder.breakerAmps];
    return {
      percent: lossOf(conductor, kva),
      dollars: whole(conductor, breakerAmps, kva) - now,
      conductor,
      ...(to && { transformer: to }),
      apply: (file) => {
        const grown = to ? withKva(file, to.id, to.kva, usualImpedance(designOf(rules).tables, to.kva)) : file;
        return withFeeder(grown, feeder.id, { conductor, breakerAmps });
      },
    };
  };
  const upFrom = (least: Conductor, kva: number | undefined) =>
    conductors(rules, least, (one) => lossOf(one, kva) <= asIs.percent - excess);
  const wider = canGrow.has(feeder.id) ? upFrom(feeder.conductor, piece.kva).map((one) => choice(one, undefined)) : [];
  const larger = canGrow.has(feeder.to) ? largerThan(rules, piece, volts) : [];
  return [
    asIs,
    ...wider,
    ...larger.flatMap((to) => {
      const asked = inTheGround(rules, to.breakerAmps, feeder.conductor.metal);
      const least = weightOf(rules, asked) > weightOf(rules, feeder.conductor) ? asked : feeder.conductor;
      return [least, ...upFrom(least, to.kva)].map((one) => choice(one, { id: piece.id, ...to }));
    }),
  ];
}

/** Larger conductors, and more of them in parallel, than some: of each size up to the first number that is enough. */
function conductors(
  rules: Rules,
  { size, metal, sets, insulation }: Conductor,
  isEnough: (one: Conductor) => boolean,
): readonly Conductor[] {
  const { tables } = designOf(rules);
  const mils = (one: string): number => circularMils(tables, one);
  const sizes = CONDUCTOR_SIZES.filter((one) => one === size || (mils(one) > mils(size) && mils(one) <= mils(LARGEST)));
  return sizes.flatMap((one) => {
    const all = Array.from({ length: MOST_SETS - sets + 1 }, (_, i): Conductor => {
      return { size: one, metal, sets: sets + i, insulation };
    }).filter((made) => made.sets === 1 || mils(one) >= mils(tables.least.parallel));
    const last = all.findIndex(isEnough);
    return all.slice(one === size ? 1 : 0, last < 0 ? all.length : last + 1);
  });
}

/** Circular mils of all that are in parallel. */
export const weightOf = (rules: Rules, { size, sets }: Conductor): number =>
  sets * circularMils(designOf(rules).tables, size);

/** Ohms that count for the drop, per 1000 ft and line. */
function ohmsOf(rules: Rules, { size, metal, sets }: Conductor): number {
  const { r, x } = findImpedance(designOf(rules).tables, size, metal, 'PVC') ?? { r: 1, x: 0 };
  const { powerFactor } = rules;
  return (r * powerFactor + x * Math.sqrt(1 - powerFactor ** 2)) / sets;
}

function largerThan(rules: Rules, { kind, kva, primaryVolts }: Equipment, volts: number | undefined) {
  const { tables } = designOf(rules);
  const primary = primaryVolts ?? volts;
  if (kind !== 'transformer' || kva === undefined || primary === undefined) return [];
  return tables.threePhaseTransformers.rows
    .filter((row) => row.kva > kva)
    .slice(0, MOST_LARGER)
    .map((row) => transformerFor(tables, row.kva, primary));
}

interface Trial {
  readonly source: Pick<Equipment, 'volts' | 'phases'>;
  readonly piece: Omit<Equipment, 'id' | 'at' | 'entry' | 'rotation'>;
  readonly conductor: Conductor;
  readonly breakerAmps: number;
}

const trialsOf = kept((_rules: Rules, _prices: PriceList): Map<string, FedPrice> => new Map());

/** What a piece with a feeder costs, worked once for all of a lot that are alike. */
function trialPrice(rules: Rules, prices: PriceList, trial: Trial): FedPrice {
  const known = trialsOf(rules, prices);
  const key = JSON.stringify(trial);
  const price =
    known.get(key) ??
    fedPrice(rules, prices, trial.source, trial.piece, { conductor: trial.conductor, breakerAmps: trial.breakerAmps });
  known.set(key, price);
  return price;
}

/** Percent of nominal that is lost in a transformer that a feeder ends at, of its worst pair of lines. */
function windingDrop(site: Site, supply: Plan['supply'], { from, to, id }: Feeder): number {
  const share = (name: string, nominal: number | undefined): number => {
    const volts = supply.equipment.find((one) => one.id === name)?.volts;
    return volts === undefined || nominal === undefined ? 1 : Math.min(volts.AB, volts.BC, volts.CA) / nominal;
  };
  const equipment = byId(site.equipment);
  const [ahead, own] = [equipment.get(from), equipment.get(to)];
  if (!ahead || own?.kind !== 'transformer') return 0;
  const lost = supply.feeders.find((one) => one.id === id)?.dropPercent ?? 0;
  const before = 100 * share(ahead.id, ahead.secondaryVolts ?? ahead.volts) - lost;
  return Math.max(0, before - 100 * share(to, own.secondaryVolts));
}

const withFeeder = (file: SiteFile, id: string, to: Partial<Pick<Feeder, 'conductor' | 'breakerAmps'>>): SiteFile => ({
  ...file,
  feeders: (file.feeders ?? []).map((one) => (one.id === id ? { ...one, ...to } : one)),
});

const withKva = (file: SiteFile, id: string, kva: number, impedancePercent: number): SiteFile => ({
  ...file,
  equipment: (file.equipment ?? []).map((one) => (one.id === id ? { ...one, kva, impedancePercent } : one)),
});
