import type { Finding } from '../../routing/site/rules/finding.ts';
import type { Point2, Point3, Site } from '../../routing/site/site.ts';
import { plan } from '../plan/plan.ts';
import { type MovablePoint, siteWithMoved } from './moved-point.ts';
import { newFaults } from './new-faults.ts';

/** How far a point may be off one way. */
export interface Ray {
  /** The direction in the plan, degrees counter-clockwise from +x. */
  readonly degrees: number;
  /** Feet to which all still passes. */
  readonly feet: number;
  /** What stops it there; null where all passes as far as was looked. */
  readonly stop: Finding | null;
}

/** Where a point may come to stand and everything still passes that passes as drawn, at its height. */
export interface Tolerance {
  /** Counter-clockwise; the shape is the polygon of their ends. */
  readonly rays: readonly Ray[];
  readonly up: Pick<Ray, 'feet' | 'stop'>;
  readonly down: Pick<Ray, 'feet' | 'stop'>;
  /** What fails as drawn: no room is told round what fails already. */
  readonly fails: readonly Finding[];
}

/** How far from the drawing is looked, feet. */
export const FARTHEST = 3;
/** The first fault on a way is looked for in steps of this, then closed in on to `FINE`, feet. */
const STEP = 0.5;
const FINE = 1 / 96;
/** Ways that are looked along at first, and how often the way between two of them is looked along as well. */
const WAYS = 16;
const SPLITS = 2;
/** What a shape leaves out between two of its rays, feet, is not worth another. */
const SLIVER = 1 / 48;

/**
 * The room round a point, found by planning the site with it elsewhere: along each way to the first place where something
 * fails, or is to be checked, that is not as drawn. Where the straight between the ends of two ways does not pass in its
 * middle, the way between them is looked along too, so that the shape keeps inside what passes. Pauses after each way.
 */
export function* toleranceSteps(site: Site, point: MovablePoint): Generator<number, Tolerance> {
  const fails = failing(site, point);
  const none = { feet: 0, stop: null };
  if (fails.length > 0) return { rays: [], up: none, down: none, fails };
  let looked = 0;
  const rays: Ray[] = [];
  for (let i = 0; i < WAYS; i++) {
    rays.push(rayAlong(site, point, (360 * i) / WAYS));
    yield ++looked / (WAYS + 2);
  }
  for (let split = 0; split < SPLITS; split++) {
    for (let i = rays.length - 1; i >= 0; i--) {
      const [ray, next] = [rays[i]!, rays[(i + 1) % rays.length]!];
      const middle = half(rayEnd(ray), rayEnd(next));
      if (Math.hypot(...middle) < SLIVER || passes(site, point, [...middle, 0])) continue;
      const gap = (next.degrees - ray.degrees + 360) % 360;
      rays.splice(i + 1, 0, rayAlong(site, point, (ray.degrees + gap / 2) % 360));
      yield looked / (WAYS + 2);
    }
  }
  const [up, down] = [along(site, point, [0, 0, 1]), along(site, point, [0, 0, -1])];
  return { rays, up, down, fails };
}

/** Whether all that passes as drawn passes with a point so much elsewhere, feet. */
export const passes = (site: Site, point: MovablePoint, by: Point3): boolean =>
  newFaults(siteWithMoved(site, point, by), site).length === 0;

/** Where a ray ends, feet from the point. */
export function rayEnd({ degrees, feet }: Pick<Ray, 'degrees' | 'feet'>): Point2 {
  const turn = (degrees * Math.PI) / 180;
  return [feet * Math.cos(turn), feet * Math.sin(turn)];
}

const half = (a: Point2, b: Point2): Point2 => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];

/** What fails of the point, and of the chargers that hang from it, as drawn. */
function failing(site: Site, { list, id }: MovablePoint): readonly Finding[] {
  const own = new Set([
    id,
    ...(list === 'drops' ? site.chargers.filter(({ drop }) => drop === id).map((each) => each.id) : []),
  ]);
  return plan(site).findings.filter(
    ({ severity, about }) => severity === 'fail' && about.some((each) => own.has(each)),
  );
}

function rayAlong(site: Site, point: MovablePoint, degrees: number): Ray {
  const [x, y] = rayEnd({ degrees, feet: 1 });
  return { degrees, ...along(site, point, [x, y, 0]) };
}

function along(site: Site, point: MovablePoint, [x, y, z]: Point3): Pick<Ray, 'feet' | 'stop'> {
  const faultsAt = (feet: number): readonly Finding[] =>
    newFaults(siteWithMoved(site, point, [x * feet, y * feet, z * feet]), site);
  let [good, bad, stop] = [0, 0, null as Finding | null];
  for (let feet = STEP; feet <= FARTHEST && stop === null; feet += STEP) {
    const faults = faultsAt(feet);
    if (faults.length === 0) good = feet;
    else [bad, stop] = [feet, worst(faults)];
  }
  if (stop === null) return { feet: FARTHEST, stop };
  while (bad - good > FINE) {
    const middle = (good + bad) / 2;
    const faults = faultsAt(middle);
    if (faults.length === 0) good = middle;
    else [bad, stop] = [middle, worst(faults)];
  }
  return { feet: good, stop };
}

const worst = (faults: readonly Finding[]): Finding => faults.find(({ severity }) => severity === 'fail') ?? faults[0]!;
