import type { Surface } from '../../../routing/site/schema/vocabulary.ts';
import type { Point2, Point3, Site } from '../../../routing/site/site.ts';
import type { Plan } from '../../plan/plan-shape.ts';
import { tablesOf } from '../../tables/editions.ts';
import { TRENCH_WIDTH } from '../../takeoff/conduits/trench.ts';
import { conduitsAt, type PassingConduit, passingWords } from './conduits-at.ts';
import { boxOfFeet, type Callout, type Detail, type DetailCircle, type DetailLine, edges, segment } from './detail.ts';

/** Level enough to be dug: rise over run. */
const STEEPEST = 1;
/** Ground shown beside and under a trench, feet. */
const GROUND = 0.7;
/** Paving as it is shown; its make-up is that of the place. */
const PAVING = 0.35;
/** Warning tape lies so far under grade, feet. Common practice, no source. */
const TAPE = 1;

interface Leg {
  readonly raceway: string;
  readonly surface: Surface;
  readonly a: Point3;
  readonly b: Point3;
}

interface Laid {
  readonly raceway: string;
  /** Across the trench from the leg that it is cut at, feet. */
  readonly aside: number;
  readonly z: number;
  readonly conduits: readonly PassingConduit[];
}

/** A section through the fullest trench under each surface. */
export function trenchDetails(site: Site, plan: Plan): readonly Detail[] {
  const legs = site.raceways.flatMap(({ id, path, place, surface = 'asphalt' }): Leg[] =>
    place === 'underground'
      ? path.slice(1).flatMap((b, i): Leg[] => (isDug(path[i]!, b) ? [{ raceway: id, surface, a: path[i]!, b }] : []))
      : [],
  );
  const surfaces = [...new Set(legs.map(({ surface }) => surface))].sort();
  return surfaces.flatMap((surface) => {
    const cuts = legs
      .filter((leg) => leg.surface === surface)
      .map((leg) => ({ leg, laid: cutAt(leg, legs, site, plan) }))
      .map((cut) => ({ ...cut, count: cut.laid.reduce((sum, { conduits }) => sum + conduits.length, 0) }))
      .filter(({ count }) => count > 0)
      .sort((p, q) => q.count - p.count || lengthOf(q.leg) - lengthOf(p.leg));
    return cuts.length === 0 ? [] : [trenchDetail(cuts[0]!.laid, surface, site)];
  });
}

const lengthOf = ({ a, b }: Leg): number => Math.hypot(b[0] - a[0], b[1] - a[1]);

function isDug(a: Point3, b: Point3): boolean {
  const run = Math.hypot(b[0] - a[0], b[1] - a[1]);
  return run > 0.5 && Math.max(a[2], b[2]) < 0 && Math.abs(b[2] - a[2]) <= STEEPEST * run;
}

/** What lies in the trench where it is cut, at the middle of a leg: what runs with it no farther off than a trench is wide. */
function cutAt(leg: Leg, legs: readonly Leg[], site: Site, plan: Plan): readonly Laid[] {
  const whole = lengthOf(leg);
  const [ux, uy] = [(leg.b[0] - leg.a[0]) / whole, (leg.b[1] - leg.a[1]) / whole];
  const [mx, my] = [(leg.a[0] + leg.b[0]) / 2, (leg.a[1] + leg.b[1]) / 2];
  return legs
    .flatMap((other): Laid[] => {
      const from = (other.a[0] - mx) * ux + (other.a[1] - my) * uy;
      const to = (other.b[0] - mx) * ux + (other.b[1] - my) * uy;
      if (from * to > 0 || Math.abs(to - from) < 0.9 * lengthOf(other)) return [];
      const share = from / (from - to);
      const at: Point3 = [0, 1, 2].map((i) => other.a[i]! + share * (other.b[i]! - other.a[i]!)) as unknown as Point3;
      const aside = (at[1] - my) * ux - (at[0] - mx) * uy;
      if (Math.abs(aside) > TRENCH_WIDTH) return [];
      return [{ raceway: other.raceway, aside, z: at[2], conduits: conduitsAt(site, plan, at) }];
    })
    .filter(({ conduits }) => conduits.length > 0)
    .sort((p, q) => p.aside - q.aside);
}

const MADE_GOOD: Readonly<Record<Surface, string>> = {
  asphalt: 'asphalt, saw cut and made good as it was',
  concrete: 'concrete, saw cut and made good as it was',
  soil: 'soil, compacted and made good',
};

function trenchDetail(laid: readonly Laid[], surface: Surface, site: Site): Detail {
  const { cover } = tablesOf(site.rules);
  const circles: DetailCircle[] = [];
  const tops: number[] = [];
  for (const { aside, z, conduits } of laid) {
    const row = conduits.reduce((sum, { across }) => sum + across, 0) + (conduits.length - 1) * GAP;
    let x = aside - row / 2;
    // The drawn line is the top of what lies there, as its cover is measured.
    for (const { across } of conduits) {
      circles.push({ at: [x + across / 2, z - across / 2], radius: across / 2, ink: 'conduit' });
      x += across + GAP;
    }
    tops.push(z);
  }
  const spread = spreadOf(circles);
  const middle = (spread[0] + spread[1]) / 2;
  const half = Math.max(TRENCH_WIDTH, spread[1] - spread[0] + 3 * GAP) / 2;
  const [left, right] = [middle - half, middle + half];
  const bottom = Math.min(...circles.map(({ at, radius }) => at[1] - radius)) - GAP;
  const top = Math.max(...tops);
  const paved = surface === 'soil' ? 0 : PAVING;
  const lines: DetailLine[] = [
    segment([left - GROUND, 0], [right + GROUND, 0], 'cut'),
    edges(boxOfFeet(left, bottom, right, 0), 'edge'),
  ];
  const callouts: Callout[] = [
    { at: [right, -paved / 2 || 0], text: MADE_GOOD[surface] },
    { at: outermost(circles), text: laid.map(({ conduits }) => passingWords(conduits)).join('; ') },
    { at: [right, (top + Math.min(-paved, -0.2)) / 2], text: 'backfill free of stones, in layers' },
  ];
  if (-top > TAPE + 0.2) {
    lines.push(segment([left + 0.1, -TAPE], [right - 0.1, -TAPE], 'hidden'));
    callouts.push({ at: [right - 0.1, -TAPE], text: 'warning tape, 12 in under grade by common practice' });
  }
  const depths = [...new Set(tops.map((z) => Math.round(z * 192) / 192))].sort((p, q) => q - p);
  return {
    kind: 'trench',
    title: `Trench under ${surface}, ${laid.map(({ raceway }) => raceway).join(', ')}`,
    of: laid.map(({ raceway }) => raceway),
    regions: [
      { box: boxOfFeet(left - GROUND, bottom - GROUND / 2, left, paved === 0 ? 0 : -paved), hatch: 'earth' },
      { box: boxOfFeet(right, bottom - GROUND / 2, right + GROUND, paved === 0 ? 0 : -paved), hatch: 'earth' },
      { box: boxOfFeet(left, bottom - GROUND / 2, right, bottom), hatch: 'earth' },
      { box: boxOfFeet(left, bottom, right, paved === 0 ? 0 : -paved), hatch: 'fill' },
      ...(paved === 0
        ? []
        : [
            {
              box: boxOfFeet(left - GROUND, -paved, right + GROUND, 0),
              hatch: surface === 'concrete' ? ('concrete' as const) : ('paving' as const),
            },
          ]),
    ],
    lines,
    circles,
    dimensions: [
      ...depths.map((z, level) => ({
        side: 'left' as const,
        level,
        marks: [
          { at: tops.find((one) => Math.abs(one - z) < 0.01)!, from: left },
          { at: 0, from: left - GROUND },
        ],
      })),
      { side: 'bottom', level: 0, marks: [left, right].map((at) => ({ at, from: bottom })) },
    ],
    callouts,
    notes: [
      `Cover is to the top of the conduits; least cover by ${cover.source}. Width ${half * 2 > TRENCH_WIDTH ? 'for what lies in it' : 'by common practice'}; bedding and compaction by the civil engineer.`,
      'Call before digging; private lines are found by others. Depth of frost, crossings of other utilities and their separation: checked by others.',
    ],
  };
}

/** Between conduits side by side, feet. */
const GAP = 1 / 12;

const spreadOf = (circles: readonly DetailCircle[]): readonly [number, number] => [
  Math.min(...circles.map(({ at, radius }) => at[0] - radius)),
  Math.max(...circles.map(({ at, radius }) => at[0] + radius)),
];

function outermost(circles: readonly DetailCircle[]): Point2 {
  const last = circles.reduce((most, one) => (one.at[0] + one.radius > most.at[0] + most.radius ? one : most));
  return [last.at[0] + last.radius, last.at[1]];
}
