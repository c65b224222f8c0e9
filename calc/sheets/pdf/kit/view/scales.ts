import type { Units } from '../../../../../routing/site/schema/vocabulary.ts';
import { INCH } from '../area.ts';

/** A standard scale of drawings. */
export interface Scale {
  /** As a title block says it: `1/8" = 1'-0"`, `1" = 20'`, `1:100`. */
  readonly says: string;
  /** How many times larger the site is than the drawing. */
  readonly ratio: number;
}

/** Architects' scales down to 1/16 in, engineers' from there on: common practice, no source. */
const FOOT_SCALES: readonly Scale[] = [
  { says: '1/2" = 1\'-0"', ratio: 24 },
  { says: '3/8" = 1\'-0"', ratio: 32 },
  { says: '1/4" = 1\'-0"', ratio: 48 },
  { says: '3/16" = 1\'-0"', ratio: 64 },
  { says: '1/8" = 1\'-0"', ratio: 96 },
  { says: '1" = 10\'', ratio: 120 },
  { says: '3/32" = 1\'-0"', ratio: 128 },
  { says: '1/16" = 1\'-0"', ratio: 192 },
  ...[20, 30, 40, 50, 60, 80, 100, 200, 300, 400, 500, 1000, 2000, 5000, 10000].map((feet) => ({
    says: `1" = ${feet}'`,
    ratio: 12 * feet,
  })),
];

/** ISO 5455 with the 1:25, 1:250 and 1:2500 of site plans. */
const METRIC_SCALES: readonly Scale[] = [
  25, 50, 100, 200, 250, 500, 1000, 2000, 2500, 5000, 10000, 20000, 50000, 100000, 200000,
].map((ratio) => ({ says: `1:${ratio}`, ratio }));

/** The standard scales of a site's units, largest drawing first. */
export const scalesOf = (units: Units): readonly Scale[] => (units === 'm' ? METRIC_SCALES : FOOT_SCALES);

/** Points on the sheet for a foot of the site. */
export const pointsPerFoot = ({ ratio }: Scale): number => (12 * INCH) / ratio;

/**
 * The largest standard scale, of `leastRatio` or more, at which so many feet by so many go into so many points; the
 * smallest there is where none does.
 */
export function scaleThatFits(
  units: Units,
  feet: { readonly width: number; readonly height: number },
  room: { readonly width: number; readonly height: number },
  leastRatio = 0,
): Scale {
  const scales = scalesOf(units);
  const fits = (scale: Scale): boolean =>
    scale.ratio >= leastRatio &&
    feet.width * pointsPerFoot(scale) <= room.width &&
    feet.height * pointsPerFoot(scale) <= room.height;
  return scales.find(fits) ?? scales.at(-1)!;
}
