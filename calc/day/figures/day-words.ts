import type { Strategy } from '../rules/rules.ts';
import { SHORT } from '../simulated/outcome.ts';

/** What the rules are called where a person reads them. */
export const STRATEGY_WORDS: Readonly<Record<Strategy, string>> = {
  unmanaged: 'without management',
  equal: 'equal shares',
  first: 'first come, first charged',
  deadline: 'who leaves first charges first',
  laxity: 'least time to spare charges first',
};

/** Where a car stands that stands nowhere: every stall is taken, or its stay holds no whole step of the day. */
export const NO_STALL = 'no free stall';
export const NO_STEP = 'not there for a step';

export const energyWords = (kwh: number): string => `${kwh.toFixed(1)} kWh`;

/** What a car lacks: what counts as short is never written as nothing. */
export const lackWords = (kwh: number): string => (kwh > SHORT && kwh < 0.05 ? 'less than 0.1 kWh' : energyWords(kwh));
