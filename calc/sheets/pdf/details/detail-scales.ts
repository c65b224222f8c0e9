import type { Units } from '../../../../routing/site/schema/vocabulary.ts';
import { type Scale, scalesOf } from '../kit/view/scales.ts';

/** Scales of details larger than those of plans: common practice, and ISO 5455. */
const LARGE: Readonly<Record<Units, readonly Scale[]>> = {
  ft: [
    { says: '3" = 1\'-0"', ratio: 4 },
    { says: '1-1/2" = 1\'-0"', ratio: 8 },
    { says: '1" = 1\'-0"', ratio: 12 },
    { says: '3/4" = 1\'-0"', ratio: 16 },
  ],
  m: [5, 10, 20].map((ratio) => ({ says: `1:${ratio}`, ratio })),
};

/** Scales for details, the largest drawing first. */
export const detailScales = (units: Units): readonly Scale[] => [...LARGE[units], ...scalesOf(units)];
