import { PDFDocument } from '@cantoo/pdf-lib';
import type { Site } from '../../../routing/site/site.ts';
import type { Plan } from '../../plan/plan-shape.ts';
import type { Packer } from '../packing.ts';
import { embedPhotos, type PhotoBytes } from './as-built/set-photos.ts';
import { addPage, describe, nameSheets, sharedResources } from './kit/document.ts';
import { type FontBytes, letteringIn } from './kit/lettering/lettering.ts';
import { LETTERS } from './kit/lettering/letters.ts';
import { textsIn } from './kit/lettering/texts-in.ts';
import { unprintedWords } from './kit/lettering/unprinted.ts';
import { Operators } from './kit/operators.ts';
import type { Paper } from './kit/paper.ts';
import { penWith } from './kit/pen.ts';
import { partsOf } from './kit/purpose.ts';
import { embedUnderlays, type PlacedUnderlay, type Underlay } from './kit/underlay.ts';
import { statePlace } from './kit/view/page-place.ts';
import type { SetPhoto, WorkRecord } from './kit/work-record.ts';
import { jobOf, type Revised, setSheets } from './set/set-sheets.ts';

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
  readonly revision?: Revised;
  /** Gives the bytes of photos of the work, for a set of it as built. */
  readonly photos?: PhotoBytes;
  /** What was priced, for the list of what is open. */
  readonly cost?: WorkRecord['cost'];
  /** Packs the pages; without one they are packed as in any engine. */
  readonly packer?: Packer;
}

/**
 * The drawing set of a site as a PDF: cover, legend, plans to scale, run strips, supply one-line and schedules, numbered by
 * the national CAD standard. Lines are vectors and all text is text. The same parts give the same bytes. An underlay that
 * cannot be read is left out and the cover says so; fonts that cannot be read, or a placement that is no number, throw.
 */
export async function drawingSet(site: Site, plan: Plan, parts: SetParts): Promise<Uint8Array> {
  const { fonts, date, paper, file = site.name, underlays = [], revision, tell, drawn, cost = null } = parts;
  const { packer } = parts;
  const doc = await PDFDocument.create({ updateMetadata: false });
  const under = await embedUnderlays(doc, underlays);
  const printed = [site, date, file, cost, revision?.before, revision?.since, under.remarks];
  const lettering = await letteringIn(doc, fonts, LETTERS[paper], printed);
  const shown = partsOf(site.drawings).has('photos')
    ? await embedPhotos(doc, site, parts.photos ?? (async () => null))
    : NO_PHOTOS;
  // Looked for place by place only where there is one.
  const unprinted =
    textsIn([site, file], lettering.has).length > 0 ? unprintedWords({ ...site, file }, lettering.has) : [];
  const remarks = [...under.remarks, ...shown.remarks, ...unprinted];
  for (const says of remarks) tell?.(says);
  const job = jobOf(site, plan, {
    lettering,
    date,
    paper,
    file,
    underlays: under.placed,
    remarks,
    ...(revision && { revision }),
    work: { photos: shown.photos, cost },
  });
  const { sheets, draw } = setSheets(job);
  const resources = sharedResources(doc, lettering, [...under.placed, ...shown.photos.map(unfaded)]);
  // One room for the words of all pages, each packed before the next: it grows to the largest once.
  const out = new Operators();
  const pages = sheets.map(({ draft }, i) => {
    const pen = penWith(lettering, out);
    draw(pen, i);
    const page = addPage(doc, job.shape, resources, pen.bytes(), packer);
    if (draft.plan) statePlace(doc, page, draft.title, draft.plan, site, draft.frame ?? null);
    drawn?.(i + 1, sheets.length);
    return page;
  });
  lettering.scripts?.finish();
  nameSheets(doc, sheets, pages);
  describe(doc, `${site.name}: drawing set`);
  return doc.save({ useObjectStreams: true, addDefaultPage: false, updateFieldAppearances: false });
}

const NO_PHOTOS = { photos: [], remarks: [] } as const;

/** A photo among the pictures of a page. */
const unfaded = ({ ref }: SetPhoto): PlacedUnderlay => ({
  ref,
  dim: 0,
  size: [1, 1],
  placement: { x: 0, y: 0, scale: 1, rotation: 0 },
});
