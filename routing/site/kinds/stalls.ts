import * as v from 'valibot';
import { stallRectangle } from '../place/stall-rectangle.ts';
import { id, maybe, number, point2, positiveLength, text, told, wholePositive } from '../schema/schema-parts.ts';
import { PARKING_WAYS, STALL_USES } from '../schema/vocabulary.ts';
import type { KindDocs, Of, PlacedKind } from './kind.ts';

export const stallSchema = v.strictObject({
  id,
  at: told(point2, 'Middle of the entry edge, the edge a car crosses when it drives in.'),
  width: positiveLength,
  depth: told(positiveLength, 'From the entry edge to the head, along `heading`.'),
  heading: told(number, 'Direction from the entry edge to the head, degrees.'),
  use: maybe(v.picklist(STALL_USES)),
  parking: maybe(told(v.picklist(PARKING_WAYS), 'Ways a car may stand in it; `either` where absent.')),
  vehicle: maybe(told(text, 'Class of the vehicle in it: one of `vehicles`, or built in.')),
  label: maybe(text),
  phase: maybe(
    told(
      v.pipe(wholePositive, v.maxValue(9)),
      'Phase of the build-out in which it gets its charger; 1, the first, where absent.',
    ),
  ),
});

export type Stall = Of<typeof stallSchema>;

export const stalls: PlacedKind<typeof stallSchema> = {
  schema: stallSchema,
  one: 'stall',
  many: 'stalls',
  anyOne: 'a stall',
  alsoCalled: ({ label }) => label,
  moved: (stall, motion) => ({ ...stall, at: motion.point(stall.at), heading: motion.direction(stall.heading) }),
  points: stallRectangle,
  anchor: ({ at }) => at,
  shape: 'ring',
};

export const stallDocs: KindDocs<typeof stallSchema> = {
  says: 'Parking stalls.',
  fields: {
    width: 'Across the heading, between stripes.',
    use: 'Who may park there; standard where absent.',
    label: 'Number painted in it; its id where absent.',
  },
  examples: [
    {
      id: 'S01',
      at: [0, 18],
      width: 9,
      depth: 18,
      heading: 270,
      use: 'van-accessible',
      parking: 'either',
      vehicle: 'lift van',
      label: '1',
      phase: 2,
    },
    { id: 'S02', at: [9, 18], width: 9, depth: 18, heading: 270 },
  ],
};
