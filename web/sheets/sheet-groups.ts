import type { SheetName } from '../../calc/sheets/sheet-names.ts';

/** Headings under which the menu lists the sheets. */
export const GROUPS: Readonly<Record<SheetName['group'], string>> = {
  tables: 'Tables',
  drawings: 'Drawings',
  models: 'Models and data',
};
