import type { Table } from '../kit/tables/table.ts';

const ABBREVIATIONS: readonly (readonly [string, string])[] = [
  ['A', 'amperes; line A'],
  ['ACC, VAN, AMB', 'accessible, van-accessible, ambulatory stall'],
  ['AWG, #', 'American wire gauge'],
  ['C-001', 'first calculation of the calculation packet'],
  ['deg, °', 'degrees'],
  ['(E)', 'existing'],
  ['EMT', 'electrical metallic tubing'],
  ['EV', 'electric vehicle'],
  ['G', 'equipment grounding conductor'],
  ['IMC', 'intermediate metal conduit'],
  ['J1', 'first junction box of a home run: P1-3.J1'],
  ['kcmil', 'thousand circular mils'],
  ['kVA, VA', 'kilovolt-amperes, volt-amperes'],
  ['LFMC', 'liquidtight flexible metal conduit'],
  ['N', 'neutral; north'],
  ['P', 'poles: 40 A 2P'],
  ['pilot', 'control pilot conductor of a charger'],
  ['PVC40, PVC80', 'rigid PVC conduit, schedule 40 or 80'],
  ['P1-1,3', 'circuit on spaces 1 and 3 of panel P1'],
  ['P1-3.2', 'second conduit of the third home run of P1'],
  ['RMC', 'rigid metal conduit'],
  ['SSBJ', 'supply-side bonding jumper'],
  ['X/R', 'reactance over resistance'],
  ['Z', 'impedance of a transformer'],
];

/** What the abbreviations of the set stand for. */
export const abbreviationTable = (width: number): Table => ({
  short: 'abbreviations',
  title: 'Abbreviations',
  width,
  columns: [{ head: 'Sign' }, { head: 'Meaning' }],
  rows: ABBREVIATIONS,
});
