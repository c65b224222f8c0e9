import { direction } from '../../../routing/plane/direction.ts';
import { rectangleAt } from '../../../routing/plane/rectangle.ts';
import { inPlan } from '../../../routing/plane/space.ts';
import { dimensionLine, extensionLines } from '../../../routing/site/kinds/dimensions.ts';
import type { ElementList } from '../../../routing/site/kinds/kinds.ts';
import { arrowHead, NOTE_LETTER, NOTE_LINE, noteLeader, noteLines } from '../../../routing/site/kinds/notes.ts';
import { cutEnds, lookHeads } from '../../../routing/site/kinds/sections.ts';
import { stallRectangle } from '../../../routing/site/place/stall-rectangle.ts';
import { workingSpaceOf } from '../../../routing/site/place/working-space.ts';
import { AISLE_WORDS } from '../../../routing/site/schema/vocabulary.ts';
import type { Aisle, Point2, Point3, Site, Stall } from '../../../routing/site/site.ts';
import { footprintOf } from '../../../routing/standing/footprint.ts';
import type { Plan } from '../../plan/plan-shape.ts';
import { tablesOf } from '../../tables/editions.ts';
import { leastWorkingSpace } from '../../tables/equipment-of.ts';
import { aisleMiddle, stripesOf } from './aisle-stripes.ts';
import { conduitStretches } from './conduit-stretches.ts';
import { dimension as lengthBetween } from './dimensions.ts';
import type { DrawnItem } from './drawing.ts';
import { racewayLayers } from './existing-raceways.ts';
import { LARGE, lineInSpace, lineItem, textItem } from './items.ts';
import { boundaryLayer } from './layers.ts';

import { cloudItems } from './revision-clouds.ts';

/** Straights shorter than this have no room for a note, feet. */
const LEAST_NOTED = 2;
/** Share of a straight at which its note stands: off its middle, where another raceway often crosses it. */
const NOTED_AT = 0.35;

const aisles = (site: Site): DrawnItem[] =>
  site.aisles.flatMap((aisle) => [
    lineItem('aisles', aisle.outline, true),
    ...(aisle.kind === 'access' ? stripesOf(aisle).map((stripe) => lineItem('aisleStripes', stripe)) : []),
    ...aisleName(aisle),
  ]);

const keepouts = (site: Site): DrawnItem[] => site.keepouts.map(({ outline }) => lineItem('keepouts', outline, true));

const boundaries = (site: Site): DrawnItem[] =>
  site.boundaries.map(({ kind, path }) => lineItem(boundaryLayer(kind), path));

/** What an aisle is for, where that is not plain driving; an access aisle is told by its stripes. */
function aisleName(aisle: Aisle): DrawnItem[] {
  const { kind = 'drive' } = aisle;
  if (kind === 'drive' || kind === 'access') return [];
  return [textItem('stallNumbers', aisleMiddle(aisle), AISLE_WORDS[kind].toUpperCase())];
}

const stalls = (site: Site): DrawnItem[] =>
  site.stalls.flatMap((stall) => [
    lineItem('stalls', stallRectangle(stall), true),
    textItem('stallNumbers', entryOf(stall), stall.label ?? stall.id),
  ]);

/** A little inside the entry edge, where a painted number stands. */
function entryOf({ at, heading }: Stall): Point2 {
  const turn = (heading * Math.PI) / 180;
  return [at[0] + 2 * Math.cos(turn), at[1] + 2 * Math.sin(turn)];
}

const members = (site: Site): DrawnItem[] => site.members.map(({ from, to }) => lineInSpace('members', [from, to]));

const columns = (site: Site): DrawnItem[] =>
  site.columns.map(({ at, size, rotation = 0 }) => lineItem('columns', rectangleAt(at, size, rotation), true));

function equipment(site: Site): DrawnItem[] {
  const least = leastWorkingSpace(tablesOf(site.rules));
  return site.equipment.flatMap((one) => {
    const space = workingSpaceOf(one, least);
    return [
      ...(space ? [lineItem('workingSpace', space, true)] : []),
      lineItem('equipment', footprintOf(one), true),
      textItem('equipment', [one.at[0], one.at[1] + one.size[1] / 2 + 0.6], one.id, { height: LARGE }),
    ];
  });
}

function raceways(site: Site, plan: Plan): DrawnItem[] {
  const layer = racewayLayers(site, plan);
  const drawn = site.raceways.map((raceway) => lineInSpace(layer(raceway), raceway.path));
  return [...drawn, ...taps(plan), ...conduitSizes(plan)];
}

/** Pull points, and the junction boxes that the plan puts where circuits part. */
function pullpoints(site: Site, plan: Plan): DrawnItem[] {
  const buried = new Set(plan.handholes.map(({ id }) => id));
  const symbol = (
    word: 'pull-point' | 'junction',
    { id, at }: { readonly id: string; readonly at: Point3 },
  ): DrawnItem => ({
    kind: 'symbol',
    layer: 'pullPoints',
    symbol: buried.has(id) ? 'handhole' : word,
    at: inPlan(at),
    z: at[2],
    of: id,
  });
  return [
    ...site.pullpoints.map((one) => symbol('pull-point', one)),
    ...plan.boxes.filter(({ kind }) => kind === 'junction').map((one) => symbol('junction', one)),
  ];
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
      return textItem('conduitSizes', at, count > 1 ? `(${count}) ${size}` : size, { turn, height: 0.6 });
    });
  });
}

function drops(site: Site): DrawnItem[] {
  return site.drops.flatMap(({ id, box, retractor }) => {
    const hung = retractor ?? box;
    const apart = Math.hypot(hung[0] - box[0], hung[1] - box[1]);
    return [
      { kind: 'symbol', layer: 'drops', symbol: 'box', at: inPlan(box), z: box[2], of: id } as const,
      ...(apart > 0.01 ? [lineItem('drops', [inPlan(box), inPlan(hung)])] : []),
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
      textItem('dropNumbers', [hung[0] + 1.1, hung[1] + 0.3], id, { anchor: 'left', height: 0.6 }),
    ];
  });
}

/** A note as its lines of text stand, with a leader and its head. */
const notes = (site: Site): DrawnItem[] =>
  site.notes.flatMap((note) => {
    const leader = noteLeader(note);
    const lines = noteLines(note.text).map((words, i) =>
      textItem('notes', [note.at[0], note.at[1] - i * NOTE_LINE], words, {
        height: NOTE_LETTER,
        anchor: 'left',
        stays: true,
      }),
    );
    return leader ? [...lines, lineItem('notes', leader), lineItem('notes', arrowHead(leader), true)] : lines;
  });

/** A dimension: its line with its figure, and the lines to what it measures. */
const dimensions = (site: Site): DrawnItem[] =>
  site.dimensions.flatMap((dimension) => [
    ...lengthBetween(site, ...dimensionLine(dimension)).map((item) =>
      item.kind === 'text' ? { ...item, stays: true as const } : item,
    ),
    ...extensionLines(dimension).map((each) => lineItem('dimensions', each)),
  ]);

const clouds = (site: Site): DrawnItem[] =>
  site.clouds.flatMap(({ outline, mark }) =>
    cloudItems(outline, mark).map((item) => (item.kind === 'text' ? { ...item, stays: true as const } : item)),
  );

/** Where a section is cut, with heads that point the way one looks, and its title. */
const sections = (site: Site): DrawnItem[] =>
  site.sections.flatMap((section) => [
    ...cutEnds(section).map((end) => lineItem('sections', end)),
    ...lookHeads(section).map((head) => lineItem('sections', head, true)),
    ...titleOf(section),
  ]);

/** The title of a cut stands past its end, clear of its own head and of those of cuts beside it. */
function titleOf({ name, from, to }: Site['sections'][number]): DrawnItem[] {
  const [du, dv] = [to[0] - from[0], to[1] - from[1]];
  if (Math.abs(du) > Math.abs(dv)) {
    const anchor = du > 0 ? 'left' : 'right';
    return [textItem('sections', [to[0] + Math.sign(du) * 1.4, to[1] - 0.3], name, { anchor })];
  }
  const below = dv < 0;
  return [textItem('sections', [to[0], to[1] + (below ? -2.6 : 1.8)], name, { anchor: 'middle' })];
}

/** How the elements of a list are drawn on the plan. */
interface DrawnKind {
  readonly draw: (site: Site, plan: Plan) => readonly DrawnItem[];
  /** It lies below the gridlines, with what is there already. */
  readonly below?: true;
}

/** Every kind of element on the drawing, from the lowest up; null where others show it. */
export const DRAWN_KINDS: { readonly [L in ElementList]: DrawnKind | null } = {
  aisles: { draw: aisles, below: true },
  boundaries: { draw: boundaries, below: true },
  keepouts: { draw: keepouts, below: true },
  stalls: { draw: stalls, below: true },
  members: { draw: members, below: true },
  columns: { draw: columns, below: true },
  equipment: { draw: equipment },
  raceways: { draw: raceways },
  pullpoints: { draw: pullpoints },
  drops: { draw: drops },
  feeders: null,
  loads: null,
  chargers: null,
  notes: { draw: notes },
  dimensions: { draw: dimensions },
  clouds: { draw: clouds },
  sections: { draw: sections },
};
