import { siteRule } from '../../routing/site/rules/rule-notes.ts';
import type { Charger, Rules } from '../../routing/site/site.ts';
import type { CodeTables } from '../tables/code-tables.ts';
import { RACEWAY_KINDS, type RacewayKind } from '../tables/table.ts';
import { SILENT, type Tell } from '../words/explain.ts';
import { measured } from '../words/measured.ts';
import type { Surroundings } from './ampacity.ts';
import { type BranchChoice, branchChoices, tellChoice } from './branch-choices.ts';
import { branchDrop } from './line-drop.ts';
import { DROP_FORMULAS } from './voltage-drop.ts';

/** Conductor length of a branch by what its raceways are made of, ft, allowances included. */
export type LengthByKind = Readonly<Partial<Record<RacewayKind, number>>>;

/** Breaker, conductors and voltage drop of one branch. */
export interface BranchSize {
  readonly choice: BranchChoice;
  /** Ohms of one line, end to end. */
  readonly ohms: { readonly r: number; readonly x: number };
  /** Of the charger's nominal volts. */
  readonly dropPercent: number;
}

/** Most drop that a charger's branch may have: its own limit, else that of the site; percent. */
export const branchDropLimit = (
  { dropLimit }: Pick<Rules, 'dropLimit'>,
  { branchDrop }: Pick<Charger, 'branchDrop'>,
): number => branchDrop ?? dropLimit.branch;

/** Where the limit on the drop of a charger's branch comes from. */
export const branchDropSource = ({ branchDrop }: Pick<Charger, 'branchDrop'>): string =>
  branchDrop === undefined ? siteRule('dropLimit.branch') : 'the charger’s own limit on its branch drop';

/**
 * Sizes the branch of a charger: breaker at 125% of its amps, the smallest conductor that may carry it where it runs,
 * grown until the drop is within its own limit or else `rules.dropLimit.branch`, or to the largest size where none is. The drop is that of
 * phasors, in percent of the charger's nominal volts. Null where the tables hold no breaker or no single conductor for
 * the load.
 */
export function branchSize(
  tables: CodeTables,
  rules: Rules,
  charger: Charger,
  surroundings: Surroundings,
  lengths: LengthByKind,
  tell: Tell = SILENT,
): BranchSize | null {
  const choices = branchChoices(tables, rules, charger.amps, surroundings);
  const { phases, volts, amps } = charger;
  const { powerFactor } = rules;
  const limit = branchDropLimit(rules, charger);
  let size: BranchSize | null = null;
  for (const choice of choices) {
    const ohms = lineOhms(choice, lengths);
    // Written out: thousands of branches are sized, several times each, and copying by spread shows in the time.
    const { dropPercent } = branchDrop({ phases, volts, amps, powerFactor, r: ohms.r, x: ohms.x });
    size = { choice, ohms, dropPercent };
    if (dropPercent <= limit) break;
  }
  if (size === null) return null;
  if (tell !== SILENT) {
    tellChoice(tables, rules, charger.amps, surroundings, size.choice, tell);
    tellDrop(tables, rules, charger, { ...size, lengths }, tell);
  }
  return size;
}

function lineOhms({ impedance }: BranchChoice, lengths: LengthByKind): { r: number; x: number } {
  let r = 0;
  let x = 0;
  for (const kind of RACEWAY_KINDS) {
    const feet = lengths[kind];
    if (feet === undefined) continue;
    r += (impedance[kind].r * feet) / 1000;
    x += (impedance[kind].x * feet) / 1000;
  }
  return { r, x };
}

function tellDrop(
  tables: CodeTables,
  rules: Rules,
  charger: Charger,
  { choice, ohms, dropPercent, lengths }: BranchSize & { readonly lengths: LengthByKind },
  tell: Tell,
): void {
  const { metal, powerFactor } = rules;
  const { amps, phases, volts } = charger;
  const { size } = choice.conductor;
  const limit = `${branchDropLimit(rules, charger)}%`;
  const from = branchDropSource(charger);
  tell(() => ({
    find: 'resistance and reactance of one line',
    formula: 'ohms per 1000 ft in each kind of raceway x conductor length in it / 1000, added up',
    values: {
      conductor: `${size} ${metal}`,
      ...Object.fromEntries(Object.entries(lengths).map(([kind, feet]) => [`length in ${kind}`, measured(feet, 'ft')])),
    },
    result: `${measured(ohms.r, 'ohm')} + j${measured(ohms.x, 'ohm')}`,
    source: tables.impedances.source,
  }));
  tell(() => ({
    find: 'voltage drop of the branch',
    formula: DROP_FORMULAS.exact,
    values: {
      volts: measured(volts, 'V'),
      amperes: measured(amps, 'A'),
      'power factor': powerFactor,
      k: phases === 3 ? 'sqrt 3' : '2, there and back',
      limit,
    },
    result: dropPercent,
    unit: '%',
    source: `Ohm's law; ${from}`,
  }));
  if (choice.sizedBy === 'voltage drop')
    tell(() => ({
      find: 'conductor grown for voltage drop',
      formula: 'the next sizes up until the drop is within its limit',
      values: { limit },
      result: size,
      source: `${tables.dropAdvice.source}; ${from}`,
    }));
}
