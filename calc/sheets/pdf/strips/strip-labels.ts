import type { Run } from '../../../../routing/network/run.ts';
import type { Point2 } from '../../../../routing/site/site.ts';
import { BLACK } from '../kit/ink.ts';
import type { LabelPlace, LabelSize, LabelWish } from '../kit/labels/best-label-place.ts';
import { placesAlong } from '../kit/labels/label-places.ts';
import { conduitSize } from '../schedules/circuit-words.ts';
import type { RunStrip, StripPoint } from './run-strip.ts';

/** Where a place of a strip lies on the sheet. */
export type OnSheet = (point: StripPoint) => Point2;

/** What is written on a strip: its ends, openings, conduits and bends. */
export function stripWishes(strip: RunStrip, run: Run, at: OnSheet): LabelWish[] {
  const wish = (text: string, layer: LabelWish['layer'], places: LabelWish['places'], isBold = false): LabelWish => ({
    layer,
    lines: [{ text, weight: isBold ? 'bold' : 'regular' }],
    size: 'small',
    colour: BLACK,
    places,
  });
  const above = (point: StripPoint) =>
    function* ({ width }: LabelSize): Generator<LabelPlace> {
      const [x, y] = at(point);
      // Beside a riser there is room only over the grade, tied to its box by a leader.
      for (const [step, up] of [7, 17, 27, 37].entries())
        for (const shift of [0, 0.35, -0.35, -0.6, 0.6])
          yield {
            at: [x - width / 2 + shift * width, y + up],
            turn: 0,
            cost: step * 0.5 + Math.abs(shift) / 10,
            ...(step > 1 && { leader: [x, y] as Point2 }),
          };
    };
  return [
    wish(
      run.from,
      'equipment',
      function* ({ width, height }) {
        const [x, y] = at(strip.points[0]!);
        yield { at: [x + 7, y - height - 1], turn: 0 };
        yield { at: [x + 7, y + 2], turn: 0 };
        yield { at: [x - width / 2 - 2.5, y - 10 - height], turn: 0 };
        yield { at: [x - width / 2 - 2.5, y + 10], turn: 0 };
      },
      true,
    ),
    wish(
      run.drop,
      'dropNumbers',
      function* ({ height }) {
        const [x, y] = at(strip.points.at(-1)!);
        yield { at: [x + 8, y - height / 2], turn: 0 };
        yield { at: [x + 8, y + 6], turn: 0 };
      },
      true,
    ),
    ...strip.openings.map((opening) => wish(opening.id, 'pullPoints', above(opening.at))),
    ...strip.conduits.map(({ conduit, points }) =>
      wish(`${conduitSize(conduit)} (${conduit.circuits.length})`, 'conduitSizes', function* (size) {
        const legs = points.slice(1).map((to, i) => [at(points[i]!), at(to)] as const);
        legs.sort((a, b) => reach(b) - reach(a));
        for (const [from, to] of legs) yield* placesAlong(from, to, 3, size);
        // Over the grade, where the conduit lies close under it.
        for (const [from, to] of legs)
          for (const off of [12, 18])
            for (const place of placesAlong(from, to, off, size)) yield { ...place, cost: (place.cost ?? 0) + 0.5 };
      }),
    ),
    ...strip.bends.map((bend) =>
      wish(`${Math.round(bend.degrees)}°`, 'pullPoints', function* ({ width, height }) {
        const [x, y] = at(bend.at);
        for (const place of [
          [x + 4, y - height - 3],
          [x - width - 3, y - height - 3],
          [x + 4, y + 4],
          [x - width - 4, y + 4],
          [x - width / 2, y + 4],
        ] as const)
          yield { at: place, turn: 0 };
      }),
    ),
  ];
}

const reach = ([[ax, ay], [bx, by]]: readonly [Point2, Point2]): number => Math.hypot(bx - ax, by - ay);
