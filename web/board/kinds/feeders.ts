import { kept } from '../../../routing/kept/kept.ts';
import { boxOf } from '../../../routing/plane/box.ts';
import { inPlan } from '../../../routing/plane/space.ts';
import { byId } from '../../../routing/site/look-up.ts';
import type { Equipment, Point2 } from '../../../routing/site/site.ts';
import { drawFeederLinks } from '../pictures/steel/structure.ts';
import { drawFeederExits } from '../pictures/ways/feeder-exits.ts';
import type { BoardKind, ElementMark } from './kind.ts';

export interface FeederMark extends ElementMark<'feeders'> {
  readonly from: Point2;
  readonly to: Point2;
  readonly existing: boolean;
  /** It lies along the raceways, which are drawn: the link adds nothing unless it is selected. */
  readonly routed: boolean;
}

const markOf = kept((from: Equipment, to: Equipment, id: string, existing: boolean, routed: boolean): FeederMark => {
  const ends: [Point2, Point2] = [inPlan(from.entry), inPlan(to.entry)];
  return { list: 'feeders', id, from: ends[0], to: ends[1], existing, routed, ...boxOf(ends) };
});

/** A feeder is a link of its ends, and chosen in the tables and the panels of these. */
export const feeders: BoardKind<'feeders', FeederMark> = {
  mark: ({ id, from, to, existing = false, length }, site) => {
    const ends = byId(site.equipment);
    const [a, b] = [ends.get(from), ends.get(to)];
    return a && b ? markOf(a, b, id, existing, length === undefined) : null;
  },
  partial: true,
  also: ({ equipment }) => [equipment],
  extent: () => false,
  pictures: [
    { name: 'feeders', over: 30, from: 0.7, draw: drawFeederLinks },
    { name: 'feeder exits', over: 250, on: 'base', from: 0.7, draw: drawFeederExits },
  ],
};
