import { kept } from '../../../routing/kept/kept.ts';
import { boxOf } from '../../../routing/plane/box.ts';
import { direction } from '../../../routing/plane/direction.ts';
import type { Rectangle } from '../../../routing/plane/rectangle.ts';
import { stallRectangle } from '../../../routing/site/place/stall-rectangle.ts';
import type { Point2, Stall, Vehicle } from '../../../routing/site/site.ts';
import { parkedRectangle, vehicleOf } from '../../../routing/standing/parked.ts';
import { drawParkedCars, drawStallLabels, drawStalls, STALLS_FROM } from '../pictures/stalls/stalls.ts';
import type { BoardKind, ElementMark } from './kind.ts';

export interface StallMark extends ElementMark<'stalls'> {
  readonly stall: Stall;
  readonly corners: Rectangle;
  readonly car: Rectangle;
  /** Where the label stands: near the entry, so that no cord or raceway lies over it. */
  readonly labelAt: Point2;
  readonly label: string;
}

const markOf = kept((stall: Stall, vehicle: Vehicle, headClearance: number): StallMark => {
  const corners = stallRectangle(stall);
  const car = parkedRectangle(stall, vehicle, headClearance);
  const [ux, uy] = direction(stall.heading);
  const in1 = Math.min(1.4, stall.depth * 0.08);
  return {
    list: 'stalls',
    id: stall.id,
    stall,
    corners,
    car,
    labelAt: [stall.at[0] + ux * in1, stall.at[1] + uy * in1],
    label: stall.label ?? stall.id,
    ...boxOf([...corners, ...car]),
  };
});

export const stalls: BoardKind<'stalls', StallMark> = {
  mark: (stall, site) => markOf(stall, vehicleOf(stall, site), site.rules.headClearance),
  also: ({ vehicles, rules }) => [vehicles, rules.headClearance, rules.vehicle],
  keptClear: true,
  pictures: [
    { name: 'stalls', over: 50, from: STALLS_FROM, draw: drawStalls },
    { name: 'cars', over: 60, from: 1.3, draw: drawParkedCars },
    {
      name: 'stall labels',
      over: 210,
      on: 'base',
      from: 1.4,
      draw: (pen, frame, marks, painting) => {
        // The shading carries the numbers itself.
        if (!painting.shading()) drawStallLabels(pen, frame, marks);
      },
    },
    { name: 'stall labels', over: 210, on: 'live', draw: drawStallLabels },
  ],
  hold: { rank: 70, tour: 60, ground: true, named: true },
  aims: ({ corners, label }, { end, middle }) => {
    const [entryRight, headRight, headLeft, entryLeft] = corners;
    for (const corner of corners) end(corner, `corner of stall ${label}`);
    middle(entryRight, entryLeft, `entry of stall ${label}`);
    middle(headRight, headLeft, `head of stall ${label}`);
    middle(entryRight, headRight, `stripe of stall ${label}`);
    middle(entryLeft, headLeft, `stripe of stall ${label}`);
  },
};
