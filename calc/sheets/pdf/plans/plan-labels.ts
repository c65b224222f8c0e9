import { kept } from '../../../../routing/kept/kept.ts';
import { addTo } from '../../../../routing/lists/grouping.ts';
import { boxOf } from '../../../../routing/plane/box.ts';
import { finderBy } from '../../../../routing/plane/box-index.ts';
import { direction } from '../../../../routing/plane/direction.ts';
import { inPlan } from '../../../../routing/plane/space.ts';
import { AISLE_WORDS } from '../../../../routing/site/schema/vocabulary.ts';
import type { Drop, Point2, Site, Stall } from '../../../../routing/site/site.ts';
import { footprintOf } from '../../../../routing/standing/footprint.ts';
import type { Plan } from '../../../plan/plan-shape.ts';
import { aisleMiddle } from '../../drawing/aisle-stripes.ts';
import { BLACK, GREY } from '../kit/ink.ts';
import type { LabelLine, LabelWish } from '../kit/labels/best-label-place.ts';
import { around } from '../kit/labels/free-space.ts';
import { placesAlong, placesAround } from '../kit/labels/label-places.ts';
import type { Lettering } from '../kit/lettering/lettering.ts';
import { shortened } from '../kit/lettering/lines-of-text.ts';
import { shows, type View } from '../kit/view/view.ts';
import { circuitFor, circuitTags, phaseInks } from '../schedules/circuit-words.ts';
import { symbolScale } from './base-plan.ts';
import { DROP_HALF, junctionsOf, SMALL_HALF } from './label-ground.ts';

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

/** Lines of circuits by the drop that they go to, each with the dots of its phases. */
const circuitLines = kept((site: Site, plan: Plan): ReadonlyMap<string, readonly LabelLine[]> => {
  const tags = circuitTags(site);
  const linesOf = new Map<string, LabelLine[]>();
  for (const { id, drop, volts } of site.chargers) {
    const circuit = circuitFor(plan.circuits, id);
    const line: LabelLine = {
      text: tags.get(id) ?? '',
      of: drop,
      dots: circuit === undefined ? [] : phaseInks(circuit.phases, volts),
    };
    addTo(linesOf, drop, line);
  }
  return linesOf;
});

const dropsIn = finderBy(({ box }: Drop) => boxOf([box]));
const stallsIn = finderBy(({ at }: Stall) => boxOf([at]));

/** Number of each drop in the view; with its circuits and their phases where `withCircuits` says so. */
export function dropWishes(view: View, site: Site, plan: Plan, withCircuits: boolean): LabelWish[] {
  const linesOf = withCircuits ? circuitLines(site, plan) : null;
  return dropsIn(site.drops, view.window).map(({ id, box, retractor }) => ({
    layer: 'dropNumbers',
    lines: [{ text: id, weight: 'bold', of: id }, ...(linesOf?.get(id) ?? [])],
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
  return stallsIn(site.stalls, view.window).map((stall) => {
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
          const deep = Math.max(share * stall.depth, (Math.abs(uy) * height + Math.abs(ux) * width) / 2 / view.perFoot);
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
