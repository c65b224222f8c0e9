import { printTotal } from '../../../routing/site/numbers/feet-inches.ts';
import type { Units } from '../../../routing/site/schema/vocabulary.ts';
import type { TakeoffRow } from '../../plan-file/takeoff.ts';
import { STICK } from '../../prices/spec.ts';
import { packageOf } from './packages.ts';
import { packWords } from './purchase.ts';

/** What is bought for a row, and what of that is left over; both empty for what is work. */
export interface BuyWords {
  readonly buy: string;
  readonly left: string;
}

const WORK: BuyWords = { buy: '', left: '' };

/** A row as the trade buys it: sticks, reels, lengths, full packs and pieces. Lengths in `units`. */
export function buyWords(row: TakeoffRow, units: Units): BuyWords {
  const { item, spec, quantity, unit, bought, parts } = row;
  if (packageOf(item) === null) return WORK;
  if (bought !== undefined) {
    const { quantity: feet, stock, left } = bought;
    return { buy: `${printTotal(feet, units)}${stocksIn(feet, stock, units)}`, left: feetLeft(left, units) };
  }
  const buy = Math.ceil(quantity - 1e-9);
  const left = buy - parts.reduce((sum, part) => sum + part.quantity, 0);
  if (unit === 'ft') return { buy: printTotal(buy, units), left: feetLeft(left, units) };
  const packs = packWords(item, spec, buy);
  return { buy: `${buy.toLocaleString('en-US')}${packs && `: ${packs}`}`, left: left > LEAST ? left.toFixed(1) : '' };
}

/** Less than this is nothing left. */
const LEAST = 0.05;
const feetLeft = (feet: number, units: Units): string => (feet > LEAST ? printTotal(feet, units) : '');

/** `: 5 reels of 500 ft`; its share of them where rows are cut from the same. */
function stocksIn(feet: number, stock: number, units: Units): string {
  if (stock === 0) return ', cut to length';
  const many = feet / stock;
  const whole = Math.round(many);
  const called = stock === STICK ? 'stick' : 'reel';
  const long = printTotal(stock, units);
  // What lies on no whole number of them shares the last with another row, or is in part ordered to length.
  if (Math.abs(many - whole) > 1e-6) return `, of ${called}s of ${long}`;
  return `: ${whole.toLocaleString('en-US')} ${called}${whole === 1 ? '' : 's'} of ${long}`;
}
