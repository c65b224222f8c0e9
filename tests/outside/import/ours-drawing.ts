import type { Drawing, DrawnItem } from '../../../calc/sheets/drawing/drawing.ts';

/** A drawing with every kind of thing that our DXF has, as its writer takes it: feet. */
const ITEMS: readonly DrawnItem[] = [
  {
    kind: 'line',
    layer: 'stalls',
    points: [
      [0, 0],
      [9, 0],
      [9, 18.125],
      [0, 18.125],
    ],
    closed: true,
  },
  {
    kind: 'line',
    layer: 'aisles',
    points: [
      [-20.5, -30],
      [40, -30.25],
      [60, -6],
    ],
    closed: false,
  },
  {
    kind: 'line',
    layer: 'raceways',
    points: [
      [1, 2],
      [30, 2],
      [30, 14],
    ],
    z: [10.5, 10.5, 1],
    closed: false,
  },
  { kind: 'circle', layer: 'columns', at: [26, 9], radius: 0.75 },
  ...(['left', 'middle', 'right'] as const).flatMap((anchor, i): DrawnItem[] => [
    { kind: 'text', layer: 'stallNumbers', at: [5 * i, 30], text: `N ${i} 12' 6"`, height: 0.8, turn: 0, anchor },
    { kind: 'text', layer: 'conduitSizes', at: [5 * i, 40], text: 'EMT %%c ^J ½ \\P', height: 1.2, turn: 37.5, anchor },
  ]),
  ...(['box', 'retractor', 'pull-point', 'junction', 'handhole'] as const).map(
    (symbol, i): DrawnItem => ({ kind: 'symbol', layer: 'drops', symbol, at: [3 * i, -12], z: 10 - i, of: `D0${i}` }),
  ),
];

export const OURS: Drawing = {
  title: 'every kind of thing',
  items: ITEMS,
  extent: { minX: -20.5, minY: -30.25, maxX: 60, maxY: 45 },
};
