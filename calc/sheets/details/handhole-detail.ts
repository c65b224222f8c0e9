import { addTo } from '../../../routing/lists/grouping.ts';
import type { Site } from '../../../routing/site/site.ts';
import type { Plan } from '../../plan/plan-shape.ts';
import type { Handhole } from '../../plan-file/branches.ts';
import { fewOf } from './conduits-at.ts';
import { boxOfFeet, type Detail, type DetailCircle, edges, segment, typicalOf } from './detail.ts';

/** Ground shown beside and under it, and the box below the conduits, feet. */
const GROUND = 0.7;
const SUMP = 0.5;

/** Sections through the handholes of each size, the largest first; at most two. */
export function handholeDetails(_: Site, plan: Plan): readonly Detail[] {
  const sizes = new Map<string, Handhole[]>();
  for (const one of plan.handholes) addTo(sizes, one.size, one);
  return [...sizes.values()]
    .sort((a, b) => longOf(b[0]!) - longOf(a[0]!))
    .slice(0, 2)
    .map((all) => handholeDetail(all, plan));
}

/** Inches of its longer side, by its size: `13 x 24 in`. */
const longOf = ({ size }: Handhole): number => Math.max(...(size.match(/\d+/g) ?? ['12']).map(Number));

function handholeDetail(all: readonly Handhole[], plan: Plan): Detail {
  const one = all[0]!;
  const half = longOf(one) / 24;
  const z = one.at[2];
  const bottom = z - SUMP;
  const raceways = plan.boxes.find(({ id }) => id === one.id)?.raceways ?? [];
  const shown = Math.min(6, Math.max(1, raceways.length));
  const radius = Math.min(0.08, (0.55 * half) / shown);
  const circles = Array.from(
    { length: shown },
    (_, i): DetailCircle => ({ at: [-half * 0.7 + (1.4 * half * (i + 0.5)) / shown, z], radius, ink: 'conduit' }),
  );
  return {
    kind: 'handhole',
    title: `Handhole ${one.size}, ${typicalOf(all.map(({ id }) => id))}`,
    of: all.map(({ id }) => id),
    regions: [
      { box: boxOfFeet(-half - GROUND, bottom - GROUND / 2, -half, 0), hatch: 'earth' },
      { box: boxOfFeet(half, bottom - GROUND / 2, half + GROUND, 0), hatch: 'earth' },
      { box: boxOfFeet(-half, bottom - GROUND / 2, half, bottom), hatch: 'fill' },
    ],
    lines: [
      segment([-half - GROUND, 0], [half + GROUND, 0], 'cut'),
      {
        points: [
          [-half, bottom],
          [-half, 0],
          [half, 0],
          [half, bottom],
        ],
        ink: 'edge',
      },
      edges(boxOfFeet(-half, -0.2, half, 0), 'edge'),
      segment([-half, z], [half, z], 'axis'),
    ],
    circles,
    dimensions: [
      {
        side: 'left',
        level: 0,
        marks: [
          { at: z, from: -half },
          { at: 0, from: -half - GROUND },
        ],
      },
      { side: 'bottom', level: 0, marks: [-half, half].map((at) => ({ at, from: bottom })) },
    ],
    callouts: [
      { at: [half, -0.1], text: `cover at grade, ${one.rating}, bolted` },
      { at: [half * 0.7, z], text: raceways.length === 0 ? 'conduits' : fewOf([...new Set(raceways)]) },
      { at: [half, bottom - GROUND / 4], text: 'drainage under an open bottom' },
    ],
    notes: [
      'Size by the pull through it and its nominal length; width, depth and rating by the listing of the one that is bought. Open in use without digging or taking up paving; traffic rating confirmed by others.',
    ],
  };
}
