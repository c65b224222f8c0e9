import { type Cell, csv } from '../../calc/sheets/csv.ts';
import { runsSheet } from '../../calc/sheets/runs-sheet.ts';
import { takeoffSheet } from '../../calc/sheets/takeoff-sheet.ts';
import type { DocumentState } from '../document/document-state.ts';
import { download, fileNameOf } from '../document/files.ts';

export interface Sheet {
  readonly name: string;
  readonly make: (state: DocumentState) => void;
}

/** What can be taken out of a plan, by the name under which the menu has it. */
export const SHEETS: readonly Sheet[] = [
  { name: 'Runs, as CSV', make: (state) => save(state, 'runs', runsSheet(state.site, state.plan)) },
  { name: 'Takeoff, as CSV', make: (state) => save(state, 'takeoff', takeoffSheet(state.site, state.plan)) },
];

function save({ name }: DocumentState, sheet: string, rows: readonly (readonly Cell[])[]): void {
  download(fileNameOf(name).replace(/\.site\.json$/, `.${sheet}.csv`), 'text/csv;charset=utf-8', csv(rows));
}
