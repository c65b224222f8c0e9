import { addTo } from '../../../../routing/lists/grouping.ts';
import { boxesMeet, boxOf } from '../../../../routing/plane/box.ts';
import { direction } from '../../../../routing/plane/direction.ts';
import { inPlan } from '../../../../routing/plane/space.ts';
import { cutEnds, lookHeads } from '../../../../routing/site/kinds/sections.ts';
import { stallRectangle } from '../../../../routing/site/place/stall-rectangle.ts';
import { workingSpaceOf } from '../../../../routing/site/place/working-space.ts';
import { AISLE_WORDS } from '../../../../routing/site/schema/vocabulary.ts';
import type { Point2, Site, Stall } from '../../../../routing/site/site.ts';
import { footprintOf } from '../../../../routing/standing/footprint.ts';
import type { Plan } from '../../../plan/plan-shape.ts';
import { tablesOf } from '../../../tables/editions.ts';
import { leastWorkingSpace } from '../../../tables/equipment-of.ts';
import { aisleMiddle } from '../../drawing/aisle-stripes.ts';
import { BLACK, GREY } from '../kit/ink.ts';
import type { LabelGround, LabelLine, LabelWish } from '../kit/labels/best-label-place.ts';
import { alongLine, around, type FreeSpace, freeSpace } from '../kit/labels/free-space.ts';
import { placesAlong, placesAround } from '../kit/labels/label-places.ts';
import type { Lettering } from '../kit/lettering/lettering.ts';
import { shortened } from '../kit/lettering/lines-of-text.ts';
import { shows, type View } from '../kit/view/view.ts';
import { circuitFor, circuitTags, phaseInks } from '../schedules/circuit-words.ts';
import { symbolScale } from './base-plan.ts';
import { feedersInPlan } from './feeders-on-plan.ts';

/** Boxes where circuits part on the way: the site has no element for them. */
const junctionsOf = ({ boxes }: Plan) => boxes.filter(({ kind }) => kind === 'junction');

/** Half of what a drop's symbol takes, feet at the scale of symbols. */
const DROP_HALF = 0.8;
const SMALL_HALF = 0.55;

/** What of a view is taken before anything is written on it. */
export function labelGround(view: View, site: Site, plan: Plan): LabelGround {
  const ground: LabelGround = { hard: freeSpace(), heavy: freeSpace(), thin: freeSpace() };
  const perSymbol = symbolScale(view.perFoot);
  const mark = (at: Point2, half: number): void => {
    if (!shows(view.window, at)) return;
    const [x, y] = view.at(at);
    const r = half * perSymbol;
    ground.hard.take({ x: x - r, y: y - r, width: 2 * r, height: 2 * r });
  };
  for (const { box, retractor } of site.drops) {
    mark(inPlan(box), SMALL_HALF);
    if (retractor !== undefined) mark(inPlan(retractor), DROP_HALF);
  }
  for (const { at } of [...site.pullpoints, ...junctionsOf(plan)]) mark(inPlan(at), SMALL_HALF);
  for (const one of site.equipment)
    if (boxesMeet(boxOf(footprintOf(one)), view.window)) ground.hard.take(around(footprintOf(one).map(view.at)));
  for (const { at, size } of site.columns) {
    if (!shows(view.window, at)) continue;
    const half = Math.max(...size) / 2;
    ground.hard.take(around([view.at([at[0] - half, at[1] - half]), view.at([at[0] + half, at[1] + half])]));
  }
  const line = (space: FreeSpace, points: readonly Point2[]): void => {
    if (!boxesMeet(boxOf(points), view.window)) return;
    for (const area of alongLine(points.map(view.at), 0.8)) space.take(area);
  };
  const soft = (points: readonly Point2[]): void => line(ground.thin, points);
  for (const { path } of site.raceways) line(ground.heavy, path.map(inPlan));
  for (const { path } of plan.runs) if (path.length > 1) line(ground.heavy, path.slice(-2).map(inPlan));
  for (const stall of site.stalls) {
    const corners = stallRectangle(stall);
    soft([...corners, corners[0]!]);
  }
  for (const { path } of site.boundaries) soft(path);
  for (const { outline } of [...site.aisles, ...site.keepouts]) soft([...outline, outline[0]!]);
  for (const { from, to } of site.members) soft([inPlan(from), inPlan(to)]);
  const least = leastWorkingSpace(tablesOf(site.rules));
  for (const one of site.equipment) {
    const space = workingSpaceOf(one, least);
    if (space) soft([...space, space[0]!]);
  }
  for (const { points, isRouted } of feedersInPlan(site)) if (!isRouted) soft(points);
  for (const section of site.sections)
    for (const mark of [...lookHeads(section), ...cutEnds(section)])
      for (const area of alongLine(mark.map(view.at), 0.8)) ground.hard.take(area);
  for (const { at } of site.gridlines.x)
    soft([
      [at, view.window.minY],
      [at, view.window.maxY],
    ]);
  for (const { at } of site.gridlines.y)
    soft([
      [view.window.minX, at],
      [view.window.maxX, at],
    ]);
  return ground;
}

/** Names of the equipment in the view, with what it is. */
export function equipmentWishes(view: View, site: Site): LabelWish[] {
  return site.equipment
    .filter(({ at }) => shows(view.window, at))
    .map((one) => {
      const { x, y, width, height } = around(footprintOf(one).map(view.at));
      return {
        layer: 'equipment',
        lines: [
          { text: one.id, weight: 'bold', of: one.id },
          { text: one.kind, of: one.id },
        ],
        size: 'note',
        colour: BLACK,
        places: (size) => placesAround([x + width / 2, y + height / 2], Math.max(width, height) / 2 + 4, size, true),
      };
    });
}

/** Number of each drop in the view; with its circuits and their phases where `withCircuits` says so. */
export function dropWishes(view: View, site: Site, plan: Plan, withCircuits: boolean): LabelWish[] {
  const tags = circuitTags(site);
  const linesOf = new Map<string, LabelLine[]>();
  for (const { id, drop, volts } of withCircuits ? site.chargers : []) {
    const circuit = circuitFor(plan.circuits, id);
    const line: LabelLine = {
      text: tags.get(id) ?? '',
      of: drop,
      dots: circuit === undefined ? [] : phaseInks(circuit.phases, volts),
    };
    addTo(linesOf, drop, line);
  }
  return site.drops
    .filter(({ box }) => shows(view.window, inPlan(box)))
    .map(({ id, box, retractor }) => ({
      layer: 'dropNumbers',
      lines: [{ text: id, weight: 'bold', of: id }, ...(linesOf.get(id) ?? [])],
      size: 'small',
      colour: BLACK,
      places: (size) =>
        placesAround(view.at(inPlan(retractor ?? box)), DROP_HALF * symbolScale(view.perFoot) + 2, size, withCircuits),
    }));
}

const USES: Readonly<Record<NonNullable<Stall['use']>, readonly LabelLine[]>> = {
  standard: [],
  accessible: [{ text: 'ACC' }],
  'van-accessible': [{ text: 'VAN' }],
  ambulatory: [{ text: 'AMB' }],
};

/** What is painted in a stall: across it where it is wide enough, else along it, as far as it is deep. */
function painted(
  { id, label = id, width, depth }: Stall,
  { perFoot }: View,
  lettering: Lettering,
): { readonly text: string; readonly isAlong: boolean } {
  const size = lettering.sizes.small;
  if (lettering.width(label, size) <= Math.max(24, width * perFoot - 6)) return { text: label, isAlong: false };
  return { text: shortened(label, Math.max(24, depth * perFoot - 6), size, lettering), isAlong: true };
}

/** Painted numbers of the stalls in the view, a little inside the entry edge or deeper in. */
export function stallWishes(view: View, site: Site, lettering: Lettering): LabelWish[] {
  return site.stalls
    .filter(({ at }) => shows(view.window, at))
    .map((stall) => {
      const [ux, uy] = direction(stall.heading);
      const { text, isAlong } = painted(stall, view, lettering);
      return {
        layer: 'stallNumbers',
        lines: [{ text }, ...(stall.use === undefined ? [] : USES[stall.use])],
        size: 'small',
        colour: GREY,
        *places(size) {
          const { width, height } = size;
          if (isAlong) {
            const back: Point2 = [stall.at[0] + stall.depth * ux, stall.at[1] + stall.depth * uy];
            for (const aside of [0, 0.25, -0.25]) {
              const off: Point2 = [-uy * aside * stall.width, ux * aside * stall.width];
              const end = ([x, y]: Point2): Point2 => view.at([x + off[0], y + off[1]]);
              yield* placesAlong(end(stall.at), end(back), -height / 2, size);
            }
            return;
          }
          for (const share of [0.08, 0.16, 0.24, 0.35, 0.5, 0.65, 0.8]) {
            const deep = Math.max(
              share * stall.depth,
              (Math.abs(uy) * height + Math.abs(ux) * width) / 2 / view.perFoot,
            );
            const [x, y] = view.at([stall.at[0] + deep * ux, stall.at[1] + deep * uy]);
            yield { at: [x - width / 2, y - height / 2], turn: 0 };
          }
        },
      };
    });
}

/** What the aisles in the view are for, where that is not plain driving or told by their stripes. */
export function aisleWishes(view: View, site: Site): LabelWish[] {
  return site.aisles.flatMap((aisle): LabelWish[] => {
    const { kind = 'drive' } = aisle;
    const at = aisleMiddle(aisle);
    if (kind === 'drive' || kind === 'access' || !shows(view.window, at)) return [];
    return [
      {
        layer: 'stallNumbers',
        lines: [{ text: AISLE_WORDS[kind].toUpperCase() }],
        size: 'small',
        colour: GREY,
        places: (size) => placesAround(view.at(at), 0, size, true),
      },
    ];
  });
}

/** Names of pull points and junctions in the view; junctions that lie in one place share a label. */
export function openingWishes(view: View, site: Site, plan: Plan): LabelWish[] {
  const places = new Map<string, { readonly at: Point2; readonly ids: string[] }>();
  for (const { id, at } of [...site.pullpoints, ...junctionsOf(plan)]) {
    if (!shows(view.window, inPlan(at))) continue;
    const key = `${at[0].toFixed(1)} ${at[1].toFixed(1)}`;
    const place = places.get(key) ?? { at: inPlan(at), ids: [] };
    place.ids.push(id);
    places.set(key, place);
  }
  return [...places.values()].map(({ at, ids }) => ({
    layer: 'pullPoints',
    lines: ids.length > 3 ? [{ text: `${ids[0]} … ${ids.at(-1)}` }] : ids.map((text) => ({ text, of: text })),
    size: 'small',
    colour: BLACK,
    places: (size) => placesAround(view.at(at), SMALL_HALF * symbolScale(view.perFoot) + 2, size, true),
  }));
}
