import { keptByKey } from '../../routing/kept/kept.ts';
import type { Alternative } from '../plan/compared/comparison.ts';
import { bidSheet } from './cost/bid-sheet.ts';
import { costSheet } from './cost/cost-sheet.ts';
import { cutsSheet } from './cost/cuts-sheet.ts';
import { pullScheduleSheet } from './cost/pull-schedule-sheet.ts';
import { purchaseSheet } from './cost/purchase-sheet.ts';
import { takeoffSheet } from './cost/takeoff-sheet.ts';
import { type Cell, csv } from './csv.ts';
import { dayCarsSheet, dayLoadSheet, dayMetersSheet } from './days/day-sheets.ts';
import { daySummarySheet } from './days/day-summary-sheet.ts';
import type { Packer } from './packing.ts';
import type { FontBytes } from './pdf/kit/lettering/lettering.ts';
import type { Paper } from './pdf/kit/paper.ts';
import type { Underlay } from './pdf/kit/underlay.ts';
import type { ReportParts } from './pdf/report/report.ts';
import { arcFlashSheet } from './schedules/arc-flash-sheet.ts';
import { conduitsSheet } from './schedules/conduits-sheet.ts';
import { coordinationSheet } from './schedules/coordination-sheet.ts';
import { feederOptionsSheet } from './schedules/feeder-options-sheet.ts';
import { loadSheet } from './schedules/load-sheet.ts';
import { panelSheet } from './schedules/panel-sheet.ts';
import { runsSheet } from './schedules/runs-sheet.ts';
import { SHEET_NAMES, type SheetEnding, type SheetName, TABLE_NAMES, type TableName } from './sheet-names.ts';
import { accessibleSheet } from './site-work/accessible-sheet.ts';
import { checklistSheet } from './site-work/checklist-sheet.ts';
import { commissioningSheet } from './site-work/commissioning-sheet.ts';
import { openItemsSheet } from './site-work/open-items-sheet.ts';
import { settingOutSheet } from './site-work/setting-out-sheet.ts';
import { steelLoadsSheet } from './site-work/steel-loads-sheet.ts';

type Rows = readonly (readonly Cell[])[];

const TABLES: Readonly<Record<TableName, (planned: Alternative) => Rows | null>> = {
  runs: ({ site, plan }) => runsSheet(site, plan),
  conduits: ({ site, plan }) => conduitsSheet(site, plan),
  panels: ({ site, plan }) => panelSheet(site, plan),
  load: ({ site, plan }) => loadSheet(site, plan),
  coordination: ({ site, plan }) => coordinationSheet(site, plan),
  'arc-flash': ({ site, plan }) => arcFlashSheet(site, plan),
  'feeder-options': ({ site }) => feederOptionsSheet(site),
  takeoff: ({ site, plan }) => takeoffSheet(site, plan),
  cuts: ({ site, plan }) => cutsSheet(site, plan),
  'pull-schedule': ({ site, plan }) => pullScheduleSheet(site, plan),
  purchase: ({ site, plan }) => purchaseSheet(site, plan),
  cost: ({ site, cost }) => costSheet(site, cost),
  bid: (priced) => bidSheet(priced),
  'setting-out': ({ site, plan }) => settingOutSheet(site, plan),
  checklist: ({ site, plan }) => checklistSheet(site, plan),
  'open-items': ({ site, plan, cost }) => openItemsSheet(site, plan, cost),
  commissioning: ({ site, plan }) => commissioningSheet(site, plan),
  'steel-loads': ({ site, plan }) => steelLoadsSheet(site, plan),
  accessible: ({ site }) => accessibleSheet(site),
  'day-summary': ({ site }) => daySummarySheet(site),
  'day-load': ({ site }) => dayLoadSheet(site),
  'day-cars': ({ site }) => dayCarsSheet(site),
  'day-meters': ({ site }) => dayMetersSheet(site),
};

/** The rows of a table, which the workbook has too. */
const rowsOf = keptByKey(
  (name: TableName) => name,
  (planned: Alternative, name) => TABLES[name](planned),
);

/** What a sheet needs of the machine that writes it. */
export interface SheetSurroundings {
  /** The typeface of the drawing set, read when it is asked for. */
  readonly fonts: () => Promise<FontBytes>;
  /** As it is to be printed on the sheets. */
  readonly date: string;
  /** Address of the page whose codes on paper open their cards there; no codes where it is not stated. */
  readonly page?: string;
  /** What lies under the plans of the drawing set, from the lowest up, read when it is asked for. */
  readonly underlays?: () => Promise<readonly Underlay[]>;
  /** Bytes of photos of the work by their hash, read when they are asked for. */
  readonly photos?: (hash: string) => Promise<Uint8Array | null>;
  /** Hears what could not be printed as it was given. */
  readonly tell?: (says: string) => void;
  /** Packs pages and tables; without one they are packed as in any engine. */
  readonly packer?: Packer;
  /** Hears how many pages of a drawing set are drawn, of how many. */
  readonly drawn?: (done: number, of: number) => void;
}

/** The file's content; null where this site has none (a table of days of a site without any). */
type Write = (planned: Alternative, around: SheetSurroundings) => Promise<string | Uint8Array | null>;

/** One file that a plan can be written to. */
export interface SheetFile extends SheetName {
  readonly write: Write;
}

const tableWriter =
  (name: TableName): Write =>
  async (planned) => {
    const rows = rowsOf(planned, name);
    return rows === null ? null : csv(rows);
  };

const reportParts = async ({ fonts, date, tell, drawn, packer }: SheetSurroundings): Promise<ReportParts> => ({
  fonts: await fonts(),
  date,
  ...(tell && { tell }),
  ...(drawn && { drawn }),
  ...(packer && { packer }),
});

// The larger writers are loaded when they are asked for.
const WRITERS: Readonly<Record<SheetEnding, Write>> = {
  '.drawings.pdf': drawingSetOn('ANSI D'),
  '.drawings-tabloid.pdf': drawingSetOn('tabloid'),
  '.calculations.pdf': async ({ site, plan }, around) => {
    const { calculationPacket } = await import('./pdf/report/packet.ts');
    return calculationPacket(site, plan, await reportParts(around));
  },
  '.utility-letter.pdf': async ({ site, plan }, around) => {
    const { utilityLetter } = await import('./pdf/report/utility-letter.ts');
    return utilityLetter(site, plan, await reportParts(around));
  },
  '.pull-cards.pdf': async ({ site, plan }, around) => {
    const { pullCardReport } = await import('./pdf/report/pull-card-report.ts');
    return pullCardReport(site, plan, around.page ?? null, await reportParts(around));
  },
  '.commissioning.pdf': async ({ site, plan }, around) => {
    const { commissioningReport } = await import('./pdf/report/commissioning-report.ts');
    return commissioningReport(site, plan, await reportParts(around));
  },
  '.commissioning-blank.pdf': async ({ site, plan }, around) => {
    const { blankCommissioning } = await import('./pdf/report/commissioning-report.ts');
    return blankCommissioning(site, plan, await reportParts(around));
  },
  '.dxf': async ({ name, site, plan }, { fonts, date }) => {
    const { planDxf } = await import('./dxf/plan-dxf.ts');
    return planDxf(site, plan, { fonts: await fonts(), date, file: name });
  },
  '.svg': async ({ name, site, plan }, { fonts, date }) => {
    const { planSvg } = await import('./svg/plan-svg.ts');
    return planSvg(site, plan, { fonts: await fonts(), date, file: name });
  },
  '.raised.svg': async ({ site, plan }, { fonts, date }) => {
    const { raisedSvg } = await import('./svg/raised-svg.ts');
    return raisedSvg(site, plan, { fonts: await fonts(), date });
  },
  '.xlsx': async (planned, { packer }) => {
    const [{ xlsx }, { workbook }] = await Promise.all([import('./xlsx.ts'), import('./workbook/workbook.ts')]);
    const tables = TABLE_NAMES.flatMap((name) => {
      const rows = rowsOf(planned, name);
      return rows === null ? [] : [{ name, rows }];
    });
    return xlsx(workbook(planned, tables), { packer });
  },
  '.runs.csv': tableWriter('runs'),
  '.conduits.csv': tableWriter('conduits'),
  '.panels.csv': tableWriter('panels'),
  '.load.csv': tableWriter('load'),
  '.coordination.csv': tableWriter('coordination'),
  '.arc-flash.csv': tableWriter('arc-flash'),
  '.feeder-options.csv': tableWriter('feeder-options'),
  '.takeoff.csv': tableWriter('takeoff'),
  '.cuts.csv': tableWriter('cuts'),
  '.pull-schedule.csv': tableWriter('pull-schedule'),
  '.purchase.csv': tableWriter('purchase'),
  '.cost.csv': tableWriter('cost'),
  '.bid.csv': tableWriter('bid'),
  '.setting-out.csv': tableWriter('setting-out'),
  '.checklist.csv': tableWriter('checklist'),
  '.open-items.csv': tableWriter('open-items'),
  '.commissioning.csv': tableWriter('commissioning'),
  '.steel-loads.csv': tableWriter('steel-loads'),
  '.accessible.csv': tableWriter('accessible'),
  '.day-summary.csv': tableWriter('day-summary'),
  '.day-load.csv': tableWriter('day-load'),
  '.day-cars.csv': tableWriter('day-cars'),
  '.day-meters.csv': tableWriter('day-meters'),
  '.geojson': async ({ site, plan }) => (await import('./geojson/geojson.ts')).geojson(site, plan),
  '.ifc': async ({ site, plan }) => (await import('./ifc/ifc.ts')).ifc(site, plan),
  '.plan.json': async ({ site, plan }) =>
    `${JSON.stringify((await import('../plan/write-plan.ts')).publishedPlan(plan, site))}\n`,
};

export const SHEET_FILES: readonly SheetFile[] = SHEET_NAMES.map((name) => ({ ...name, write: WRITERS[name.ending] }));

function drawingSetOn(paper: Paper): Write {
  return async ({ name, site, plan, cost }, { fonts, date, underlays, photos, tell, drawn, packer }) => {
    const { drawingSet } = await import('./pdf/drawing-set.ts');
    return drawingSet(site, plan, {
      fonts: await fonts(),
      date,
      paper,
      file: name,
      underlays: (await underlays?.()) ?? [],
      cost,
      ...(photos && { photos }),
      ...(tell && { tell }),
      ...(drawn && { drawn }),
      ...(packer && { packer }),
    });
  };
}
