import { type Box, boxOf } from '../plane/box.ts';
import { printLength } from '../site/feet-inches.ts';
import type { Finding } from '../site/finding.ts';
import type { Drop, Point2, Point3, Raceway, Stall } from '../site/site.ts';
import { insideOf, type Obstacle } from './obstacle.ts';
import { outlineOf, stallOutline, stallsIn } from './outlines.ts';
import { lengthAlong, partsInside } from './plan-path.ts';
import type { Shared } from './shared.ts';

/** What the headroom under overhead things depends on. */
export interface Ground {
  readonly shared: Shared;
  readonly stalls: readonly Stall[];
}

type Over = 'aisle' | 'stall' | 'van';

const WORDS: Readonly<Record<Over, { severity: Finding['severity']; over: string; source: string }>> = {
  aisle: {
    severity: 'warn',
    over: 'aisle',
    source: 'fire access roads, International Fire Code 503.2.1; site rule clearHeight.aisle',
  },
  stall: {
    severity: 'warn',
    over: 'stall',
    source: 'municipal parking codes, 80 to 84 in; site rule clearHeight.stall',
  },
  van: { severity: 'fail', over: 'van stall', source: '2010 ADA Standards 502.5, 98 in; site rule clearHeight.van' },
};

/** A patch of ground with the clear height that is kept over it. */
interface Patch {
  readonly id: string;
  readonly over: Over;
  readonly outline: Obstacle;
}

/** The patches in a box whose clear height is above an elevation: none, mostly, and then nothing is searched. */
function patchesIn({ shared, stalls }: Ground, box: Box, lowest: number): Patch[] {
  const { aisle, stall, van } = shared.rules.clearHeight;
  const patches: Patch[] = [];
  if (lowest < aisle)
    for (const one of shared.aisles) patches.push({ id: one.id, over: 'aisle', outline: outlineOf(one) });
  if (lowest < Math.max(stall, van)) {
    for (const one of stallsIn(stalls, box)) {
      const over = one.use === 'van-accessible' ? 'van' : 'stall';
      if (lowest < shared.rules.clearHeight[over]) patches.push({ id: one.id, over, outline: stallOutline(one) });
    }
  }
  return patches;
}

/** The box and the retractor of an overhead drop are no lower than the clear height over what lies under them. */
export function dropHeadroom(drop: Drop, ground: Ground): Finding[] {
  if ((drop.mount ?? 'overhead') !== 'overhead') return [];
  const points: [string, Point3][] = [['box', drop.box]];
  if (drop.retractor) points.push(['retractor', drop.retractor]);
  const findings: Finding[] = [];
  for (const [name, [x, y, z]] of points) {
    const under = patchesIn(ground, { minX: x, minY: y, maxX: x, maxY: y }, z);
    const hit = under.find(({ outline }) => insideOf(outline, x, y));
    if (hit) findings.push(finding(`The ${name} of ${drop.id} hangs`, drop.id, z, hit.over, [hit.id], ground.shared));
  }
  return findings;
}

/**
 * An overhead raceway is no lower than the clear height over the aisles and stalls that it crosses. Upright legs are
 * left out: a riser stands against a column or a wall. So is what runs on a surface or in the ground.
 */
export function racewayHeadroom(raceway: Raceway, ground: Ground): Finding[] {
  if (raceway.place !== 'overhead') return [];
  const low: Record<Over, { z: number; ids: string[] }> = {
    aisle: { z: Number.POSITIVE_INFINITY, ids: [] },
    stall: { z: Number.POSITIVE_INFINITY, ids: [] },
    van: { z: Number.POSITIVE_INFINITY, ids: [] },
  };
  for (let i = 1; i < raceway.path.length; i++) {
    const a = raceway.path[i - 1]!;
    const b = raceway.path[i]!;
    const leg: Point2[] = [
      [a[0], a[1]],
      [b[0], b[1]],
    ];
    const length = lengthAlong(leg);
    if (length < 1e-6) continue;
    for (const { id, over, outline } of patchesIn(ground, boxOf(leg), Math.min(a[2], b[2]))) {
      for (const [from, to] of partsInside(leg, outline)) {
        const z = Math.min(...[from, to].map((at) => a[2] + (at / length) * (b[2] - a[2])));
        if (z >= ground.shared.rules.clearHeight[over]) continue;
        low[over].z = Math.min(low[over].z, z);
        if (!low[over].ids.includes(id)) low[over].ids.push(id);
      }
    }
  }
  return (['van', 'stall', 'aisle'] as const)
    .filter((over) => low[over].ids.length > 0)
    .map((over) => finding(`Raceway ${raceway.id} runs`, raceway.id, low[over].z, over, low[over].ids, ground.shared));
}

function finding(what: string, id: string, z: number, over: Over, under: readonly string[], shared: Shared): Finding {
  const limit = shared.rules.clearHeight[over];
  const { severity, over: ground, source } = WORDS[over];
  const length = (feet: number): string => printLength(feet, shared.units);
  const where = under.length === 1 ? `${ground} ${under[0]}` : `${under.length} ${ground}s, ${under[0]} first`;
  return {
    severity,
    rule: 'clear-height',
    about: [id, ...under],
    says: `${what} at ${length(z)} over ${where}: ${length(limit - z)} under the clear height of ${length(limit)}.`,
    value: z,
    limit,
    unit: 'ft',
    source,
  };
}
