import { inPlan } from '../../../../routing/plane/space.ts';
import { workingSpaceOf } from '../../../../routing/site/place/working-space.ts';
import type { SheetPart } from '../../../../routing/site/schema/vocabulary.ts';
import type { Point2, Site } from '../../../../routing/site/site.ts';
import { footprintOf } from '../../../../routing/standing/footprint.ts';
import type { Plan } from '../../../plan/plan-shape.ts';
import { tablesOf } from '../../../tables/editions.ts';
import { leastWorkingSpace } from '../../../tables/equipment-of.ts';
import type { Area } from '../kit/area.ts';
import { type LabelGround, markAt } from '../kit/labels/best-label-place.ts';
import { placesAround } from '../kit/labels/label-places.ts';
import type { Pen } from '../kit/pen.ts';
import { partsOf } from '../kit/purpose.ts';
import { drawKeynote, type Keynote, keynoteSize, type SheetKeynotes } from '../kit/title/keynotes.ts';
import { shows, type View } from '../kit/view/view.ts';

interface Matter {
  readonly says: string | ((parts: ReadonlySet<SheetPart>) => string);
  readonly places: (site: Site, plan: Plan) => readonly Point2[];
}

const dropsOf = ({ drops }: Site, mount: 'overhead' | 'pedestal' | 'wall'): readonly Point2[] =>
  drops.filter((one) => (one.mount ?? 'overhead') === mount).map(({ box, retractor }) => inPlan(retractor ?? box));

/** The middle of each leg along the ground of raceways of a place. */
function racewaysOf({ raceways }: Site, isBuried: boolean): readonly Point2[] {
  return raceways
    .filter(({ place }) => (place === 'underground') === isBuried)
    .flatMap(({ path }) =>
      path.slice(1).flatMap(([x, y], i): readonly Point2[] => {
        const [a, b] = path[i]!;
        return Math.hypot(x - a, y - b) > 6 ? [[(a + x) / 2, (b + y) / 2]] : [];
      }),
    );
}

/** Where raceways go up or down. */
const risersOf = ({ raceways }: Site): readonly Point2[] =>
  raceways.flatMap(({ path }) =>
    path.slice(1).flatMap(([x, y, z], i): readonly Point2[] => {
      const [a, b, c] = path[i]!;
      return Math.hypot(x - a, y - b) < 0.5 && Math.abs(z - c) > 2 ? [[x, y]] : [];
    }),
  );

const detailed = (parts: ReadonlySet<SheetPart>): string => (parts.has('details') ? ' as detailed' : '');

function surfaceRaceways(parts: ReadonlySet<SheetPart>): string {
  const told = [
    ...(parts.has('details') ? ['supports as detailed'] : []),
    ...(parts.has('conduits') ? ['conduits as scheduled'] : []),
  ];
  return `Raceways above or on the surface${told.length > 0 ? `; ${told.join(', ')}` : ''}.`;
}

/** What the plans have notes for, in the order of their numbers. Common practice, no source. */
const MATTERS: readonly Matter[] = [
  {
    says: 'Box and retractor hung from the steel, typical; what bears them is checked by others.',
    places: (site) => dropsOf(site, 'overhead'),
  },
  {
    says: (parts) => `Pedestal on its base, typical; guard it from vehicles${detailed(parts)}.`,
    places: (site) => dropsOf(site, 'pedestal'),
  },
  { says: 'Wall box, typical; what it is fixed to is checked by others.', places: (site) => dropsOf(site, 'wall') },
  {
    says: surfaceRaceways,
    places: (site) => racewaysOf(site, false),
  },
  {
    says: 'Raceways in a trench; find what lies there before digging, and patch as it was.',
    places: (site) => racewaysOf(site, true),
  },
  { says: 'Riser; guard it where vehicles reach it.', places: risersOf },
  {
    says: 'Pull point, its cover kept within reach.',
    places: ({ pullpoints }) => pullpoints.map(({ at }) => inPlan(at)),
  },
  {
    says: 'Service: arranged with the utility by others; verify what stands.',
    places: ({ equipment }) => equipment.filter(({ kind }) => kind === 'source').flatMap(footprintOf),
  },
  {
    says: 'Existing equipment remains; verify it before it is loaded.',
    places: ({ equipment }) =>
      equipment.filter(({ kind, existing }) => kind !== 'source' && existing === true).flatMap(footprintOf),
  },
  {
    says: 'Working space before equipment; nothing stands in it, nor parks there.',
    places: (site) => {
      const least = leastWorkingSpace(tablesOf(site.rules));
      return site.equipment.flatMap((one): readonly Point2[] => {
        const space = workingSpaceOf(one, least);
        return space ? [[(space[0]![0] + space[2]![0]) / 2, (space[0]![1] + space[2]![1]) / 2]] : [];
      });
    },
  },
  {
    says: (parts) =>
      `Accessible stall, with its aisle, reach and signs${parts.has('accessible') ? ' as scheduled' : ''}.`,
    places: ({ stalls }) =>
      stalls.filter(({ use }) => use === 'accessible' || use === 'van-accessible').map(({ at }) => at),
  },
];

/** The keynotes of a site: those that something of it asks for, numbered through all of its plans. */
export function keynotesOf(site: Site, plan: Plan): readonly Keynote[] {
  const parts = partsOf(site.drawings);
  return MATTERS.map(({ says, places }) => ({
    says: typeof says === 'string' ? says : says(parts),
    places: places(site, plan),
  }))
    .filter(({ places }) => places.length > 0)
    .map((one, i) => ({ number: i + 1, ...one }));
}

/** Those that speak of something in a view, with the places that are. */
export const keynotesIn = (keynotes: readonly Keynote[], { window }: Pick<View, 'window'>): readonly Keynote[] =>
  keynotes.flatMap((one) => {
    const places = one.places.filter((at) => shows(window, at));
    return places.length === 0 ? [] : [{ ...one, places }];
  });

/** Points from what a keynote speaks of. */
const OFF = 12;
/** More places than this are not tried for one mark. */
const MOST_TRIED = 60;

/** Marks each keynote once, at the first of its places that has room; one that finds none is on the list of another sheet. */
export function markKeynotes(
  pen: Pen,
  room: Area,
  ground: LabelGround,
  view: View,
  { listed, marked }: SheetKeynotes,
): void {
  const points = pen.lettering.sizes.note;
  const side = keynoteSize(points);
  for (const { number, places } of listed)
    for (const place of places.slice(0, MOST_TRIED)) {
      const wishes = placesAround(view.at(place), OFF, { width: side, height: side }, true);
      const found = markAt(pen, room, ground, { width: side, height: side }, wishes);
      if (found === null) continue;
      drawKeynote(pen, [found[0] + side / 2, found[1] + side / 2], number, points);
      marked.add(number);
      break;
    }
}
