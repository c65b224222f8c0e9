/** One file that a plan can be written to, by name: what a menu lists without the writers. */
export interface SheetName {
  /** What stands after the site's name, such as `.runs.csv`. */
  readonly ending: string;
  readonly says: string;
  /** What kind of sheet it is, as a list of them is divided. */
  readonly group: 'tables' | 'drawings' | 'models';
  readonly type: string;
}

/** The tables of the plan: a CSV file each, and a sheet of the workbook. */
export const TABLE_NAMES = [
  'runs',
  'conduits',
  'panels',
  'load',
  'coordination',
  'arc-flash',
  'feeder-options',
  'takeoff',
  'cuts',
  'pull-schedule',
  'purchase',
  'cost',
  'bid',
  'setting-out',
  'checklist',
  'open-items',
  'commissioning',
  'steel-loads',
  'accessible',
  'day-summary',
  'day-load',
  'day-cars',
  'day-meters',
] as const;
export type TableName = (typeof TABLE_NAMES)[number];

/** Where the name alone would not say it. */
const TABLE_WORDS: Readonly<Partial<Record<TableName, string>>> = {
  load: 'Load calculation',
  purchase: 'What to buy, by package',
  coordination: 'Inputs of a study of coordination',
  'arc-flash': 'Inputs of a study of arc flash',
  commissioning: 'Commissioning tests and what they read',
  'steel-loads': 'Loads on the steel',
  checklist: 'Inspection checklist, with what was recorded',
  'open-items': 'Everything that is still open',
  accessible: 'Accessible stalls, asked and given',
  'day-summary': 'Days of charging: what each rule gives',
  'day-load': 'Days of charging: load',
  'day-cars': 'Days of charging: cars',
  'day-meters': 'Days of charging: chargers',
};

const tableName = <N extends TableName>(name: N) =>
  ({
    ending: `.${name}.csv` as `.${N}.csv`,
    says: `${TABLE_WORDS[name] ?? `${name[0]!.toUpperCase()}${name.slice(1).replace('-', ' ')}`}, as CSV`,
    group: 'tables',
    type: 'text/csv;charset=utf-8',
  }) as const;

export const SHEET_NAMES = [
  { ending: '.drawings.pdf', says: 'Drawing set, ANSI D PDF', group: 'drawings', type: 'application/pdf' },
  { ending: '.drawings-tabloid.pdf', says: 'Drawing set, tabloid PDF', group: 'drawings', type: 'application/pdf' },
  { ending: '.calculations.pdf', says: 'Calculation packet, PDF', group: 'drawings', type: 'application/pdf' },
  { ending: '.utility-letter.pdf', says: 'Letter to the utility, PDF', group: 'drawings', type: 'application/pdf' },
  { ending: '.pull-cards.pdf', says: 'Pull cards, four to a page, PDF', group: 'drawings', type: 'application/pdf' },
  {
    ending: '.commissioning.pdf',
    says: 'Commissioning sheets, as filled in, PDF',
    group: 'drawings',
    type: 'application/pdf',
  },
  {
    ending: '.commissioning-blank.pdf',
    says: 'Commissioning sheets, blank, PDF',
    group: 'drawings',
    type: 'application/pdf',
  },
  { ending: '.dxf', says: 'Plan drawing, as DXF', group: 'drawings', type: 'image/vnd.dxf' },
  { ending: '.svg', says: 'Plan drawing, as SVG', group: 'drawings', type: 'image/svg+xml' },
  { ending: '.raised.svg', says: 'Raised view, as SVG', group: 'drawings', type: 'image/svg+xml' },
  {
    ending: '.xlsx',
    says: 'All tables, as a workbook',
    group: 'tables',
    type: 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet',
  },
  ...TABLE_NAMES.map(tableName),
  { ending: '.geojson', says: 'Site on the ground, as GeoJSON', group: 'models', type: 'application/geo+json' },
  { ending: '.ifc', says: 'Model, as IFC 4', group: 'models', type: 'application/x-step' },
  { ending: '.plan.json', says: 'The plan, as JSON', group: 'models', type: 'application/json' },
] as const satisfies readonly SheetName[];

export type SheetEnding = (typeof SHEET_NAMES)[number]['ending'];
