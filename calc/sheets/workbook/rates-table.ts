import type { PriceList } from '../../prices/price-list.ts';
import { RATE_FACTS } from '../../prices/rate-facts.ts';
import { RATES, type Rate, ratesOf } from '../../prices/rates.ts';
import { type LiveCell, type LiveTable, live, money, type Shown } from './live.ts';

const SHOWN: Readonly<Record<(typeof RATE_FACTS)[Rate]['kind'], Shown>> = {
  dollars: 'money',
  share: 'share',
  factor: 'figure',
  count: 'figure',
};

/** The cell of a rate: `rates!$B$2`. */
export const rateCell = (rate: Rate): string => `rates!$B$${RATES.indexOf(rate) + 2}`;

/** Every rate with what it is by, each under a name; where there is a crew, the labor rate follows from it. */
export function ratesTable({ rates, crew = [] }: PriceList): LiveTable {
  const all = ratesOf(rates);
  const first = RATES.length + 3;
  const last = first + crew.length - 1;
  const [wages, hands] = [`B${first}:B${last}`, `C${first}:C${last}`];
  const ofCrew = `ROUND(SUMPRODUCT(${wages},${hands})/SUM(${hands})*(1+${rateCell('burden')}),2)`;
  return {
    name: 'rates',
    rows: [
      ['rate', 'value', 'hands', 'basis'],
      ...RATES.map((rate): LiveCell[] => {
        const { words, kind, basis } = RATE_FACTS[rate];
        const formula = rate === 'labor' && crew.length > 0 ? ofCrew : undefined;
        return [words, live(all[rate], SHOWN[kind], formula), null, basis];
      }),
      [],
      ...crew.map(({ trade, wage, count }): LiveCell[] => [
        `crew: ${trade}`,
        money(wage),
        live(count, 'figure'),
        'wage an hour before burden, and how many',
      ]),
    ],
    names: RATES.map((rate) => ({ name: `rate_${rate}`, at: rateCell(rate) })),
  };
}
