import type { Site, SiteFile } from '../../routing/site/site.ts';
import { meanEnergy } from '../day/figures/day-figures.ts';
import { type DecidingDay, decidingFigures } from '../day/figures/deciding-day.ts';
import type { Alternative } from '../plan/compared/comparison.ts';
import { marginsOf } from '../plan/margins.ts';
import { servedStalls } from '../plan/served.ts';
import { feederProspects } from '../supply/feeders/feeder-prospects.ts';
import { SUMMED_LENGTHS, summedLength } from '../takeoff/totals.ts';
import { atFullRate } from './at-full-rate.ts';
import { closedBy } from './closed.ts';

/** A figure by which ways are compared. */
export interface FigureFact {
  readonly name: string;
  /** `ft` is rewritten to the units of the file on output. */
  readonly unit: 'dollars' | 'ft' | 'stalls' | 'days' | 'chargers' | 'kWh' | 'A' | 'spaces' | 'kVA' | '%' | 'findings';
  readonly better: 'less' | 'more';
  /** What it is, where its name does not say all. */
  readonly says: string;
}

/** In the order in which one would ask; every one of them has a say in which ways nothing beats. */
export const FIGURES = {
  price: { name: 'price', unit: 'dollars', better: 'less', says: 'the bid by the price list' },
  served: {
    name: 'stalls served',
    unit: 'stalls',
    better: 'more',
    says: 'with a run within limits and a cord that reaches',
  },
  fullRate: {
    name: 'chargers at full rate at once',
    unit: 'chargers',
    better: 'more',
    says: 'under the ceilings of load management',
  },
  energy: {
    name: 'energy a car gets in its stay',
    unit: 'kWh',
    better: 'more',
    says: 'of the charging day that decides, or all there at once; over all cars that come',
  },
  raceway: { name: 'branch raceway', unit: 'ft', better: 'less', says: SUMMED_LENGTHS.branchRaceway.says },
  trench: { name: 'trench', unit: 'ft', better: 'less', says: SUMMED_LENGTHS.trench.says },
  closed: {
    name: 'stalls closed',
    unit: 'stalls',
    better: 'less',
    says: 'dug up until the ground is whole again, or under work overhead, a few at a time',
  },
  stallDays: {
    name: 'stalls closed times days',
    unit: 'days',
    better: 'less',
    says: 'each stall for as long as it is closed',
  },
  days: { name: 'days of work', unit: 'days', better: 'less', says: 'hours of labor over those of the crew in a day' },
  spareAmps: { name: 'least spare amperes', unit: 'A', better: 'more', says: 'of any board or service' },
  spareSpaces: { name: 'spare spaces', unit: 'spaces', better: 'more', says: 'of the boards that feed chargers' },
  roomKva: {
    name: 'room at the higher voltage',
    unit: 'kVA',
    better: 'more',
    says: 'continuous, left on a standing feeder at more volts than the chargers have: for high-power chargers there',
  },
  reach: { name: 'worst cord margin', unit: 'ft', better: 'more', says: 'left of the cord at its farthest inlet' },
  drop: { name: 'worst drop', unit: '%', better: 'less', says: 'from the source to a box' },
  branch: { name: 'longest branch', unit: 'ft', better: 'less', says: 'conductors from the board to the box' },
  fails: { name: 'findings that fail', unit: 'findings', better: 'less', says: 'forced by the lot: which is said' },
  warns: { name: 'findings to check', unit: 'findings', better: 'less', says: '' },
} as const satisfies Readonly<Record<string, FigureFact>>;

export type WayFigure = keyof typeof FIGURES;
export const FIGURE_NAMES = Object.keys(FIGURES) as readonly WayFigure[];

/** The figures of a way: lengths in feet, money in dollars; null where it has none such. */
export type WayFigures = Readonly<Record<WayFigure, number | null>>;

/**
 * The figures of a way that is planned and priced.
 * @param fresh raceways that are laid in it
 * @param counted the same site with the days by which cars are counted, of which `day` decides
 */
export function wayFigures(
  { site, plan, cost }: Alternative,
  fresh: ReadonlySet<string>,
  counted: Site,
  day: DecidingDay | null,
): WayFigures {
  const closed = closedBy(site, fresh, cost);
  const margins = [...marginsOf(plan, site).values()];
  const feeding = new Set(site.chargers.map(({ from }) => from));
  const boards = plan.supply.equipment.filter(({ id }) => feeding.has(id));
  const count = (severity: string): number => plan.findings.filter((finding) => finding.severity === severity).length;
  return {
    price: cost.price,
    served: servedStalls(plan, site.rules).size,
    fullRate: atFullRate(site),
    energy: energyOf(counted, day),
    raceway: summedLength(plan.takeoff, SUMMED_LENGTHS.branchRaceway),
    trench: summedLength(plan.takeoff, SUMMED_LENGTHS.trench),
    closed: closed.dug + closed.under,
    stallDays: closed.stallDays,
    days: closed.days,
    spareAmps: least(plan.supply.equipment.map(({ spareAmps }) => spareAmps)),
    spareSpaces: summed(boards.map(({ spareSpaces }) => spareSpaces)),
    roomKva: roomOf(site),
    reach: least(margins.map(({ cord }) => cord?.left)),
    drop: greatest(plan.circuits.map(({ worstDropPercent }) => worstDropPercent)),
    branch: greatest(plan.runs.map(({ conductorLength }) => conductorLength)),
    fails: count('fail'),
    warns: count('warn'),
  };
}

const known = (values: readonly (number | null | undefined)[]): readonly number[] =>
  values.flatMap((value) => (value == null || !Number.isFinite(value) ? [] : [value]));
const least = (values: readonly (number | null | undefined)[]): number | null =>
  known(values).reduce<number | null>((low, value) => (low === null ? value : Math.min(low, value)), null);
const greatest = (values: readonly (number | null | undefined)[]): number | null =>
  known(values).reduce<number | null>((high, value) => (high === null ? value : Math.max(high, value)), null);
const summed = (values: readonly (number | undefined)[]): number | null =>
  known(values).length === 0 ? null : known(values).reduce((sum, value) => sum + value, 0);

/** kVA left on standing feeders that work at more volts than the chargers beyond them. */
const roomOf = (site: Site): number =>
  feederProspects(site).reduce((sum, prospects) => {
    const now = prospects.ok && prospects.wish.chargers > 0 ? prospects.ways.find(({ asItIs }) => asItIs) : undefined;
    return now === undefined || now.volts <= now.chargerVolts ? sum : sum + Math.max(0, now.leftKva.onFeeder);
  }, 0);

/**
 * The file with the day by which its cars are counted: those of its own, or one on which so many cars are there at once
 * for some hours.
 */
export const withDay = (file: SiteFile, cars: number, hours: number): SiteFile =>
  file.days?.length ? file : { ...file, days: [stayDay(cars, hours)] };

/** What a car gets on the day that decides; null where it cannot be worked. */
function energyOf(counted: Site, day: DecidingDay | null): number | null {
  const figures = day === null ? undefined : decidingFigures(counted, day);
  return figures === undefined || figures.cars === 0 ? null : meanEnergy(figures);
}

/** More than any car takes in a stay, kWh: what it gets is then what its charger gives. */
const ALL = 2000;
const BEGINS = 6;

function stayDay(cars: number, hours: number): NonNullable<SiteFile['days']>[number] {
  const clock = (at: number): string => {
    const minutes = Math.round(at * 60) % 1440;
    return `${String(Math.floor(minutes / 60)).padStart(2, '0')}:${String(minutes % 60).padStart(2, '0')}`;
  };
  const [arrive, leave] = [clock(BEGINS), clock(BEGINS + hours)];
  const car = { arrive, leave, kwh: ALL };
  return { id: 'STAY', from: arrive, to: leave, step: 15, cars: Array.from({ length: cars }, () => car) };
}
