import { RATE_FACTS } from './rate-facts.ts';

export type Rate = keyof typeof RATE_FACTS;
export const RATES = Object.keys(RATE_FACTS) as readonly Rate[];

/** The rates that a list has to give; the others add nothing where it is silent. */
const NEEDED = ['labor', 'height', 'overhead', 'margin'] as const;
export const NEEDED_RATES: readonly Rate[] = NEEDED;
export type Rates = Readonly<Record<(typeof NEEDED)[number], number>> & { readonly [rate in Rate]?: number };

/** Some hands of one wage in the crew that does the work. */
export interface CrewMember {
  readonly trade: string;
  /** Dollars an hour, before burden. */
  readonly wage: number;
  /** Hands of this trade in the crew. */
  readonly count: number;
}

/** Every rate with a value. The lift's factor is the ladder's where a list has none. */
export function ratesOf(rates: Rates): Readonly<Record<Rate, number>> {
  const all = Object.fromEntries(RATES.map((rate) => [rate, rates[rate] ?? RATE_FACTS[rate].without]));
  return { ...(all as Record<Rate, number>), lift: rates.lift ?? rates.height };
}

/** Dollars an hour of a crew on average, burden on top; to the cent, as it is shown. */
export function crewRate(crew: readonly CrewMember[], burden: number): number {
  const hands = crew.reduce((sum, { count }) => sum + count, 0);
  const wages = crew.reduce((sum, { wage, count }) => sum + wage * count, 0);
  return hands > 0 ? Math.round((wages / hands) * (1 + burden) * 100) / 100 : 0;
}
