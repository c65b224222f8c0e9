import { kept } from '../../../routing/kept/kept.ts';
import { direction } from '../../../routing/plane/direction.ts';
import { insideOf, obstacleOf } from '../../../routing/plane/obstacle.ts';
import { inPlan } from '../../../routing/plane/space.ts';
import { stallRectangle } from '../../../routing/site/place/stall-rectangle.ts';
import type { Drop, Equipment, Point2, Point3, Raceway, Site } from '../../../routing/site/site.ts';
import type { UncountedPlan } from '../../plan/plan-shape.ts';
import { type Cut, cutView } from './cut.ts';
import { throughCut } from './cut-conduits.ts';

/** A cut with the name that it goes by. */
export interface NamedCut extends Cut {
  readonly name: string;
}

/** How far a section looks past its cut, and what it takes in beside the outermost stall, feet. */
const LOOK = 10;
const BESIDE = 8;
/** A section reaches no farther than this from its middle, feet. */
const FARTHEST = 60;
/** A section that crosses no stall reaches so far to either side, feet. */
const HALF = 15;
const HALF_TRENCH = 6;
/** Raceways that are looked at for the one with most conduits. */
const MOST_LOOKED_AT = 200;

/** The sections of a set: those that the site keeps, else the typical ones. */
export const sectionsOf = (site: Site, plan: UncountedPlan): readonly NamedCut[] =>
  site.sections.length > 0 ? site.sections : typicalSections(site, plan);

/** The sections that a set has where none is kept: at a drop, across the trunk, at the equipment, through a trench. */
export const typicalSections = kept((site: Site, plan: UncountedPlan): readonly NamedCut[] => {
  const found = [dropIn(site, plan), trunkIn(site, plan), equipmentIn(site), trenchIn(site)];
  return found.filter((one) => one !== null);
});

function dropIn(site: Site, plan: UncountedPlan): NamedCut | null {
  const dropOf = new Map(site.chargers.map(({ id, drop }) => [id, drop]));
  const charged = new Set(
    plan.reach.filter(({ worst }) => worst.hang !== null).map(({ charger }) => dropOf.get(charger)),
  );
  const some = site.drops.filter(({ id }) => charged.has(id));
  const drop = some[Math.floor(some.length / 2)] ?? site.drops[0];
  return drop ? sectionAtDrop(site, plan, drop) : null;
}

/** The section through an element; null where it is gone, or lies so that none can be cut. */
export function sectionThrough(
  site: Site,
  plan: UncountedPlan,
  list: 'drops' | 'equipment' | 'raceways',
  id: string,
): NamedCut | null {
  const drop = list === 'drops' ? site.drops.find((one) => one.id === id) : undefined;
  if (drop) return sectionAtDrop(site, plan, drop);
  const one = list === 'equipment' ? site.equipment.find((each) => each.id === id) : undefined;
  if (one) return sectionAtEquipment(site, one);
  const raceway = list === 'raceways' ? site.raceways.find((each) => each.id === id) : undefined;
  return raceway ? sectionAcross(site, raceway) : null;
}

/** Along the middle of the stall that a drop serves, so that the drop is seen past the car; through it where it serves none. */
function sectionAtDrop(site: Site, plan: UncountedPlan, drop: Drop): NamedCut {
  const name = `Section at drop ${drop.id}`;
  const at = inPlan(drop.retractor ?? drop.box);
  const own = new Set(site.chargers.filter((one) => one.drop === drop.id).map(({ id }) => id));
  const served = plan.reach.find(({ charger }) => own.has(charger))?.stall;
  const stall = site.stalls.find(({ id }) => id === served);
  if (!stall) return { name, ...alongStalls(site, at, headingAt(site, at)) };
  const [ux, uy] = direction(stall.heading);
  const aside = (at[1] - stall.at[1]) * ux - (at[0] - stall.at[0]) * uy;
  const along = (at[0] - stall.at[0]) * ux + (at[1] - stall.at[1]) * uy;
  const middle: Point2 = [stall.at[0] + along * ux, stall.at[1] + along * uy];
  const cut = alongStalls(site, middle, stall.heading + (aside < 0 ? 180 : 0));
  return { name, ...cut, look: Math.max(LOOK, Math.abs(aside) + 1) };
}

/** The heading of the nearest stall; up the drawing where there is none. */
function headingAt({ stalls }: Site, at: Point2): number {
  let [heading, least] = [90, Number.POSITIVE_INFINITY];
  for (const stall of stalls) {
    const [ux, uy] = direction(stall.heading);
    const middle = [stall.at[0] + (ux * stall.depth) / 2, stall.at[1] + (uy * stall.depth) / 2] as const;
    const off = Math.hypot(middle[0] - at[0], middle[1] - at[1]);
    if (off < least) [heading, least] = [stall.heading, off];
  }
  return heading;
}

/** A cut in a direction through a place, as long as it goes over stalls there, and a little more. */
function alongStalls({ stalls }: Site, at: Point2, heading: number): Cut {
  const [ux, uy] = direction(heading);
  let [from, to] = [-HALF / 2, HALF / 2];
  for (const stall of stalls) {
    const outline = stallRectangle(stall);
    const along = outline.map(([x, y]) => (x - at[0]) * ux + (y - at[1]) * uy);
    const aside = outline.map(([x, y]) => (y - at[1]) * ux - (x - at[0]) * uy);
    const [near, far] = [Math.min(...along), Math.max(...along)];
    // A drop hangs on a stripe as often as over a stall.
    if (Math.min(...aside) > 1 || Math.max(...aside) < -1 || far < -FARTHEST / 2 || near > FARTHEST / 2) continue;
    from = Math.min(from, near);
    to = Math.max(to, far);
  }
  const ends = [Math.max(-FARTHEST, from - BESIDE), Math.min(FARTHEST, to + BESIDE)];
  return { ...between(at, [ux, uy], ends[0]!, ends[1]!), look: LOOK };
}

const between = ([x, y]: Point2, [ux, uy]: readonly [number, number], from: number, to: number) => ({
  from: tidied([x + ux * from, y + uy * from]),
  to: tidied([x + ux * to, y + uy * to]),
});

const tidied = ([x, y]: Point2): Point2 => [Math.round(x * 100) / 100, Math.round(y * 100) / 100];

interface Leg {
  readonly raceway: Raceway;
  readonly from: Point3;
  readonly to: Point3;
  readonly feet: number;
}

const levelLegs = (raceways: readonly Raceway[]): readonly Leg[] =>
  raceways.flatMap((raceway) =>
    raceway.path.slice(1).flatMap((to, i): Leg[] => {
      const from = raceway.path[i]!;
      const feet = Math.hypot(to[0] - from[0], to[1] - from[1]);
      return feet >= 2 && Math.abs(to[2] - from[2]) < feet ? [{ raceway, from, to, feet }] : [];
    }),
  );

/** Across the overhead raceway in which most conduits lie. */
function trunkIn(site: Site, plan: UncountedPlan): NamedCut | null {
  let best: { readonly leg: Leg; readonly share: number; readonly count: number } | null = null;
  const overhead = site.raceways.filter(({ place }) => place === 'overhead').slice(0, MOST_LOOKED_AT);
  for (const leg of levelLegs(overhead))
    for (const share of [0.5, 0.2, 0.8]) {
      const view = cutView(acrossAt(leg, share, 1));
      const count = view ? throughCut(site, plan, view).length : 0;
      if (count > (best?.count ?? 0)) best = { leg, share, count };
    }
  if (!best) return null;
  const { leg, share } = best;
  const at = placeOn(leg, share);
  const heading = (Math.atan2(leg.to[1] - leg.from[1], leg.to[0] - leg.from[0]) * 180) / Math.PI + 90;
  return { name: `Section at the trunk ${leg.raceway.id}`, ...alongStalls(site, at, heading) };
}

const placeOn = ({ from, to }: Leg, share: number): Point2 => [
  from[0] + share * (to[0] - from[0]),
  from[1] + share * (to[1] - from[1]),
];

/** Square to a leg, so far to either side. */
function acrossAt(leg: Leg, share: number, half: number): Cut {
  const [ux, uy] = [(leg.to[0] - leg.from[0]) / leg.feet, (leg.to[1] - leg.from[1]) / leg.feet];
  return { ...between(placeOn(leg, share), [-uy, ux], -half, half), look: half };
}

/** Square to the raceway at the middle of its longest level leg; null where it has none. */
function sectionAcross(site: Site, raceway: Raceway): NamedCut | null {
  const [leg] = [...levelLegs([raceway])].sort((a, b) => b.feet - a.feet);
  if (!leg) return null;
  if (raceway.place === 'underground')
    return { name: `Section through the trench of ${raceway.id}`, ...acrossAt(leg, 0.5, HALF_TRENCH) };
  const heading = (Math.atan2(leg.to[1] - leg.from[1], leg.to[0] - leg.from[0]) * 180) / Math.PI + 90;
  return { name: `Section at ${raceway.id}`, ...alongStalls(site, placeOn(leg, 0.5), heading) };
}

function trenchIn(site: Site): NamedCut | null {
  const [leg] = [...levelLegs(site.raceways.filter(({ place }) => place === 'underground'))].sort(
    (a, b) => b.feet - a.feet,
  );
  return leg ? sectionAcross(site, leg.raceway) : null;
}

function equipmentIn(site: Site): NamedCut | null {
  const one =
    site.equipment.find(({ kind }) => kind === 'panelboard' || kind === 'switchboard') ??
    site.equipment.find(({ kind }) => kind !== 'source');
  return one ? sectionAtEquipment(site, one) : null;
}

/** From the front of a piece of equipment to its back, with what its raceways come from on that side. */
function sectionAtEquipment({ stalls }: Site, { id, at, size, rotation = 0 }: Equipment): NamedCut {
  const [ux, uy] = direction(rotation + 90);
  const reach = size[1] / 2 + HALF;
  // Towards the stalls where these lie to one side of it.
  const ahead = stalls.some((stall) => {
    const [x, y] = [at[0] - ux * reach, at[1] - uy * reach];
    return insideOf(obstacleOf(stallRectangle(stall)), x, y);
  });
  return { name: `Section at ${id}`, ...between(at, [ux, uy], ahead ? -reach - BESIDE : -reach, reach), look: LOOK };
}
