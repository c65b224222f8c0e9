import type { CostSheet } from '../../takeoff/bid/cost.ts';
import { whatIf } from '../../takeoff/bid/what-if.ts';
import { MULTIPLIERS } from './bid-table.ts';
import { type LiveCell, type LiveTable, live, money } from './live.ts';

/** Signs of the longest bar. */
const LONGEST = 40;

/** What moves the price most, with a bar for each: change its share, or the bid, and the bars follow. */
export function whatIfTable(cost: CostSheet, names: ReadonlyMap<string, string>): LiveTable {
  const cases = whatIf(cost);
  const last = cases.length + 1;
  const longest = Math.max(...cases.map(({ moves }) => Math.abs(moves)), 1e-9);
  const [onMaterial, onLabor] = [MULTIPLIERS.material, MULTIPLIERS.labor].map((name) => names.get(name)!);
  return {
    name: 'what-if',
    rows: [
      ['if it is more', 'by', 'material ($)', 'labor ($)', 'the price moves by ($)', 'picture'],
      ...cases.map(({ name, by, material, labor, moves }, i): LiveCell[] => {
        const line = i + 2;
        return [
          name,
          live(by, 'share'),
          money(material),
          money(labor),
          money(moves, `B${line}*(C${line}*${onMaterial}+D${line}*${onLabor})`),
          {
            value: null,
            shown: 'figure',
            formula: `REPT("█",ROUND(ABS(E${line})/MAX(MAX(E$2:E$${last}),-MIN(E$2:E$${last}),0.01)*${LONGEST},0))`,
            words: '█'.repeat(Math.round((Math.abs(moves) / longest) * LONGEST)),
          },
        ];
      }),
    ],
  };
}
