import type { PriceList } from '../../prices/price-list.ts';
import { RATE_FACTS } from '../../prices/rate-facts.ts';
import { type Rate, ratesOf } from '../../prices/rates.ts';
import { cents, sumOf } from './money.ts';

/** One line of the bid below the bill: an addition, in the order in which they are laid on. */
export interface BidLine {
  /** Rate that it comes from; null of an allowance. */
  readonly rate: Rate | null;
  readonly name: string;
  /** Dollars that the rate is laid on, or days, or 1. */
  readonly of: number;
  /** The rate itself. */
  readonly by: number;
  readonly dollars: number;
}

/** What a bill comes to as a bid: `additions` to the direct cost, then what is laid on the sums. */
export interface Bid {
  readonly additions: readonly BidLine[];
  /** The bill and the additions. */
  readonly direct: number;
  readonly contingency: number;
  readonly overhead: number;
  readonly margin: number;
  readonly bond: number;
  readonly price: number;
  /** What a dollar more of material, and of labor, comes to in the price. */
  readonly multipliers: { readonly material: number; readonly labor: number };
  /** Days that a lift is there, and days of traffic control. */
  readonly liftDays: number;
  readonly trafficDays: number;
}

/** What the bill comes to, dollars, and the hours in it that are worked from a lift and on the ground's system. */
export interface BillSums {
  readonly material: number;
  readonly labor: number;
  readonly liftHours: number;
  readonly groundHours: number;
}

/** What a dollar more of material and of labor, and an hour more that is paid by the day, come to in the price of a bid. */
export interface BidWeights {
  readonly material: number;
  readonly labor: number;
  readonly liftHour: number;
  readonly groundHour: number;
}

/** Whole days that so many hours of labor take, at so many hours a day; none where a day has none. */
export const wholeDays = (hours: number, hoursADay: number): number =>
  hours > 0 && hoursADay > 0 ? Math.ceil(hours / hoursADay - 1e-9) : 0;

/**
 * Material and labor of a bill as a bid: tax, freight and consumables on material, small tools on labor, lifts by the day,
 * permits on what that comes to, mobilization, traffic control once and by the day (each day that is dug or that a lift is
 * there: its devices and its flaggers) and allowances as they stand: the direct cost. On it
 * contingency, on both overhead, on all margin, on that the bond. Each to the cent, so that they are the sum that is shown.
 */
export function bidOf({ material, labor, liftHours, groundHours }: BillSums, list: PriceList): Bid {
  const rates = ratesOf(list.rates);
  const cost = sumOf([material, labor]);
  const liftDays = wholeDays(liftHours, rates.liftHours);
  const trafficDays = liftDays + wholeDays(groundHours, rates.trafficHours);
  const aDay = trafficDayOf(rates);
  const line = (rate: Rate, of: number, name = nameOf(rate)): BidLine => ({
    rate,
    name,
    of,
    by: rates[rate],
    dollars: cents(of * rates[rate]),
  });
  const onBill = [
    line('tax', material),
    line('freight', material),
    line('consumables', material),
    line('tools', labor),
    line('liftDay', liftDays, 'lift rental'),
  ];
  const worked = sumOf([cost, ...onBill.map(({ dollars }) => dollars)]);
  const additions = [
    ...onBill,
    line('permits', worked),
    // What stands as it is comes with a job, and there is none without work.
    line('mobilization', cost > 0 ? 1 : 0),
    line('traffic', cost > 0 ? 1 : 0),
    { ...line('trafficDay', trafficDays, 'traffic control by the day'), by: aDay, dollars: cents(trafficDays * aDay) },
    ...(list.allowances ?? []).map(
      ({ name, dollars }): BidLine => ({
        rate: null,
        name: `allowance: ${name}`,
        of: 1,
        by: dollars,
        dollars: cents(dollars),
      }),
    ),
  ];
  const direct = sumOf([cost, ...additions.map(({ dollars }) => dollars)]);
  const contingency = cents(direct * rates.contingency);
  const overhead = cents(sumOf([direct, contingency]) * rates.overhead);
  const margin = cents(sumOf([direct, contingency, overhead]) * rates.margin);
  const before = sumOf([direct, contingency, overhead, margin]);
  const bond = cents(before * rates.bond);
  const { material: onMaterial, labor: onLabor } = bidWeights(list);
  const price = sumOf([before, bond]);
  return {
    additions,
    direct,
    contingency,
    overhead,
    margin,
    bond,
    price,
    multipliers: { material: onMaterial, labor: onLabor },
    liftDays,
    trafficDays,
  };
}

/**
 * What is laid on a bill, as factors: the price of `bidOf` but for what comes with any job, with lifts and traffic control
 * by the parts of their days that the hours take, so that it goes up evenly with each hour.
 */
export function bidWeights(list: PriceList): BidWeights {
  const rates = ratesOf(list.rates);
  const onDirect = (1 + rates.contingency) * (1 + rates.overhead) * (1 + rates.margin) * (1 + rates.bond);
  const onAll = (1 + rates.permits) * onDirect;
  const anHour = (dollars: number, hours: number): number => (hours > 0 ? dollars / hours : 0);
  const aDay = trafficDayOf(rates);
  return {
    material: (1 + rates.tax + rates.freight + rates.consumables) * onAll,
    labor: (1 + rates.tools) * onAll,
    liftHour: anHour(rates.liftDay * onAll + aDay * onDirect, rates.liftHours),
    groundHour: anHour(aDay * onDirect, rates.trafficHours),
  };
}

/** Dollars of a day of traffic control, its devices and its flaggers. */
const trafficDayOf = (rates: ReturnType<typeof ratesOf>): number =>
  rates.trafficDay + rates.flaggers * rates.flagger * rates.flaggerHours;

/** `tax`, `small tools`: what a rate is, without what it is a share of. */
const nameOf = (rate: Rate): string => RATE_FACTS[rate].words.replace(/,.*$/, '');
