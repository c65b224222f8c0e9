import { kept } from '../../../routing/kept/kept.ts';
import { addTo } from '../../../routing/lists/grouping.ts';
import { boxOf } from '../../../routing/plane/box.ts';
import { spansInside } from '../../../routing/plane/obstacle.ts';
import { printLength } from '../../../routing/site/numbers/feet-inches.ts';
import type { Finding } from '../../../routing/site/rules/finding.ts';
import type { Units } from '../../../routing/site/schema/vocabulary.ts';
import type { Aisle, Point3, Raceway, Stall } from '../../../routing/site/site.ts';
import { outlineOf, stallOutline, stallsIn } from '../../../routing/standing/outlines.ts';
import type { CodeTables } from '../../tables/code-tables.ts';
import { coverInches } from '../../tables/raceway-of.ts';
import type { CoverRow } from '../../tables/raceway-rows.ts';

/** Steeper than this, rise over run, a leg comes out of the ground at an end and is not buried along its length. */
const STEEPEST = 1;
/** Slips of drawing and of units, inches. */
const SLACK = 0.05;

interface Shallow {
  readonly raceway: string;
  readonly cover: number;
}

/**
 * Buried raceways with less cover than Table 300.5(A) asks for, the worst first, one finding for each depth that is asked
 * for. Everything counts as under a parking lot but what its raceway says lies under soil and no stall or aisle but a walk lies over.
 * Legs that rise out of the ground at a slope over 45 degrees are passed over. The drawn line is taken as the top.
 */
export const coverFindings = kept(
  (
    raceways: readonly Raceway[],
    stalls: readonly Stall[],
    aisles: readonly Aisle[],
    tables: CodeTables,
    units: Units,
  ): readonly Finding[] => {
    const shallow = new Map<number, Shallow[]>();
    for (const raceway of raceways) {
      const worst = leastCovered(raceway, stalls, aisles, tables);
      if (worst === null || worst.cover >= worst.needed - SLACK) continue;
      addTo(shallow, worst.needed, { raceway: raceway.id, cover: worst.cover });
    }
    return [...shallow].map(([needed, ones]) => findingOf(needed, ones, tables, units));
  },
);

/** The buried leg of a raceway that has least over what it needs, or falls shortest of it, inches; null where none is buried. */
export function leastCovered(
  { method, place, surface, path }: Raceway,
  stalls: readonly Stall[],
  aisles: readonly Aisle[],
  tables: CodeTables,
): { readonly cover: number; readonly needed: number } | null {
  if (place !== 'underground' || method === 'tray') return null;
  let worst: { readonly cover: number; readonly needed: number } | null = null;
  for (let i = 1; i < path.length; i++) {
    const [a, b] = [path[i - 1]!, path[i]!];
    if (!isBuried(a, b)) continue;
    const where: CoverRow['place'] =
      surface === 'soil' && !isDrivenOver(a, b, stalls, aisles) ? 'elsewhere' : 'traffic';
    const needed = coverInches(tables, method, where);
    const cover = -12 * Math.max(a[2], b[2]);
    if (worst === null || needed - cover > worst.needed - worst.cover) worst = { cover, needed };
  }
  return worst;
}

function isBuried(a: Point3, b: Point3): boolean {
  const run = Math.hypot(b[0] - a[0], b[1] - a[1]);
  return run > 0 && Math.min(a[2], b[2]) < 0 && Math.abs(b[2] - a[2]) <= STEEPEST * run;
}

function isDrivenOver(a: Point3, b: Point3, stalls: readonly Stall[], aisles: readonly Aisle[]): boolean {
  const box = boxOf([
    [a[0], a[1]],
    [b[0], b[1]],
  ]);
  const driven = aisles.filter(({ kind }) => kind !== 'walk');
  return [...stallsIn(stalls, box).map(stallOutline), ...driven.map(outlineOf)].some(
    (outline) => spansInside(outline, a[0], a[1], b[0], b[1]).length > 0,
  );
}

function findingOf(needed: number, shallow: readonly Shallow[], tables: CodeTables, units: Units): Finding {
  const [worst, ...others] = [...shallow].sort((a, b) => a.cover - b.cover);
  const { raceway, cover } = worst!;
  const also =
    others.length === 0 ? '' : ` ${others.length === 1 ? 'One more lies' : `${others.length} more lie`} too shallow.`;
  const lies =
    cover > 0
      ? `lies ${printLength(cover / 12, units)} below grade at its shallowest`
      : 'comes up to grade on a gentle slope';
  return {
    severity: 'fail',
    rule: 'cover',
    about: [raceway, ...others.map((one) => one.raceway)],
    says: `${raceway} ${lies}; ${printLength(needed / 12, units)} of cover is asked for there.${also} Bury it deeper, or turn it up steeply where it ends.`,
    value: cover,
    limit: needed,
    unit: 'in',
    source: tables.cover.source,
  };
}
