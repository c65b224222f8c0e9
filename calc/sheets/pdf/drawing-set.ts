import { PDFDocument } from '@cantoo/pdf-lib';
import type { Site } from '../../../routing/site/site.ts';
import type { Plan } from '../../plan/plan-shape.ts';
import type { Revision } from '../../plan/revision.ts';
import { sectionsOf } from '../../space/section/typical.ts';
import { planDrawing } from '../drawing/plan-drawing.ts';
import { coverSheets } from './cover/cover-sheets.ts';
import { daySheets } from './days/day-sheets.ts';
import { detailSheets } from './details/detail-sheets.ts';
import { addPage, describe, nameSheets, sharedResources } from './kit/document.ts';
import { type Draft, type Job, numberedSheets } from './kit/draft.ts';
import { type FontBytes, type Lettering, letteringIn } from './kit/lettering.ts';
import { LETTERS } from './kit/letters.ts';
import { statePlace } from './kit/page-place.ts';
import { type Paper, sheetShape } from './kit/paper.ts';
import { penWith } from './kit/pen.ts';
import { codeOf } from './kit/printable.ts';
import { cloudedAreas, revisedRemark } from './kit/revised.ts';
import { drawTitleBlock } from './kit/title-block.ts';
import { embedUnderlays, type Underlay } from './kit/underlay.ts';
import { legendSheet } from './legend/legend-sheet.ts';
import { oneLineSheets } from './one-line/one-line-sheets.ts';
import { alongGridlines } from './plans/along-gridlines.ts';
import { enlargedAreas } from './plans/enlarged-areas.ts';
import { enlargedSheets } from './plans/enlarged-sheets.ts';
import { planSheet } from './plans/plan-sheet.ts';
import { raisedSheets } from './plans/raised-sheet.ts';
import { loadSheets } from './schedules/load-sheets.ts';
import { scheduleSheets } from './schedules/schedule-sheets.ts';
import { steelSheets } from './schedules/steel-sheets.ts';
import { sectionSheets } from './sections/section-sheets.ts';
import { stripSheets } from './strips/strip-sheets.ts';

/** What the caller hands in with a site and its plan: nothing here reads a disk or a clock. */
export interface SetParts {
  readonly fonts: FontBytes;
  /** As it is to be printed on the sheets. */
  readonly date: string;
  readonly paper: Paper;
  /** Name of the site file, for the title block. */
  readonly file?: string;
  /** What lies under the plans, from the lowest up. */
  readonly underlays?: readonly Underlay[];
  /** Hears what could not be printed as it was given; the cover says the same. */
  readonly tell?: (says: string) => void;
  /** Hears how many pages are drawn, of how many. */
  readonly drawn?: (done: number, of: number) => void;
  /** The version that this one revises, and what it changes in it: plans have clouds round that. */
  readonly revision?: {
    readonly number: string;
    readonly since: string;
    readonly before: Site;
    readonly changes: Revision;
  };
}

/**
 * The drawing set of a site as a PDF: cover, legend, plans to scale, run strips, supply one-line and schedules, numbered by
 * the national CAD standard. Lines are vectors and all text is text. The same parts give the same bytes. An underlay that
 * cannot be read is left out and the cover says so; fonts that cannot be read, or a placement that is no number, throw.
 */
export async function drawingSet(site: Site, plan: Plan, parts: SetParts): Promise<Uint8Array> {
  const { fonts, date, paper, file = site.name, underlays = [], revision, tell, drawn } = parts;
  const doc = await PDFDocument.create({ updateMetadata: false });
  const lettering = await letteringIn(doc, fonts, LETTERS[paper]);
  const under = await embedUnderlays(doc, underlays);
  const remarks = [
    ...under.remarks,
    ...missingSigns(lettering, [date, file, ...under.remarks, ...namesOf(site)].join(' ')),
  ];
  for (const says of remarks) tell?.(says);
  const { remark, ...laid } = alongGridlines(site, plan, under.placed);
  // Where none is kept the typical sections are marked on the plans as kept ones are.
  const sections = sectionsOf(laid.site, laid.plan).map((cut, i) => ({ id: `typical ${i + 1}`, ...cut }));
  const job: Job = {
    ...laid,
    site: { ...laid.site, sections },
    shape: sheetShape(paper),
    lettering,
    date,
    file,
    remarks: [...remarks, ...(remark ? [remark] : []), ...(revision ? [revisedRemark(revision)] : [])],
    ...(revision && { revision: { ...revision, areas: cloudedAreas(revision, laid.site, site.gridlines) } }),
  };
  const sheets = numberedSheets(draftsOf(job));
  const numbers = new Map(sheets.map(({ number, draft }) => [draft.key, number]));
  const resources = sharedResources(doc, lettering, under.placed);
  const pages = sheets.map(({ number, draft }, i) => {
    const pen = penWith(lettering);
    draft.draw(pen, numbers);
    drawTitleBlock(pen, job, { number, title: draft.title, scale: draft.scale, place: `${i + 1} of ${sheets.length}` });
    const page = addPage(doc, job.shape, resources, pen.content());
    if (draft.plan) statePlace(doc, page, draft.title, draft.plan, site, laid.site !== site);
    drawn?.(i + 1, sheets.length);
    return page;
  });
  nameSheets(doc, sheets, pages);
  describe(doc, `${site.name}: drawing set`);
  return doc.save({ useObjectStreams: true, addDefaultPage: false, updateFieldAppearances: false });
}

/** What of a site is printed as a person wrote it. */
const namesOf = (site: Site): readonly string[] => [
  site.name,
  ...[...site.gridlines.x, ...site.gridlines.y].map(({ label }) => label),
  ...site.loads.flatMap(({ id, name }) => [id, name]),
  ...site.stalls.flatMap(({ id, label = '' }) => [id, label]),
  ...[site.drops, site.chargers, site.equipment, site.feeders, site.pullpoints, site.raceways]
    .flat()
    .map(({ id }) => id),
];

function missingSigns({ missing }: Lettering, text: string): readonly string[] {
  const codes = missing(text).map(codeOf);
  if (codes.length === 0) return [];
  const named = codes.length > 12 ? `${codes.slice(0, 12).join(', ')} and ${codes.length - 12} more` : codes.join(', ');
  return [
    `The lettering of the set has no sign for ${named}: in names each is printed in plainer letters or by its number in Unicode, as [U+5145].`,
  ];
}

function draftsOf(job: Job): readonly Draft[] {
  const drawing = planDrawing(job.site, job.plan);
  const areas = enlargedAreas(job.site, job.shape, job.lettering.sizes, drawing);
  const others = [
    legendSheet(job),
    planSheet(job, drawing, areas === null && job.site.drops.length > 0),
    ...(areas === null ? [] : enlargedSheets(job, drawing, areas)),
    ...raisedSheets(job),
    ...sectionSheets(job),
    ...detailSheets(job),
    ...stripSheets(job),
    ...oneLineSheets(job),
    ...loadSheets(job),
    ...scheduleSheets(job),
    ...steelSheets(job),
    ...daySheets(job),
  ];
  return [...coverSheets(job, others), ...others];
}
