import { type Box, boxOf } from '../../plane/box.ts';
import { insideOf, type Obstacle } from '../../plane/obstacle.ts';
import { lengthAlong, partsInside } from '../../reach/cords/plan-path.ts';
import type { Shared } from '../../reach/shared.ts';
import { printLength } from '../../site/numbers/feet-inches.ts';
import type { Finding } from '../../site/rules/finding.ts';
import { siteRule } from '../../site/rules/rule-notes.ts';
import type { AisleKind } from '../../site/schema/vocabulary.ts';
import type { Aisle, Drop, Point2, Point3, Raceway, Rules, Stall } from '../../site/site.ts';
import { outlineOf, stallOutline, stallsIn } from '../../standing/outlines.ts';

/** What the headroom under overhead things depends on. */
export interface Headroom {
  readonly shared: Shared;
  readonly stalls: readonly Stall[];
}

type Over = AisleKind | 'stall' | 'van';

interface OverWords {
  /** Rule of the site that has the height. */
  readonly rule: keyof Rules['clearHeight'];
  readonly severity: Finding['severity'];
  readonly over: string;
  readonly source: string;
}

const OVER: Readonly<Record<Over, OverWords>> = {
  drive: {
    rule: 'aisle',
    severity: 'warn',
    over: 'aisle',
    source: `fire access roads, International Fire Code 503.2.1; ${siteRule('clearHeight.aisle')}`,
  },
  fire: {
    rule: 'aisle',
    severity: 'fail',
    over: 'fire lane',
    source: `International Fire Code 503.2.1, 13 ft 6 in; ${siteRule('clearHeight.aisle')}`,
  },
  walk: {
    rule: 'walk',
    severity: 'fail',
    over: 'walk',
    source: `2010 ADA Standards 307.4, 80 in; ${siteRule('clearHeight.walk')}`,
  },
  access: {
    rule: 'van',
    severity: 'fail',
    over: 'access aisle',
    source: `2010 ADA Standards 502.5, 98 in; ${siteRule('clearHeight.van')}`,
  },
  stall: {
    rule: 'stall',
    severity: 'warn',
    over: 'stall',
    source: `municipal parking codes, 80 to 84 in; ${siteRule('clearHeight.stall')}`,
  },
  van: {
    rule: 'van',
    severity: 'fail',
    over: 'van stall',
    source: `2010 ADA Standards 502.5, 98 in; ${siteRule('clearHeight.van')}`,
  },
};

const WORST_FIRST: readonly Over[] = ['van', 'access', 'walk', 'fire', 'stall', 'drive'];

const limitOver = (over: Over, { clearHeight }: Rules): number => clearHeight[OVER[over].rule];

/** The clear height over an aisle by what it is for, feet. */
export const aisleClearHeight = ({ kind = 'drive' }: Pick<Aisle, 'kind'>, rules: Rules): number =>
  limitOver(kind, rules);

/** A patch of ground with the clear height that is kept over it. */
interface Patch {
  readonly id: string;
  readonly over: Over;
  readonly outline: Obstacle;
}

/** The patches in a box whose clear height is above an elevation: none, mostly, and then nothing is searched. */
function patchesIn({ shared, stalls }: Headroom, box: Box, lowest: number): Patch[] {
  const { rules } = shared;
  const patches: Patch[] = [];
  for (const one of shared.aisles)
    if (lowest < aisleClearHeight(one, rules))
      patches.push({ id: one.id, over: one.kind ?? 'drive', outline: outlineOf(one) });
  if (lowest < Math.max(rules.clearHeight.stall, rules.clearHeight.van)) {
    for (const one of stallsIn(stalls, box)) {
      const over = one.use === 'van-accessible' ? 'van' : 'stall';
      if (lowest < limitOver(over, rules)) patches.push({ id: one.id, over, outline: stallOutline(one) });
    }
  }
  // Where several lie there, as a van's stall in a fire lane, the strictest is told first.
  return patches.sort((a, b) => WORST_FIRST.indexOf(a.over) - WORST_FIRST.indexOf(b.over));
}

/** The box and the retractor of an overhead drop are no lower than the clear height over what lies under them. */
export function dropHeadroom(drop: Drop, ground: Headroom): Finding[] {
  if ((drop.mount ?? 'overhead') !== 'overhead') return [];
  const findings: Finding[] = [];
  addHeadroom(findings, drop.id, 'box', drop.box, ground);
  if (drop.retractor) addHeadroom(findings, drop.id, 'retractor', drop.retractor, ground);
  return findings;
}

function addHeadroom(findings: Finding[], drop: string, name: string, at: Point3, ground: Headroom): void {
  const [x, y, z] = [at[0], at[1], at[2]];
  const under = patchesIn(ground, { minX: x, minY: y, maxX: x, maxY: y }, z);
  const hit = under.find(({ outline }) => insideOf(outline, x, y));
  if (hit) findings.push(finding(`The ${name} of ${drop} hangs`, drop, z, hit.over, [hit.id], ground.shared));
}

/**
 * An overhead raceway is no lower than the clear height over the aisles and stalls that it crosses. Upright legs are
 * left out: a riser stands against a column or a wall. So is what runs on a surface or in the ground.
 */
export function racewayHeadroom(raceway: Raceway, ground: Headroom): Finding[] {
  if (raceway.place !== 'overhead') return [];
  let found: Map<Over, { z: number; readonly ids: string[] }> | null = null;
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
        if (z >= limitOver(over, ground.shared.rules)) continue;
        found ??= new Map();
        const so = found.get(over) ?? { z, ids: [] };
        so.z = Math.min(so.z, z);
        if (!so.ids.includes(id)) so.ids.push(id);
        found.set(over, so);
      }
    }
  }
  if (found === null) return [];
  const low: ReadonlyMap<Over, { readonly z: number; readonly ids: readonly string[] }> = found;
  return WORST_FIRST.flatMap((over) => {
    const so = low.get(over);
    return so ? [finding(`Raceway ${raceway.id} runs`, raceway.id, so.z, over, so.ids, ground.shared)] : [];
  });
}

function finding(what: string, id: string, z: number, over: Over, under: readonly string[], shared: Shared): Finding {
  const limit = limitOver(over, shared.rules);
  const { severity, over: ground, source } = OVER[over];
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
