import { addTo } from '../../../routing/lists/grouping.ts';
import { printLength } from '../../../routing/site/numbers/feet-inches.ts';
import type { Drop, Point3, Raceway, Site } from '../../../routing/site/site.ts';
import type { Plan } from '../../plan/plan-shape.ts';
import { conduitsAt, passingWords } from './conduits-at.ts';
import {
  boxOfFeet,
  type Callout,
  type Detail,
  type DetailLine,
  edges,
  fromBase,
  grade,
  segment,
  typicalOf,
} from './detail.ts';

/** Symbols of what has no size in the file, feet. */
const HALF = 0.35;
const BASE = 0.9;
/** Conduit comes up within this of a pedestal, feet. */
const NEAR = 3;
const SIDE = 2;

/** The usual pedestal of the site with what comes up into it; none where no pedestal is drawn. */
export function pedestalDetails(site: Site, plan: Plan): readonly Detail[] {
  const groups = new Map<string, Drop[]>();
  for (const drop of site.drops) {
    if (drop.mount !== 'pedestal') continue;
    const key = [drop.box[2], drop.restHeight ?? -1, drop.cord].map((feet) => Math.round(feet * 48)).join(' ');
    addTo(groups, key, drop);
  }
  const [usual] = [...groups.values()].sort((a, b) => b.length - a.length);
  return usual === undefined ? [] : [pedestalDetail(usual, site, plan)];
}

function pedestalDetail(drops: readonly Drop[], site: Site, plan: Plan): Detail {
  const drop = drops[0]!;
  const { units } = site;
  const high = drop.box[2];
  const depth = comesUp(drop.box, site.raceways);
  const lines: DetailLine[] = [
    edges(boxOfFeet(-HALF, 0, HALF, high), 'edge'),
    edges(boxOfFeet(-BASE, -1.2, BASE, 0.1), 'hidden'),
  ];
  const callouts: Callout[] = [
    { at: [HALF, high * 0.85], text: `pedestal ${drop.id}, its box at the top; width by its submittal` },
    { at: [BASE, -0.6], text: 'concrete base and anchors: size and reinforcement by others' },
  ];
  const marks = [{ at: high, from: -HALF }];
  if (drop.restHeight !== undefined) {
    lines.push(edges(boxOfFeet(HALF, drop.restHeight, HALF + 0.3, drop.restHeight + 0.3), 'edge'));
    callouts.push({
      at: [HALF + 0.3, drop.restHeight + 0.15],
      text: `connector at rest; cord ${printLength(drop.cord, units)} usable`,
    });
    marks.push({ at: drop.restHeight, from: HALF });
  }
  const deep = depth === null ? 1.6 : -depth.at[2] + 0.6;
  if (depth !== null) {
    const [, , z] = depth.at;
    const conduits = conduitsAt(site, plan, depth.at);
    lines.push(segment([0, high * 0.4], [0, z], 'conduit'), segment([0, z], [SIDE, z], 'conduit'));
    callouts.push({
      at: [SIDE * 0.8, z],
      text: conduits.length === 0 ? `${depth.raceway.id}: ${depth.raceway.method}` : passingWords(conduits),
    });
  }
  const ground = grade(-SIDE, SIDE, deep);
  return {
    kind: 'pedestal',
    title: `Pedestal, ${typicalOf(drops.map(({ id }) => id))}`,
    of: drops.map(({ id }) => id),
    regions: [...ground.regions, { box: boxOfFeet(-BASE, -1.2, BASE, 0.1), hatch: 'concrete' }],
    lines: [...ground.lines, ...lines],
    circles: [],
    dimensions: [
      ...fromBase('left', { at: 0, from: -SIDE }, marks),
      ...(depth === null ? [] : fromBase('left', { at: 0, from: -SIDE }, [{ at: depth.at[2], from: 0 }])),
    ],
    callouts,
    notes: [
      'Base, anchors, frost and soil: by the structural engineer. Operable parts stay in reach from a clear floor space; guards stand where vehicles can hit it and outside of access aisles.',
    ],
  };
}

/** Where the conduit in the ground ends that comes up into a pedestal. */
function comesUp(
  [x, y]: Point3,
  raceways: readonly Raceway[],
): { readonly raceway: Raceway; readonly at: Point3 } | null {
  let best: { raceway: Raceway; at: Point3; far: number } | null = null;
  for (const raceway of raceways) {
    if (raceway.place !== 'underground') continue;
    for (const at of raceway.path) {
      const far = Math.hypot(at[0] - x, at[1] - y);
      if (at[2] < 0 && far <= NEAR && (best === null || far < best.far)) best = { raceway, at, far };
    }
  }
  return best;
}
