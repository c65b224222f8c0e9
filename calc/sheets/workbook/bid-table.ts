import type { Alternative } from '../../plan/compared/comparison.ts';
import { SUBTOTALS, subtotals } from '../../plan/compared/subtotals.ts';
import { unitFigures } from '../../plan/compared/unit-figures.ts';
import type { Rate } from '../../prices/rates.ts';
import { CAUTIONS } from '../../words/cautions.ts';
import { priceStanding } from '../cost/cost-sheet.ts';
import { costColumn } from './cost-table.ts';
import { canBeDealt, dealtColumn } from './dealt-table.ts';
import { hours, type LiveCell, type LiveName, type LiveTable, live, money } from './live.ts';
import { rateCell } from './rates-table.ts';

/** Multipliers on a dollar of material and of labor, up to the price: lifts by the day aside. */
export const MULTIPLIERS = { material: 'multiplier_material', labor: 'multiplier_labor' } as const;

/** The bid of the workbook: every line a formula of the bill and the rates, down to the price. */
export function bidTable(priced: Alternative): LiveTable {
  const { cost } = priced;
  const { list } = cost;
  const count = cost.rows.length + cost.missing.length;
  const rows: LiveCell[][] = [['line', 'amount ($)', 'hours', 'how']];
  const names: LiveName[] = [];
  /** Puts a line, and gives the cell of its amount. */
  const put = (name: string, amount: LiveCell, how: string, called?: string): string => {
    rows.push([name, amount, null, how]);
    const at = `bid!$B$${rows.length}`;
    if (called) names.push({ name: called, at });
    return at;
  };
  const share = (of: string, rate: Rate): string => `ROUND(${of}*${rateCell(rate)},2)`;
  const column = (name: Parameters<typeof costColumn>[0]): string => costColumn(name, count);

  const material = put('material', money(cost.material, `SUM(${column('material')})`), 'sum of the bill');
  const labor = put('labor', money(cost.labor, `SUM(${column('labor')})`), 'sum of the bill');
  const bill = put('sum of rows', money(cost.cost, `${material}+${labor}`), 'material and labor', 'bill');
  const firstAdded = rows.length + 1;
  const liftHours = `SUMPRODUCT(${column('lift')},${column('unitHours')},${column('repetition')})*${rateCell('lift')}`;
  const wholeDays = (worked: string, rate: Rate): string =>
    `IF(${rateCell(rate)}>0,ROUNDUP(MAX((${worked})/${rateCell(rate)}-0.000000001,0),0),0)`;
  const days = wholeDays(liftHours, 'liftHours');
  const groundHours = `SUMIF(${column('system')},"ground",${column('hours')})`;
  const aDay = `${rateCell('trafficDay')}+${rateCell('flaggers')}*${rateCell('flagger')}*${rateCell('flaggerHours')}`;
  const formulas: Partial<Record<Rate, (worked: string) => string>> = {
    tax: () => share(material, 'tax'),
    freight: () => share(material, 'freight'),
    consumables: () => share(material, 'consumables'),
    tools: () => share(labor, 'tools'),
    liftDay: () => `ROUND(${days}*${rateCell('liftDay')},2)`,
    permits: (worked) => share(worked, 'permits'),
    mobilization: () => `IF(${bill}>0,${rateCell('mobilization')},0)`,
    traffic: () => `IF(${bill}>0,${rateCell('traffic')},0)`,
    trafficDay: () => `ROUND((${days}+${wholeDays(groundHours, 'trafficHours')})*(${aDay}),2)`,
  };
  const HOW: Partial<Record<Rate, string>> = {
    liftDay: `${cost.liftDays} days when this was written`,
    trafficDay: `${cost.trafficDays} days when this was written: those that are dug and those of the lift`,
    permits: 'share of what stands above',
    mobilization: 'once',
    traffic: 'once',
  };
  for (const { rate, name, dollars } of cost.additions) {
    const above = rows.length === firstAdded - 1 ? bill : `(${bill}+SUM(bid!$B$${firstAdded}:$B$${rows.length}))`;
    if (rate === null) put(name, money(dollars), 'as it stands; change it here');
    else put(name, money(dollars, formulas[rate]!(above)), HOW[rate] ?? 'share');
  }
  const direct = put(
    'direct cost',
    money(cost.direct, `${bill}+SUM(bid!$B$${firstAdded}:$B$${rows.length})`),
    'the bill and what stands between',
    'direct_cost',
  );
  const contingency = put('contingency', money(cost.contingency, share(direct, 'contingency')), 'share of direct cost');
  const overhead = put(
    'overhead',
    money(cost.overhead, share(`(${direct}+${contingency})`, 'overhead')),
    'share of direct cost and contingency',
  );
  const margin = put(
    'margin',
    money(cost.margin, share(`(${direct}+${contingency}+${overhead})`, 'margin')),
    'share of what stands above',
  );
  const whole = `${direct}+${contingency}+${overhead}+${margin}`;
  const bond = put('bonds', money(cost.bond, share(`(${whole})`, 'bond')), 'share of what stands above');
  const price = put('price', money(cost.price, `${whole}+${bond}`), `by ${list.name}`, 'price');
  rows.push([]);
  for (const { name, unit, value } of unitFigures(priced)) {
    if (value === null || unit !== 'dollars') continue;
    // What the price is divided by does not change with prices.
    const by = cost.price / value;
    const many = Math.abs(by - Math.round(by)) < 0.01 ? Math.round(by) : Number(by.toPrecision(6));
    put(name, money(value, `ROUND(${price}/${many},2)`), `over ${many}`);
  }
  rows.push([]);
  const isDealt = canBeDealt(priced);
  for (const by of SUBTOTALS)
    for (const sum of subtotals(priced, by)) {
      const of = criterion(sum.name);
      const summed = (what: 'cost' | 'hours'): string =>
        by === 'system'
          ? `SUMIF(${column('system')},${of},${column(what)})`
          : `SUMIF(${dealtColumn(priced, by)},${of},${dealtColumn(priced, what)})`;
      rows.push(
        by === 'system' || isDealt
          ? [`by ${by}: ${sum.name}`, money(sum.cost, summed('cost')), hours(sum.hours, summed('hours')), 'worked']
          : [
              `by ${by}: ${sum.name}`,
              money(sum.cost),
              hours(sum.hours),
              'as it was written: too many elements to carry',
            ],
      );
    }
  rows.push([]);
  const onAll = `(1+${rateCell('permits')})*(1+${rateCell('contingency')})*(1+${rateCell('overhead')})*(1+${rateCell('margin')})*(1+${rateCell('bond')})`;
  const onMaterial = `(1+${rateCell('tax')}+${rateCell('freight')}+${rateCell('consumables')})*${onAll}`;
  for (const [words, value, formula, name] of [
    ['a dollar of material in the price', cost.multipliers.material, onMaterial, MULTIPLIERS.material],
    ['a dollar of labor in the price', cost.multipliers.labor, `(1+${rateCell('tools')})*${onAll}`, MULTIPLIERS.labor],
  ] as const) {
    rows.push([words, live(value, 'figure', formula), null, 'with all that is laid on it']);
    names.push({ name, at: `bid!$B$${rows.length}` });
  }
  rows.push([], ...priceStanding(cost).map((says): LiveCell[] => [says]), [CAUTIONS]);
  return { name: 'bid', rows, names };
}

/** A name as what a cell must be to be summed: its signs that stand for others, or compare, are themselves. */
const criterion = (name: string): string => {
  const plain = name.replace(/[~*?]/g, '~$&').replaceAll('"', '""');
  return `"${/^[=<>]/.test(name) ? '=' : ''}${plain}"`;
};
