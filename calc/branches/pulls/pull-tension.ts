import { kept } from '../../../routing/kept/kept.ts';
import { bendsOf } from '../../../routing/network/bends.ts';
import { distance } from '../../../routing/plane/space.ts';
import type { Metal } from '../../../routing/site/schema/vocabulary.ts';
import type { Point3 } from '../../../routing/site/site.ts';
import type { Conduit, ConduitConductor } from '../../plan-file/branches.ts';
import type { CodeTables } from '../../tables/code-tables.ts';
import { circularMils, conductorArea } from '../../tables/conductor-of.ts';
import { bendRadius } from '../../tables/raceway-of.ts';
import { type PullSegment, pulling } from './pulling.ts';

/** What a pull takes, by the end it is pulled from, and what it may take. */
export interface PullTension {
  /** Pounds at the pulling end. */
  readonly tension: number;
  readonly mostTension: number;
  /** It is that of a pull against the way that the path is drawn. */
  readonly isBack: boolean;
  /** Pounds per foot of bend, the worst. */
  readonly sidewall: number;
  readonly mostSidewall: number;
}

/** Between conductors and raceway without lubricant. Common practice: 0.35 to 0.5. */
const FRICTION = 0.5;
/** Pounds per circular mil of what is pulled. From memory of pulling practice; the conductors' maker has the last word. */
const MOST_PER_MIL: Readonly<Record<Metal, number>> = { copper: 0.008, aluminum: 0.006 };
/** Share of it that counts where more than three are pulled, for they do not share evenly. From memory likewise. */
const MANY = 0.8;
/** Pounds per foot of bend radius, for 600 V conductors. From memory likewise. */
const MOST_SIDEWALL = 500;

/** Pounds per cubic inch. */
const METAL_DENSITY: Readonly<Record<Metal, number>> = { copper: 0.3216, aluminum: 0.0975 };
const INSULATION_DENSITY = 0.049;
/** Square inches of a circular mil. */
const MIL = (Math.PI / 4) * 1e-6;

/** Pounds of a foot of all conductors together: metal and insulation by their areas. */
export function weightPerFoot(tables: CodeTables, conductors: readonly ConduitConductor[], metal: Metal): number {
  return conductors.reduce((sum, { size, insulation, count }) => {
    const bare = MIL * circularMils(tables, size);
    const over = Math.max(0, conductorArea(tables, insulation, size) - bare);
    return sum + count * 12 * (bare * METAL_DENSITY[metal] + over * INSULATION_DENSITY);
  }, 0);
}

/**
 * Tension and sidewall pressure of a pull through a conduit, from the end that asks for less. The lines carry the pull;
 * grounding and pilot conductors ride along.
 */
export function pullTension(
  tables: CodeTables,
  path: readonly Point3[],
  tradeSize: string,
  conductors: readonly ConduitConductor[],
  metal: Metal,
): PullTension {
  const radius = bendRadius(tables, tradeSize) / 12;
  const weight = weightPerFoot(tables, conductors, metal);
  const along = (way: readonly Point3[]) => {
    const { tension, sidewall } = pulling({
      segments: segmentsOf(way, radius),
      weightPerFoot: weight,
      friction: FRICTION,
    });
    return { tension: tension.at(-1) ?? 0, sidewall: Math.max(0, ...sidewall) };
  };
  const there = along(path);
  const back = along([...path].reverse());
  const lines = conductors.filter(({ use }) => use === 'line');
  const count = lines.reduce((sum, line) => sum + line.count, 0);
  const mils = lines.reduce((sum, line) => sum + line.count * circularMils(tables, line.size), 0);
  return {
    ...(back.tension < there.tension ? { ...back, isBack: true } : { ...there, isBack: false }),
    mostTension: MOST_PER_MIL[metal] * mils * (count > 3 ? MANY : 1),
    mostSidewall: MOST_SIDEWALL,
  };
}

/** Circular mils of the lines, and pounds of a foot of all conductors. A lot has thousands of conduits of a few contents. */
const bundleOf = kept((conductors: readonly ConduitConductor[], tables: CodeTables, metal: Metal) => ({
  mils: conductors.reduce(
    (sum, { use, size, count }) => sum + (use === 'line' ? count * circularMils(tables, size) : 0),
    0,
  ),
  weight: weightPerFoot(tables, conductors, metal),
}));

/** Smallest bend there is, ft: 1/2 in. raceway. */
const LEAST_RADIUS = 4 / 12;

/**
 * True where a pull is within every limit at a glance: were the whole length straight up against friction and all bends at
 * its end, it would still be. Most branch conduits are, and need no closer look.
 */
export function isEasyPull(
  tables: CodeTables,
  { length, bendDegrees, conductors }: Pick<Conduit, 'length' | 'bendDegrees' | 'conductors'>,
  metal: Metal,
): boolean {
  const { mils, weight } = bundleOf(conductors, tables, metal);
  const turned = Math.exp((FRICTION * bendDegrees * Math.PI) / 180);
  const most = weight * length * Math.hypot(1, FRICTION) * turned;
  return most <= MANY * MOST_PER_MIL[metal] * mils && most <= MOST_SIDEWALL * LEAST_RADIUS;
}

function segmentsOf(path: readonly Point3[], radius: number): readonly PullSegment[] {
  const bends = new Map(bendsOf(path).map(({ at, degrees }) => [at, degrees]));
  const segments: PullSegment[] = [];
  for (let i = 1; i < path.length; i++) {
    const [from, to] = [path[i - 1]!, path[i]!];
    const length = distance(from, to);
    if (length === 0) continue;
    const rise = Math.min(1, Math.max(-1, (to[2] - from[2]) / length));
    segments.push({ kind: 'straight', length, slope: (Math.asin(rise) * 180) / Math.PI });
    const angle = bends.get(i);
    if (angle !== undefined) segments.push({ kind: 'bend', angle, radius });
  }
  return segments;
}
