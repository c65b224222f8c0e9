import type { Alternative } from '../comparison.ts';
import { conduitsSheet } from './conduits-sheet.ts';
import { costSheet } from './cost-sheet.ts';
import { type Cell, csv } from './csv.ts';
import { cutsSheet } from './cuts-sheet.ts';
import { feederOptionsSheet } from './feeder-options-sheet.ts';
import { panelSheet } from './panel-sheet.ts';
import type { FontBytes } from './pdf/lettering.ts';
import type { Paper } from './pdf/paper.ts';
import type { Underlay } from './pdf/underlay.ts';
import { runsSheet } from './runs-sheet.ts';
import { settingOutSheet } from './setting-out-sheet.ts';
import { takeoffSheet } from './takeoff-sheet.ts';

type Rows = readonly (readonly Cell[])[];

/** One table of the plan: a CSV file, and a sheet of the workbook. */
export interface TableSheet {
  readonly name: string;
  readonly rows: (planned: Alternative) => Rows;
}

export const TABLE_SHEETS: readonly TableSheet[] = [
  { name: 'runs', rows: ({ site, plan }) => runsSheet(site, plan) },
  { name: 'conduits', rows: ({ site, plan }) => conduitsSheet(site, plan) },
  { name: 'panels', rows: ({ site, plan }) => panelSheet(site, plan) },
  { name: 'feeder-options', rows: ({ site }) => feederOptionsSheet(site) },
  { name: 'takeoff', rows: ({ site, plan }) => takeoffSheet(site, plan) },
  { name: 'cuts', rows: ({ site, plan }) => cutsSheet(site, plan) },
  { name: 'cost', rows: ({ site, cost }) => costSheet(site, cost) },
  { name: 'setting-out', rows: ({ site, plan }) => settingOutSheet(site, plan) },
];

/** What a sheet needs of the machine that writes it. */
export interface SheetSurroundings {
  /** The typeface of the drawing set, read when it is asked for. */
  readonly fonts: () => Promise<FontBytes>;
  /** As it is to be printed on the sheets. */
  readonly date: string;
  /** What lies under the plans of the drawing set, from the lowest up, read when it is asked for. */
  readonly underlays?: () => Promise<readonly Underlay[]>;
  /** Hears what could not be printed as it was given. */
  readonly tell?: (says: string) => void;
}

/** One file that a plan can be written to. */
export interface SheetFile {
  /** What stands after the site's name, such as `.runs.csv`. */
  readonly ending: string;
  readonly says: string;
  /** What kind of sheet it is, as a list of them is divided. */
  readonly group: 'tables' | 'drawings' | 'models';
  readonly type: string;
  /** The file's content; null where this site has none (GeoJSON of a site that lies nowhere). */
  readonly write: (planned: Alternative, around: SheetSurroundings) => Promise<string | Uint8Array | null>;
}

// The larger writers are loaded when they are asked for: the page need not carry them to its first picture.
export const SHEET_FILES: readonly SheetFile[] = [
  drawingSetOn('ANSI D', '.drawings.pdf'),
  drawingSetOn('tabloid', '.drawings-tabloid.pdf'),
  {
    ending: '.dxf',
    says: 'Plan drawing, as DXF',
    group: 'drawings',
    type: 'image/vnd.dxf',
    write: async ({ site, plan }) => {
      const [{ planDrawing }, { withDimensions }, { dxf }] = await Promise.all([
        import('./drawing/plan-drawing.ts'),
        import('./drawing/dimensions.ts'),
        import('./dxf.ts'),
      ]);
      return dxf(withDimensions(planDrawing(site, plan), site), site.units);
    },
  },
  {
    ending: '.svg',
    says: 'Plan drawing, as SVG',
    group: 'drawings',
    type: 'image/svg+xml',
    write: async ({ site, plan }) => {
      const [{ planDrawing }, { svg }] = await Promise.all([import('./drawing/plan-drawing.ts'), import('./svg.ts')]);
      return svg(planDrawing(site, plan));
    },
  },
  {
    ending: '.xlsx',
    says: 'All tables, as a workbook',
    group: 'tables',
    type: 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet',
    write: async (planned) => {
      const { xlsx } = await import('./xlsx.ts');
      return xlsx(TABLE_SHEETS.map(({ name, rows }) => ({ name, rows: rows(planned) })));
    },
  },
  ...TABLE_SHEETS.map(
    ({ name, rows }): SheetFile => ({
      ending: `.${name}.csv`,
      says: `${name[0]?.toUpperCase()}${name.slice(1).replace('-', ' ')}, as CSV`,
      group: 'tables',
      type: 'text/csv;charset=utf-8',
      write: async (planned) => csv(rows(planned)),
    }),
  ),
  {
    ending: '.geojson',
    says: 'Site on the ground, as GeoJSON',
    group: 'models',
    type: 'application/geo+json',
    write: async ({ site, plan }) => (await import('./geojson.ts')).geojson(site, plan),
  },
  {
    ending: '.ifc',
    says: 'Model, as IFC 4',
    group: 'models',
    type: 'application/x-step',
    write: async ({ site, plan }) => (await import('./ifc.ts')).ifc(site, plan),
  },
  {
    ending: '.plan.json',
    says: 'The plan, as JSON',
    group: 'models',
    type: 'application/json',
    write: async ({ site, plan }) => `${JSON.stringify((await import('../write-plan.ts')).writePlan(plan, site))}\n`,
  },
];

function drawingSetOn(paper: Paper, ending: string): SheetFile {
  return {
    ending,
    says: `Drawing set, ${paper} PDF`,
    group: 'drawings',
    type: 'application/pdf',
    write: async ({ name, site, plan }, { fonts, date, underlays, tell }) => {
      const { drawingSet } = await import('./pdf/drawing-set.ts');
      return drawingSet(site, plan, {
        fonts: await fonts(),
        date,
        paper,
        file: name,
        underlays: (await underlays?.()) ?? [],
        ...(tell && { tell }),
      });
    },
  };
}
