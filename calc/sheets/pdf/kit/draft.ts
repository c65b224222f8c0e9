import type { Box } from '../../../../routing/plane/box.ts';
import type { SheetPart } from '../../../../routing/site/schema/vocabulary.ts';
import type { Site } from '../../../../routing/site/site.ts';
import type { Revision } from '../../../plan/compared/revision.ts';
import type { Plan } from '../../../plan/plan-shape.ts';
import type { Lettering } from './lettering/lettering.ts';
import type { SheetShape } from './paper.ts';
import type { Pen } from './pen.ts';
import type { Keynote, SheetKeynotes } from './title/keynotes.ts';
import type { PlacedUnderlay } from './underlay.ts';
import type { View } from './view/view.ts';
import type { WorkRecord } from './work-record.ts';

/** How a drawing lies on the site: the turn and origin of what it lies along; null where it lies as the site file does. */
export type SheetFrame = Pick<Site['gridlines'], 'rotation' | 'origin'> | null;

/** An area that a cloud stands round, with the lines of the change order that its elements have a part in. */
export interface CloudedArea extends Box {
  readonly lines: readonly number[];
}

/** A revision as a set shows it: clouded on the plans, told in the title blocks, at each row that it changed. */
export interface SetRevision {
  /** What its deltas are marked with. */
  readonly number: string;
  /** Its day. */
  readonly date: string;
  /** What it was issued for; null where it was not issued. */
  readonly text: string | null;
  /** Name of the version that it is a revision of. */
  readonly since: string;
  readonly changes: Revision;
  /** The version before, as its own set would have it; asked for by the sheets that hold their words against it. */
  readonly earlier: () => Job;
  /** Where the plans are clouded, feet, as they lie on the sheets. */
  readonly areas: readonly CloudedArea[];
}

/** What a set is drawn from, and on what. */
export interface Job {
  /** As it lies on the sheets. */
  readonly site: Site;
  readonly frame: SheetFrame;
  readonly plan: Plan;
  readonly shape: SheetShape;
  readonly lettering: Lettering;
  /** As it is to be printed. */
  readonly date: string;
  /** Name of the site file; the site's name stands where it is not known. */
  readonly file: string;
  /** From the lowest up. */
  readonly underlays: readonly PlacedUnderlay[];
  /** What else the notes of the cover have to say. */
  readonly remarks: readonly string[];
  /** What the set has beside its cover. */
  readonly parts: ReadonlySet<SheetPart>;
  /** What a revised set marks; none in a first one. */
  readonly revision?: SetRevision;
  /** Of a set of the work as built, whose site and plan are those of the lot as built. */
  readonly record?: WorkRecord;
}

/**
 * Discipline and type of sheet by the national CAD standard (US National CAD Standard, uniform drawing system: 0 general,
 * 1 plans, 2 elevations, 3 sections, 4 large-scale views, 5 details, 6 schedules and diagrams, 7 and 8 what a
 * project needs besides, 9 views in space; from memory). Run strips are elevations; 7 is the record of the work.
 */
export const SERIES = ['G-0', 'E-0', 'E-1', 'E-2', 'E-3', 'E-4', 'E-5', 'E-6', 'E-7', 'E-9'] as const;
export type Series = (typeof SERIES)[number];

/** Sheet numbers by the key of the sheet, and marks of views with those of their sheets, `1/E-301`, by the key of the view. */
export type SheetNumbers = ReadonlyMap<string, string>;

/** A sheet before it has its number: what other sheets call it by, and how it is drawn once all numbers are known. */
export interface Draft {
  readonly key: string;
  readonly series: Series;
  readonly title: string;
  /** As the title block says it. */
  readonly scale: string;
  readonly draw: (pen: Pen, numbers: SheetNumbers, keynotes?: SheetKeynotes) => void;
  /** What its plan has keynotes for. */
  readonly keynotes?: readonly Keynote[];
  /** The list of all keynotes begins on it, for plans that have no room for theirs. */
  readonly listsKeynotes?: boolean;
  /** Marks of the views on it that plans call, by their keys. */
  readonly views?: ReadonlyMap<string, string>;
  /** The plan on it, whose scale and place the page states for other programs. */
  readonly plan?: View;
  /** How that lies on the site, where it lies otherwise than the file has it. */
  readonly frame?: SheetFrame;
}

export interface NumberedSheet {
  readonly number: string;
  readonly draft: Draft;
}

/** The drafts in the order of the set, each with its number: `G-001`, `E-001`, `E-101`, `E-102`, ... */
export function numberedSheets(drafts: readonly Draft[]): readonly NumberedSheet[] {
  return SERIES.flatMap((series) =>
    drafts
      .filter((draft) => draft.series === series)
      .map((draft, i) => ({ number: `${series}${String(i + 1).padStart(2, '0')}`, draft })),
  );
}

/** The key of the view that is the section of a cut. */
export const sectionKey = ({ id }: Pick<Site['sections'][number], 'id'>): string => `section ${id}`;

/** What sheets are called by, and the views on them: `E-301`, and `1/E-301` for the first view on it. */
export const calledBy = (sheets: readonly NumberedSheet[]): SheetNumbers =>
  new Map(
    sheets.flatMap(({ number, draft }) => [
      [draft.key, number] as const,
      ...[...(draft.views ?? [])].map(([key, mark]) => [key, `${mark}/${number}`] as const),
    ]),
  );

export const NOT_TO_SCALE = 'none';
