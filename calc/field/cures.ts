import { copied } from '../../routing/kept/changed-places.ts';
import { between, distance } from '../../routing/plane/space.ts';
import { dropAsBuilt } from '../../routing/site/place/as-built.ts';
import type { Finding } from '../../routing/site/rules/finding.ts';
import type { Drop, Point3, Raceway, Site } from '../../routing/site/site.ts';
import { marginsOf } from '../plan/margins.ts';
import { plan } from '../plan/plan.ts';
import type { PriceList } from '../prices/price-list.ts';
import { type PriceChange, priceChange } from '../takeoff/bid/price-change.ts';
import { SUMMED_LENGTHS, summedLength } from '../takeoff/totals.ts';
import { newFaults } from './new-faults.ts';

/** What would make a drop pass where it was built; each was planned and passes. Lengths in feet. */
export type FieldCure =
  | { readonly kind: 'cord'; readonly cord: number; readonly was: number }
  | { readonly kind: 'move'; readonly feet: number; readonly to: Drop }
  | { readonly kind: 'extend'; readonly raceway: string; readonly feet: number };

/** What one drop comes to by hanging where it was built, everything else being as drawn. */
export interface Deviation {
  /** What fails or is to be checked that is not as drawn. */
  readonly faults: readonly Finding[];
  /** Feet of branch conductors, allowances and waste in, that it takes more; less than 0 where it takes less. */
  readonly wire: number;
  readonly price: PriceChange;
  readonly cures: readonly FieldCure[];
}

/** What it does that a drop was built where its record says, and what would cure it; null where it hangs as drawn. */
export function deviationOf(site: Site, id: string, prices: PriceList): Deviation | null {
  const index = site.drops.findIndex((drop) => drop.id === id);
  const drawn = site.drops[index];
  const found = site.asBuilt.get(id);
  if (!drawn || (!found?.box && !found?.retractor)) return null;
  const there = dropAsBuilt(drawn, found);
  const built = withDrop(site, index, there);
  const [before, after] = [plan(site), plan(built)];
  const faults = newFaults(built, site);
  const wireOf = (planned: typeof before): number => summedLength(planned.takeoff, SUMMED_LENGTHS.branchConductors);
  return {
    faults,
    wire: wireOf(after) - wireOf(before),
    price: priceChange(before.takeoff, after.takeoff, prices),
    cures: faults.length === 0 ? [] : curesOf(site, built, index, drawn),
  };
}

const withDrop = (site: Site, index: number, drop: Drop): Site => {
  const drops = site.drops.slice();
  drops[index] = drop;
  return { ...site, drops: copied(drops, site.drops, [index]) };
};

function curesOf(site: Site, built: Site, index: number, drawn: Drop): readonly FieldCure[] {
  const passes = (next: Site): boolean => newFaults(next, site).length === 0;
  const there = built.drops[index]!;
  return [
    ...longerCord(built, index, there, passes),
    ...extended(built, there, passes),
    ...movedBack(built, index, there, drawn, passes),
  ];
}

/** The shortest cord of whole feet, or quarters of a meter, with which it passes. */
function longerCord(built: Site, index: number, there: Drop, passes: (site: Site) => boolean): readonly FieldCure[] {
  const margins = marginsOf(plan(built), built);
  const left = built.chargers.flatMap(({ id, drop }) => (drop === there.id ? (margins.get(id)?.cord?.left ?? []) : []));
  const short = -Math.min(0, ...left);
  if (!(short > 0 && Number.isFinite(short))) return [];
  const unit = built.units === 'm' ? 0.25 / 0.3048 : 1;
  const first = Math.ceil((there.cord + short) / unit - 1e-9) * unit;
  for (let cord = first; cord <= built.rules.cordLimit + 1e-9 && cord < first + 4 * unit; cord += unit)
    if (passes(withDrop(built, index, { ...there, cord }))) return [{ kind: 'cord', cord, was: there.cord }];
  return [];
}

/** The nearest raceway of its kind of place led on to the box. */
function extended(built: Site, there: Drop, passes: (site: Site) => boolean): readonly FieldCure[] {
  let best: { readonly raceway: Raceway; readonly at: Point3; readonly feet: number } | null = null;
  for (const raceway of built.raceways) {
    for (let i = 1; i < raceway.path.length; i++) {
      const at = nearestOnLeg(there.box, raceway.path[i - 1]!, raceway.path[i]!);
      const feet = distance(at, there.box);
      if (best === null || feet < best.feet) best = { raceway, at, feet };
    }
  }
  if (best === null || best.feet < MEETS) return [];
  const { raceway, at, feet } = best;
  const led: Raceway = { id: freeId(built), path: [at, there.box], method: raceway.method, place: raceway.place };
  if (!passes({ ...built, raceways: [...built.raceways, led] })) return [];
  return [{ kind: 'extend', raceway: raceway.id, feet }];
}

function nearestOnLeg(from: Point3, a: Point3, b: Point3): Point3 {
  const square = distance(a, b) ** 2;
  const dot = (from[0] - a[0]) * (b[0] - a[0]) + (from[1] - a[1]) * (b[1] - a[1]) + (from[2] - a[2]) * (b[2] - a[2]);
  return between(a, b, square > 0 ? Math.min(1, Math.max(0, dot / square)) : 0);
}

/** A box nearer than this to its raceway, feet, needs no more of it. */
const MEETS = 0.25;

function freeId({ raceways }: Site): string {
  const taken = new Set(raceways.map(({ id }) => id));
  let id = 'led on';
  while (taken.has(id)) id += '+';
  return id;
}

const SHARES = 8;
/** As near as the way back is told, feet. */
const FINE = 1 / 96;

/** The least way back toward where it is drawn after which it passes. */
function movedBack(
  built: Site,
  index: number,
  there: Drop,
  drawn: Drop,
  passes: (site: Site) => boolean,
): readonly FieldCure[] {
  const at = (share: number): Drop => ({
    ...there,
    box: between(there.box, drawn.box, share),
    ...(there.retractor && drawn.retractor && { retractor: between(there.retractor, drawn.retractor, share) }),
  });
  const far = Math.max(
    distance(there.box, drawn.box),
    there.retractor && drawn.retractor ? distance(there.retractor, drawn.retractor) : 0,
  );
  let good = SHARES;
  while (good > 1 && passes(withDrop(built, index, at((good - 1) / SHARES)))) good--;
  let [bad, well] = [(good - 1) / SHARES, good / SHARES];
  while ((well - bad) * far > FINE) {
    const middle = (bad + well) / 2;
    if (passes(withDrop(built, index, at(middle)))) well = middle;
    else bad = middle;
  }
  return [{ kind: 'move', feet: well * far, to: at(well) }];
}
