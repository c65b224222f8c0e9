import { direction } from '../../../routing/plane/direction.ts';
import { rectangleAt } from '../../../routing/plane/rectangle.ts';
import { inPlan } from '../../../routing/plane/space.ts';
import { offGrid } from '../../../routing/site/grid-frame.ts';
import type { Aisle, Point2, Point3, Site, Stall } from '../../../routing/site/site.ts';
import { stallRectangle } from '../../../routing/site/stall-rectangle.ts';
import { AISLE_WORDS } from '../../../routing/site/vocabulary.ts';
import { workingSpaceOf } from '../../../routing/site/working-space.ts';
import { footprintOf } from '../../../routing/standing/footprint.ts';
import type { Plan } from '../../plan/plan-shape.ts';
import { middleOf, stripesOf } from './aisle-stripes.ts';
import { conduitStretches } from './conduit-stretches.ts';
import type { Drawing, DrawnItem, DrawnText, Extent } from './drawing.ts';
import { extentOf, extentOnGrid } from './extent.ts';
import type { LayerName } from './layers.ts';

/** Heights of lettering, feet of the site: 3/32 in and 1/8 in at 1/8 in = 1 ft. */
const SMALL = 0.75;
const LARGE = 1;
/** Straights shorter than this have no room for a note, feet. */
const LEAST_NOTED = 2;
/** Share of a straight at which its note stands: off its middle, where another raceway often crosses it. */
const NOTED_AT = 0.35;
/** Gridlines run this far past what they are lines of, feet. */
const OVERHANG = 8;
const BUBBLE = 2;

/** The site plan with what is installed on it: existing work below, raceways, equipment and drops above. */
export function planDrawing(site: Site, plan: Plan): Drawing {
  const below = [...aisles(site), ...stalls(site), ...columnsAndMembers(site)];
  const above = [...equipment(site), ...raceways(site, plan), ...drops(site)];
  const inner = extentOf([...below, ...above]);
  const items = [
    ...below,
    ...(inner ? gridlines(site, extentOnGrid(site, [...below, ...above], inner)) : []),
    ...above,
  ];
  return { title: site.name, items, extent: extentOf(items) };
}

const line = (layer: LayerName, points: readonly Point2[], closed = false): DrawnItem => ({
  kind: 'line',
  layer,
  points,
  closed,
});

const lineInSpace = (layer: LayerName, points: readonly Point3[]): DrawnItem => ({
  kind: 'line',
  layer,
  points: points.map(inPlan),
  closed: false,
  z: points.map(([, , z]) => z),
});

const text = (layer: LayerName, at: Point2, words: string, more: Partial<DrawnText> = {}): DrawnItem => ({
  kind: 'text',
  layer,
  at,
  text: words,
  height: SMALL,
  turn: 0,
  anchor: 'middle',
  ...more,
});

const aisles = (site: Site): DrawnItem[] => [
  ...site.aisles.flatMap((aisle) => [
    line('aisles', aisle.outline, true),
    ...(aisle.kind === 'access' ? stripesOf(aisle).map((stripe) => line('aisleStripes', stripe)) : []),
    ...aisleName(aisle),
  ]),
  ...site.keepouts.map(({ outline }) => line('keepouts', outline, true)),
];

/** What an aisle is for, where that is not plain driving; an access aisle is told by its stripes. */
function aisleName(aisle: Aisle): DrawnItem[] {
  const { kind = 'drive' } = aisle;
  if (kind === 'drive' || kind === 'access') return [];
  return [text('stallNumbers', middleOf(aisle), AISLE_WORDS[kind].toUpperCase())];
}

const stalls = (site: Site): DrawnItem[] =>
  site.stalls.flatMap((stall) => [
    line('stalls', stallRectangle(stall), true),
    text('stallNumbers', entryOf(stall), stall.label ?? stall.id),
  ]);

/** A little inside the entry edge, where a painted number stands. */
function entryOf({ at, heading }: Stall): Point2 {
  const turn = (heading * Math.PI) / 180;
  return [at[0] + 2 * Math.cos(turn), at[1] + 2 * Math.sin(turn)];
}

const columnsAndMembers = (site: Site): DrawnItem[] => [
  ...site.members.map(({ from, to }) => lineInSpace('members', [from, to])),
  ...site.columns.map(({ at, size, rotation = 0 }) => line('columns', rectangleAt(at, size, rotation), true)),
];

function equipment(site: Site): DrawnItem[] {
  return site.equipment.flatMap((one) => {
    const space = workingSpaceOf(one);
    return [
      ...(space ? [line('workingSpace', space, true)] : []),
      line('equipment', footprintOf(one), true),
      text('equipment', [one.at[0], one.at[1] + one.size[1] / 2 + 0.6], one.id, { height: LARGE }),
    ];
  });
}

function raceways(site: Site, plan: Plan): DrawnItem[] {
  const buried = new Set(plan.handholes.map(({ id }) => id));
  const drawn = site.raceways.map(({ path, place }) =>
    lineInSpace(place === 'underground' ? 'underground' : 'raceways', path),
  );
  const points = site.pullpoints.map(
    ({ id, at }): DrawnItem => ({
      kind: 'symbol',
      layer: 'pullPoints',
      symbol: buried.has(id) ? 'handhole' : 'pull-point',
      at: inPlan(at),
      z: at[2],
      of: id,
    }),
  );
  const boxes = plan.boxes.filter(({ kind }) => kind === 'junction');
  const junctions = boxes.map(
    ({ id, at }): DrawnItem => ({
      kind: 'symbol',
      layer: 'pullPoints',
      symbol: buried.has(id) ? 'handhole' : 'junction',
      at: inPlan(at),
      z: at[2],
      of: id,
    }),
  );
  return [...drawn, ...taps(plan), ...conduitSizes(plan), ...points, ...junctions];
}

/** Taps from equipment and boxes to the raceways, where there is something of them to see in plan; each once. */
function taps({ runs }: Plan): DrawnItem[] {
  const drawn = new Map<string, DrawnItem>();
  for (const { path, legs } of runs)
    legs.forEach((raceway, i) => {
      const [from, to] = [path[i], path[i + 1]];
      if (raceway !== null || !from || !to || Math.hypot(to[0] - from[0], to[1] - from[1]) < 0.05) return;
      drawn.set(JSON.stringify([from, to]), lineInSpace('raceways', [from, to]));
    });
  return [...drawn.values()];
}

/** What lies along each straight, one size a line over it: `(2) 1" EMT`. */
function conduitSizes(plan: Plan): DrawnItem[] {
  return conduitStretches(plan.conduits).flatMap(({ from, to, conduits }) => {
    if (Math.hypot(to[0] - from[0], to[1] - from[1]) < LEAST_NOTED) return [];
    const place: Point2 = [from[0] + NOTED_AT * (to[0] - from[0]), from[1] + NOTED_AT * (to[1] - from[1])];
    const turn = (Math.atan2(to[1] - from[1], to[0] - from[0]) * 180) / Math.PI;
    const [ux, uy] = direction(turn + 90);
    return conduits.map(({ count, method, tradeSize }, i) => {
      const size = tradeSize === null ? method : `${tradeSize}" ${method}`;
      const up = 0.5 + 0.9 * (conduits.length - 1 - i);
      const at: Point2 = [place[0] + up * ux, place[1] + up * uy];
      return text('conduitSizes', at, count > 1 ? `(${count}) ${size}` : size, { turn, height: 0.6 });
    });
  });
}

function drops(site: Site): DrawnItem[] {
  return site.drops.flatMap(({ id, box, retractor }) => {
    const hung = retractor ?? box;
    const apart = Math.hypot(hung[0] - box[0], hung[1] - box[1]);
    return [
      { kind: 'symbol', layer: 'drops', symbol: 'box', at: inPlan(box), z: box[2], of: id } as const,
      ...(apart > 0.01 ? [line('drops', [inPlan(box), inPlan(hung)])] : []),
      ...(retractor
        ? [
            {
              kind: 'symbol',
              layer: 'drops',
              symbol: 'retractor',
              at: inPlan(retractor),
              z: retractor[2],
              of: id,
            } as const,
          ]
        : []),
      text('dropNumbers', [hung[0] + 1.1, hung[1] + 0.3], id, { anchor: 'left', height: 0.6 }),
    ];
  });
}

function gridlines(site: Site, { minX, minY, maxX, maxY }: Extent): DrawnItem[] {
  const at = (x: number, y: number): Point2 => offGrid(site.gridlines, [x, y]);
  const bubble = (label: string, place: Point2): DrawnItem[] => [
    { kind: 'circle', layer: 'gridLabels', at: place, radius: BUBBLE },
    text('gridLabels', [place[0], place[1] - LARGE / 2], label, { height: LARGE }),
  ];
  return [
    ...site.gridlines.x.flatMap(({ label, at: x }) => [
      line('gridlines', [at(x, minY - OVERHANG / 2), at(x, maxY + OVERHANG)]),
      ...bubble(label, at(x, maxY + OVERHANG + BUBBLE)),
    ]),
    ...site.gridlines.y.flatMap(({ label, at: y }) => [
      line('gridlines', [at(minX - OVERHANG, y), at(maxX + OVERHANG / 2, y)]),
      ...bubble(label, at(minX - OVERHANG - BUBBLE, y)),
    ]),
  ];
}
