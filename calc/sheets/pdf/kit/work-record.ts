import type { PDFRef } from '@cantoo/pdf-lib';
import type { Site } from '../../../../routing/site/site.ts';
import type { Plan } from '../../../plan/plan-shape.ts';
import type { CostSheet } from '../../../takeoff/bid/cost.ts';

/** A photo of the work in a document. */
export interface SetPhoto {
  readonly of: string;
  readonly by: string;
  readonly on: string;
  /** What was noted of the thing; empty where nothing was. */
  readonly note: string;
  /** Pixels. */
  readonly width: number;
  readonly height: number;
  readonly ref: PDFRef;
}

/** A site with its plan. */
export interface PlannedSite {
  readonly site: Site;
  readonly plan: Plan;
}

/** What a set of the work as built has beside the lot as built, which it draws. */
export interface WorkRecord {
  /** As it was drawn, as it lies on the sheets. */
  readonly drawn: PlannedSite;
  /** As it is in the file, with what was written down. */
  readonly file: PlannedSite;
  /** What was priced, for quotes that ran out; null where nothing was. */
  readonly cost: Pick<CostSheet, 'quotes' | 'bidDay'> | null;
  readonly photos: readonly SetPhoto[];
}
