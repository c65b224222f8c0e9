import type { Electrode, Metal } from '../../routing/site/schema/vocabulary.ts';
import { ELECTRODE_WORDS } from '../../routing/site/schema/vocabulary.ts';
import type { CodeTables } from '../tables/code-tables.ts';
import { cited } from '../tables/sections.ts';
import { compareSizes } from '../tables/sizes.ts';
import { SILENT, type Tell } from '../words/explain.ts';
import { measured } from '../words/measured.ts';
import { conductorWords, rowFor, type SupplyConductor, supplyMils } from './supply-conductor.ts';

export interface ElectrodeInput {
  /** Largest ungrounded conductor of the supply, all that are in parallel. */
  readonly conductor: SupplyConductor;
  /** Of the conductor to the electrode. */
  readonly metal: Metal;
  /** What it goes to, and to nothing further; as to structural steel where it is not said. */
  readonly electrode?: Electrode | undefined;
}

/**
 * Conductor to a grounding electrode (250.66; of a separately derived system by its 250.30). One that goes to rods, a
 * concrete-encased electrode or a ring alone need be no larger than the code says of those; a ring counts as the least
 * there is. RangeError for a conductor that the tables lack.
 * @example
 * // NEC 2023 Table 250.66: over 600 through 1100 kcmil copper, 2/0; 250.66(A): to rods no larger than 6 AWG
 * electrodeConductor(NEC, { conductor: { size: '500', metal: 'copper', sets: 2 }, metal: 'copper' }).size // '2/0'
 * electrodeConductor(NEC, { conductor: { size: '500', metal: 'copper' }, metal: 'copper', electrode: 'rods' }).size // '6'
 */
export function electrodeConductor(
  tables: CodeTables,
  { conductor, metal, electrode = 'building-steel' }: ElectrodeInput,
  tell: Tell = SILENT,
): { readonly size: string } {
  const mils = supplyMils(tables, conductor);
  const { rows, most, source } = tables.electrodeConductors;
  const row = rowFor(rows, mils, conductor.metal);
  if (row === undefined) throw new RangeError(`${source} has no row for ${conductorWords(conductor)}`);
  tell(() => ({
    find: 'electrode conductor by the table',
    formula: 'by the circular mils of the largest ungrounded conductor, those in parallel added up',
    values: {
      conductor: conductorWords(conductor),
      'circular mils': measured(mils, 'cmil'),
      'electrode conductor': metal,
    },
    result: row[metal],
    source,
  }));
  const enough = most[electrode]?.[metal] ?? null;
  if (enough === null || compareSizes(enough, row[metal]) >= 0) return { size: row[metal] };
  tell(() => ({
    find: 'electrode conductor',
    formula: `where it goes to ${ELECTRODE_WORDS[electrode]} alone it need be no larger`,
    values: { 'by the table': row[metal], 'no larger than': `${enough} ${metal}` },
    result: enough,
    source: `${cited(tables, 'electrodeMost')}${electrode === 'ring' ? '; that the least ring is of that size is from memory' : ''}`,
  }));
  return { size: enough };
}
