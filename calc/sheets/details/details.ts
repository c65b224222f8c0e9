import type { Site } from '../../../routing/site/site.ts';
import type { Plan } from '../../plan/plan-shape.ts';
import { bollardDetails } from './bollard-detail.ts';
import type { Detail } from './detail.ts';
import { dropDetails } from './drop-detail.ts';
import { handholeDetails } from './handhole-detail.ts';
import { padDetails } from './pad-detail.ts';
import { pedestalDetails } from './pedestal-detail.ts';
import { riserDetails } from './riser-detail.ts';
import { stallDetails } from './stall-detail.ts';
import { supportDetails } from './trapeze-detail.ts';
import { trenchDetails } from './trench-detail.ts';

/**
 * How this site is built, drawn from its own sizes: how boxes and retractors hang, trapezes, risers, pedestals, bollards, trenches,
 * handholes, equipment with its working space, marking and sign of a stall; each kind that the site has, the usual or the fullest of it. Lengths in
 * feet. What has no size in the file is a symbol without a dimension, and the notes say who sizes it.
 */
export const detailsOf = (site: Site, plan: Plan): readonly Detail[] => [
  ...dropDetails(site, plan),
  ...supportDetails(site, plan),
  ...riserDetails(site, plan),
  ...pedestalDetails(site, plan),
  ...bollardDetails(site),
  ...trenchDetails(site, plan),
  ...handholeDetails(site, plan),
  ...padDetails(site),
  ...stallDetails(site),
];
