import { kept } from '../../../../routing/kept/kept.ts';
import type { SheetPart } from '../../../../routing/site/schema/vocabulary.ts';
import type { Site } from '../../../../routing/site/site.ts';
import type { Plan } from '../../../plan/plan-shape.ts';
import { sectionsOf } from '../../../space/section/typical.ts';
import { planDrawing } from '../../drawing/plan-drawing.ts';
import { asBuiltLot } from '../as-built/built-lot.ts';
import { inspectionSheets } from '../as-built/inspection-sheets.ts';
import { MOVED_NOTE } from '../as-built/moved-on-plan.ts';
import { photoSheets } from '../as-built/photo-sheets.ts';
import { generalSheets } from '../cover/cover-sheets.ts';
import { dayMeters, daySheets } from '../days/day-sheets.ts';
import { detailSheets } from '../details/detail-sheets.ts';
import {
  calledBy,
  type Draft,
  type Job,
  type NumberedSheet,
  numberedSheets,
  type SetRevision,
  type SheetFrame,
} from '../kit/draft.ts';
import type { Lettering } from '../kit/lettering/lettering.ts';
import { type Paper, sheetShape } from '../kit/paper.ts';
import type { Pen } from '../kit/pen.ts';
import { partsOf, WORK_PARTS } from '../kit/purpose.ts';
import { drawTitleBlock } from '../kit/title/title-block.ts';
import { keynotesListed } from '../kit/title/title-keynotes.ts';
import type { PlacedUnderlay } from '../kit/underlay.ts';
import type { WorkRecord } from '../kit/work-record.ts';
import { legendOfSet } from '../legend/legend-sheet.ts';
import { supplySheets } from '../one-line/supply-sheets.ts';
import { withDistances } from '../plans/boundary-labels.ts';
import { enlargedAreas } from '../plans/enlarged/enlarged-areas.ts';
import { enlargedSheets } from '../plans/enlarged/enlarged-sheets.ts';
import { keynotesOf } from '../plans/keynotes.ts';
import { planSheet } from '../plans/plan-sheet.ts';
import { type Plans, plansOf } from '../plans/plans-of.ts';
import { raisedSheets } from '../plans/raised-sheet.ts';
import { alongGridlines, turnRemark } from '../plans/strings/along-gridlines.ts';
import { revisionSheets } from '../schedules/schedule-sheets.ts';
import { sectionSheets } from '../sections/section-sheets.ts';
import { stripSheets } from '../strips/strip-sheets.ts';
import { cloudedAreas } from './clouded-areas.ts';

/** The version that a set revises, and what changes in it: plans have clouds round that. */
export interface Revised extends Pick<SetRevision, 'number' | 'date' | 'text' | 'since' | 'changes'> {
  readonly before: { readonly site: Site; readonly plan: Plan };
}

/** What a set is laid out by, beside its site and plan. */
export interface JobParts {
  readonly lettering: Lettering;
  readonly date: string;
  readonly paper: Paper;
  readonly file: string;
  /** From the lowest up. */
  readonly underlays: readonly PlacedUnderlay[];
  readonly remarks: readonly string[];
  readonly revision?: Revised;
  /** What a set of the work as built has besides. */
  readonly work?: Pick<WorkRecord, 'photos' | 'cost'>;
}

/** A site and its plan as the sheets lay them, with what every sheet needs. */
export function jobOf(site: Site, plan: Plan, given: JobParts): Job {
  const { lettering, date, paper, file, underlays, remarks, revision, work } = given;
  const parts = partsOf(site.drawings);
  const isRecord = site.drawings.purpose === 'as-built';
  const built = isRecord ? asBuiltLot(site, plan) : { site, plan };
  const laid = alongGridlines(built.site, built.plan, underlays);
  return {
    ...laid,
    site: withDistances(withSections(laid.site, laid.plan, parts.has('sections'))),
    parts,
    shape: sheetShape(paper),
    lettering,
    date,
    file,
    remarks: [...remarks, ...(isRecord ? [MOVED_NOTE] : [])],
    ...(revision && {
      revision: {
        ...revision,
        areas: cloudedAreas(onGridlinesOf(site, revision.before), laid, revision.changes),
        earlier: onceAsked(() => earlierJob(site, given, revision)),
      },
    }),
    ...((isRecord || WORK_PARTS.some((part) => parts.has(part))) && {
      record: {
        photos: work?.photos ?? [],
        cost: work?.cost ?? null,
        drawn: isRecord ? alongGridlines(site, plan, []) : laid,
        file: { site, plan },
      },
    }),
  };
}

/**
 * Where none is kept the typical sections are marked on the plans as kept ones are; a mark calls a sheet of this set. One
 * site for both papers and the lettered plan: what is found out of it for one is known for the others.
 */
const withSections = kept(
  (site: Site, plan: Plan, areDrawn: boolean): Site => ({
    ...site,
    sections: areDrawn ? sectionsOf(site, plan).map((cut, i) => ({ id: `typical ${i + 1}`, ...cut })) : [],
  }),
);

/** An earlier version along the gridlines of a later. */
function onGridlinesOf({ gridlines }: Site, { site, plan }: Revised['before']): Revised['before'] {
  const { site: laid, plan: laidPlan } = alongGridlines({ ...site, gridlines }, plan, []);
  return { site: laid, plan: laidPlan };
}

/** The version that a job revises, with what the set of the later is for. */
function earlierJob({ drawings }: Site, { revision: _, ...given }: JobParts, { before }: Revised): Job {
  const { notes, scope } = before.site.drawings;
  const { notes: _notes, scope: _scope, ...asked } = drawings;
  return jobOf(
    { ...before.site, drawings: { ...asked, ...(notes && { notes }), ...(scope && { scope }) } },
    before.plan,
    given,
  );
}

/** What a function comes to, worked out when it is first asked for. */
function onceAsked<T>(work: () => T): () => T {
  let known: { readonly value: T } | null = null;
  return () => {
    known ??= { value: work() };
    return known.value;
  };
}

/** The sheets of a job in the order of the set, each with its number. */
const sheetsOf = (job: Job): readonly NumberedSheet[] => numberedSheets(draftsOf(job));

/** A set as it is drawn, sheet by sheet. */
export interface SetSheets {
  readonly sheets: readonly NumberedSheet[];
  /** Draws the sheet at a place of the set, counted from 0. */
  readonly draw: (pen: Pen, at: number) => void;
}

/** All sheets of a job, and how each is drawn with its title block. */
export function setSheets(job: Job): SetSheets {
  const sheets = sheetsOf(job);
  const numbers = calledBy(sheets);
  const list = sheets.find(({ draft }) => draft.listsKeynotes)?.number;
  const elsewhere = list === undefined ? {} : { keynotesOn: list };
  const changed = changedKeynotes(job);
  return {
    sheets,
    draw: (pen, at) => {
      const { number, draft } = sheets[at]!;
      const place = `${at + 1} of ${sheets.length}`;
      const words = { number, title: draft.title, scale: draft.scale, place };
      const { keynotes = [] } = draft;
      const beside = keynotesListed(job, { ...words, ...elsewhere }, keynotes);
      const marked = new Set<number>();
      draft.draw(pen, numbers, { listed: list === undefined ? beside : keynotes, marked });
      const isAll = [...marked].every((one) => beside.some((keynote) => keynote.number === one));
      drawTitleBlock(
        pen,
        job,
        { ...words, ...(isAll ? {} : elsewhere) },
        beside.filter(({ number: one }) => marked.has(one)),
        changed,
      );
    },
  };
}

/** Numbers of the keynotes that the version before has not, or has for something else. */
function changedKeynotes({ site, plan, revision }: Job): ReadonlySet<number> {
  if (!revision) return new Set();
  const earlier = revision.earlier();
  const before = new Map(keynotesOf(earlier.site, earlier.plan).map(({ number, says }) => [number, says]));
  return new Set(keynotesOf(site, plan).flatMap(({ number, says }) => (before.get(number) === says ? [] : [number])));
}

/** Whether some plan has keynotes for which its title block has no room. */
const someHaveNoRoom = (job: Job, drafts: readonly Draft[]): boolean =>
  drafts.some(({ title, scale, keynotes = [] }) => {
    const words = { number: 'E-101', title, scale, place: '100 of 100', keynotesOn: 'G-001' };
    return keynotesListed(job, words, keynotes).length < keynotes.length;
  });

/** Sheets whose plans lie as a frame does. */
const framed = (frame: SheetFrame, drafts: readonly Draft[]): readonly Draft[] =>
  frame === null ? drafts : drafts.map((draft) => ({ ...draft, frame }));

function draftsOf(job: Job): readonly Draft[] {
  const { site, parts } = job;
  const drawing = planDrawing(site, job.plan);
  const plans = plansOf(job, drawing);
  const areas = parts.has('enlarged')
    ? enlargedAreas(plans.job.site, job.shape, job.lettering.sizes, plans.drawing)
    : null;
  // Where no enlarged plan follows, the plan of the whole site is drawn in full, and stands for them.
  const hasPlan = parts.has('plan') || (parts.has('enlarged') && areas === null);
  const of = (part: SheetPart, sheets: (job: Job) => readonly Draft[]): readonly Draft[] =>
    parts.has(part) ? sheets(job) : [];
  const others = [
    ...framed(plans.job.frame, [
      ...(hasPlan ? [planSheet(plans.job, plans.drawing, areas === null && site.drops.length > 0)] : []),
      ...(areas === null ? [] : enlargedSheets(plans.job, plans.drawing, areas)),
    ]),
    ...framed(job.frame, of('raised', raisedSheets)),
    ...of('sections', sectionSheets),
    ...of('details', detailSheets),
    ...of('strips', stripSheets),
    ...supplySheets(job, parts.has('days') ? [dayMeters(job)] : []),
    ...of('days', daySheets),
    ...revisionSheets(job),
    ...inspectionSheets(job),
    ...of('photos', photoSheets),
  ];
  const { revision } = job;
  const general: Job = {
    ...withTurn(job, plans),
    ...(revision && { revision: { ...revision, earlier: onceAsked(() => turnTold(revision.earlier())) } }),
  };
  const earlier = onceAsked(() => (revision ? sheetsOf(revision.earlier()) : []));
  const legend = parts.has('legend') ? legendOfSet(job, drawing, (areas?.tiles.length ?? 0) > 1) : null;
  const cover = { drawing, hasKeynotes: someHaveNoRoom(job, others), earlier, legend };
  return [...generalSheets(general, others, cover), ...others];
}

const turnTold = (job: Job): Job => withTurn(job, plansOf(job, planDrawing(job.site, job.plan)));

/** A job whose notes tell how its plans are turned. */
function withTurn(job: Job, { job: { frame } }: Plans): Job {
  const remark = turnRemark(frame);
  return remark === null ? job : { ...job, remarks: [...job.remarks, remark] };
}
