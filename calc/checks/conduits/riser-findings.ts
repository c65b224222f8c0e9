import { kept } from '../../../routing/kept/kept.ts';
import { keptEach } from '../../../routing/kept/kept-list.ts';
import { addTo } from '../../../routing/lists/grouping.ts';
import { boxOf } from '../../../routing/plane/box.ts';
import { insideOf, type Obstacle, outlineDistance } from '../../../routing/plane/obstacle.ts';
import { printLength } from '../../../routing/site/numbers/feet-inches.ts';
import type { Finding } from '../../../routing/site/rules/finding.ts';
import type { Units } from '../../../routing/site/schema/vocabulary.ts';
import type { Aisle, Equipment, Point2, Raceway, Stall } from '../../../routing/site/site.ts';
import { footprintOf } from '../../../routing/standing/footprint.ts';
import { outlineOf, stallOutline, stallsIn } from '../../../routing/standing/outlines.ts';
import type { CodeTables } from '../../tables/code-tables.ts';
import { cited } from '../../tables/sections.ts';

/** How near to a stall or a lane a raceway that comes out of the ground may be hit by a car, ft; common practice, no source. */
const CAR_REACH = 3;

/** A place where a raceway comes out of the ground. */
interface Riser {
  readonly raceway: Raceway;
  readonly at: Point2;
}

/** Where a raceway comes out of the ground. */
export const risersOfSite = kept((raceways: readonly Raceway[]): readonly Riser[] => risersEach([raceways], []).flat());

const risersEach = keptEach(([raceway]: readonly [Raceway]): readonly Riser[] => {
  const { path, method } = raceway;
  if (method === 'tray') return NONE;
  const risers = path.slice(1).flatMap((b, i): Riser[] => {
    const a = path[i]!;
    const [low, high] = [Math.min(a[2], b[2]), Math.max(a[2], b[2])];
    if (low >= 0 || high <= 0) return [];
    const share = a[2] / (a[2] - b[2]);
    return [{ raceway, at: [a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1])] }];
  });
  return risers.length === 0 ? NONE : risers;
});

const NONE: readonly Riser[] = [];

/**
 * Raceways that come out of the ground where a car may hit them, in a method that is not made for damage: one finding a
 * method. What comes up inside of equipment is guarded by it; bollards and wheel stops are not drawn.
 */
export const riserFindings = kept(
  (
    raceways: readonly Raceway[],
    stalls: readonly Stall[],
    aisles: readonly Aisle[],
    equipment: readonly Equipment[],
    tables: CodeTables,
    units: Units,
  ): readonly Finding[] => {
    const { methods } = tables.damage;
    const weak = risersOfSite(raceways).filter(({ raceway: { method } }) => !methods.includes(method));
    if (weak.length === 0) return [];
    const driven = aisles.filter(({ kind }) => kind !== 'walk').map(outlineOf);
    const byMethod = new Map<string, { readonly id: string; readonly away: number }[]>();
    for (const { raceway, at } of weak) {
      if (equipment.some((one) => isOn(footprintOf(one), at))) continue;
      const away = nearestCar(at, stalls, driven);
      if (away > CAR_REACH) continue;
      addTo(byMethod, raceway.method, { id: raceway.id, away });
    }
    return [...byMethod].map(([method, list]): Finding => {
      const ids = [...new Set(list.map(({ id }) => id))];
      const nearest = list.reduce((near, one) => (one.away < near.away ? one : near));
      const who = ids.length === 1 ? `${ids[0]} comes` : `${ids.length} raceways of ${method} come`;
      return {
        severity: 'warn',
        rule: 'riser',
        about: [nearest.id, ...ids.filter((id) => id !== nearest.id)],
        says: `${who} out of the ground in ${method} ${nearest.away === 0 ? 'in a stall or lane' : `${printLength(nearest.away, units)} from a stall or lane`}, where a car may hit ${ids.length === 1 ? 'it' : 'them'}: ${methods.join(', ')} from below grade up are made for that. One of these there, or a guard that is shown on the drawings.`,
        value: nearest.away,
        limit: CAR_REACH,
        unit: 'ft',
        source: `${cited(tables, 'risers')}; distance: common practice, no source`,
      };
    });
  },
);

const isOn = (footprint: readonly Point2[], [x, y]: Point2): boolean => {
  const box = boxOf(footprint);
  return x >= box.minX - 0.5 && x <= box.maxX + 0.5 && y >= box.minY - 0.5 && y <= box.maxY + 0.5;
};

/** Feet to the nearest stall or lane, 0 inside of one; Infinity where none is within reach. */
function nearestCar([x, y]: Point2, stalls: readonly Stall[], driven: readonly Obstacle[]): number {
  const near = stallsIn(stalls, { minX: x - CAR_REACH, minY: y - CAR_REACH, maxX: x + CAR_REACH, maxY: y + CAR_REACH });
  const away = (outline: Obstacle): number => (insideOf(outline, x, y) ? 0 : outlineDistance(outline, x, y));
  return [...near.map(stallOutline), ...driven].reduce((least, outline) => Math.min(least, away(outline)), Infinity);
}
