import { kept } from '../kept/kept.ts';
import { keptEach } from '../kept/kept-list.ts';
import type { Run } from '../network/run.ts';
import { runsOf } from '../network/runs.ts';
import { areaOf } from '../plane/area.ts';
import { clippedToBox } from '../plane/clip.ts';
import { insideOf, spansInside } from '../plane/obstacle.ts';
import { COINCIDENT, distance } from '../plane/space.ts';
import { printLength } from '../site/numbers/feet-inches.ts';
import type { Finding } from '../site/rules/finding.ts';
import type { KeepoutBlocks, Units } from '../site/schema/vocabulary.ts';
import type { Equipment, Keepout, Point3, Raceway, Site } from '../site/site.ts';
import { seenFrom, standsUnder, TOUCHING_AREA } from '../standing/footprint.ts';
import { outlineOf } from '../standing/outlines.ts';

/** Shorter than this, feet, a raceway's part in a keep-out is a touch. */
const TOUCHING = 1e-6;

/** What is checked against, kept as one object while it is the same. */
interface Ground {
  readonly keepouts: readonly Keepout[];
  readonly blocking: { readonly raceway: readonly Keepout[]; readonly equipment: readonly Keepout[] };
  readonly units: Units;
}

const groundBy = kept((keepouts: readonly Keepout[], units: Units): Ground => {
  const blocking = (what: KeepoutBlocks): readonly Keepout[] => keepouts.filter(({ blocks }) => blocks.includes(what));
  return { keepouts, units, blocking: { raceway: blocking('raceway'), equipment: blocking('equipment') } };
});

/**
 * What is drawn where a keep-out blocks it (`keepout-crossed`): raceways and the taps at the ends of runs that go
 * through one at an elevation that it has there, and equipment that stands in one. Raceways are checked, not routed
 * around: a drawn raceway is the designer's decision. Along the outline, or at the very elevation where the keep-out
 * ends, is not through it. Value: the length inside, feet. Boxes and cords are looked at where reach is.
 */
export function keepoutFindings(site: Site): readonly Finding[] {
  const ground = groundBy(site.keepouts, site.units);
  const { raceway, equipment } = ground.blocking;
  const findings: Finding[] = [];
  if (raceway.length > 0) {
    for (const said of ofRaceways([site.raceways], [ground])) findings.push(...said);
    const told = new Set<string>();
    for (const said of ofTaps([runsOf(site).runs], [ground])) {
      for (const finding of said) {
        // Chargers on one piece of equipment, or on one drop, share its tap.
        const tap = JSON.stringify(finding.about);
        if (!told.has(tap)) findings.push(finding);
        told.add(tap);
      }
    }
  }
  if (equipment.length > 0) for (const said of ofFootprints([site.equipment], [ground])) findings.push(...said);
  return findings;
}

type On = readonly [Ground];

const ofRaceways = keptEach(([{ id, path }]: readonly [Raceway], [ground]: On) =>
  through(path, [id], `Raceway ${id} runs`, ground),
);

const ofFootprints = keptEach(([equipment]: readonly [Equipment], [ground]: On) =>
  ground.blocking.equipment.flatMap((keepout) => footprintFinding(equipment, keepout) ?? []),
);

const NOTHING: readonly Finding[] = [];

const ofTaps = keptEach(([{ path, legs, from, drop }]: readonly [Run], [ground]: On): readonly Finding[] => {
  if (path.length < 2) return NOTHING;
  const said = [
    ...(legs[0] === null ? through(path.slice(0, 2), [from], `The stub from ${from} to a raceway runs`, ground) : []),
    ...(legs.at(-1) === null
      ? through(path.slice(-2), [drop], `The stub from a raceway to the box of ${drop} runs`, ground)
      : []),
  ];
  return said.length === 0 ? NOTHING : said;
});

function through(path: readonly Point3[], about: readonly string[], what: string, ground: Ground): Finding[] {
  return ground.blocking.raceway.flatMap((keepout): Finding[] => {
    let inside = 0;
    for (let i = 1; i < path.length; i++) inside += lengthThrough(keepout, path[i - 1]!, path[i]!);
    if (inside <= TOUCHING) return [];
    return [
      {
        severity: 'fail',
        rule: 'keepout-crossed',
        about: [...about, keepout.id],
        says: `${what} ${printLength(inside, ground.units)} through keep-out ${keepout.id}, which blocks raceways.`,
        value: inside,
        limit: 0,
        unit: 'ft',
        source: 'keep-out of the site that blocks raceways',
      },
    ];
  });
}

/** Length of the straight from `a` to `b` inside a keep-out, between its elevations. */
export function lengthThrough(keepout: Keepout, a: Point3, b: Point3): number {
  const outline = outlineOf(keepout);
  if (Math.max(a[0], b[0]) <= outline.minX || Math.min(a[0], b[0]) >= outline.maxX) return 0;
  if (Math.max(a[1], b[1]) <= outline.minY || Math.min(a[1], b[1]) >= outline.maxY) return 0;
  const [low, high] = shareBetween(a[2], b[2], keepout.from, keepout.to);
  if (low >= high) return 0;
  const upright = Math.hypot(b[0] - a[0], b[1] - a[1]) < COINCIDENT;
  const spans: [number, number][] = upright
    ? insideOf(outline, a[0], a[1])
      ? [[0, 1]]
      : []
    : spansInside(outline, a[0], a[1], b[0], b[1]);
  let share = 0;
  for (const [from, to] of spans) share += Math.max(0, Math.min(to, high) - Math.max(from, low));
  return share * distance(a, b);
}

/** The shares of a straight, whose ends are at elevations `za` and `zb`, between which it is over `from` and under `to`. */
function shareBetween(
  za: number,
  zb: number,
  from = Number.NEGATIVE_INFINITY,
  to = Number.POSITIVE_INFINITY,
): [number, number] {
  const rise = zb - za;
  if (Math.abs(rise) < COINCIDENT) return za > from && za < to ? [0, 1] : [0, 0];
  const s = (from - za) / rise;
  const t = (to - za) / rise;
  return [Math.max(0, Math.min(s, t)), Math.min(1, Math.max(s, t))];
}

/** Equipment whose footprint, from grade to its height, overlaps a keep-out; null where it does not. */
export function footprintFinding(equipment: Equipment, keepout: Keepout): Finding | null {
  const [width, depth, height] = equipment.size;
  if (!standsUnder(keepout, height)) return null;
  const half = { minX: -width / 2, maxX: width / 2, minY: -depth / 2, maxY: depth / 2 };
  if (areaOf(clippedToBox(seenFrom(equipment, keepout.outline), half)) <= TOUCHING_AREA) return null;
  return {
    severity: 'fail',
    rule: 'keepout-crossed',
    about: [equipment.id, keepout.id],
    says: `${equipment.id} stands in keep-out ${keepout.id}, which blocks equipment.`,
    source: 'keep-out of the site that blocks equipment',
  };
}
