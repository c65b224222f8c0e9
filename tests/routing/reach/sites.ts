import type {
  Charger,
  Column,
  Drop,
  Inlet,
  Point2,
  Point3,
  Site,
  SiteFile,
  Stall,
} from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';

/** A site of some elements, in feet. */
export const siteOf = (parts: Partial<SiteFile> = {}): Site =>
  toSite({ format: 'overrow/site', version: 1, units: 'ft', name: 'test', ...parts });

export const inlet = (name: string, side: Inlet['side'], along: number, height = 2.5, share = 1): Inlet => ({
  name,
  side,
  along,
  height,
  share,
});

export const stall = (id: string, at: Point2, more: Partial<Stall> = {}): Stall => ({
  id,
  at,
  width: 9,
  depth: 18,
  heading: 90,
  vehicle: 'car',
  ...more,
});

export const drop = (id: string, box: Point3, more: Partial<Drop> = {}): Drop => ({ id, box, cord: 25, ...more });

export const charger = (id: string, at: string, stalls: readonly string[]): Charger => ({
  id,
  drop: at,
  stalls,
  from: 'P1',
  amps: 48,
  volts: 208,
  phases: 1,
});

/** A car of 15 x 6 ft with one inlet in each corner place. */
export const CAR = {
  length: 15,
  width: 6,
  height: 5,
  inlets: [
    inlet('rear-left', 'left', 0.9),
    inlet('front-left', 'left', 0.1),
    inlet('rear-right', 'right', 0.9),
    inlet('front', 'front', 0),
    inlet('front-right', 'right', 0.1),
  ],
};

interface Row {
  readonly stalls: readonly Stall[];
  readonly drops: readonly Drop[];
  readonly chargers: readonly Charger[];
  readonly columns: readonly Column[];
}

/** Stalls side by side at 9 ft, entered from y = 0, with a drop 10 ft up between every other two. */
export function row(count: number, more: Partial<Stall> = {}): Row {
  const stalls = Array.from({ length: count }, (_, i) => stall(`S${i}`, [9 * i, 0], more));
  const drops = stalls.map((_, i) => drop(`D${i}`, [9 * i + 4.5, 9, 11], { retractor: [9 * i + 4.5, 9, 10] }));
  const chargers = stalls.map((_, i) => charger(`C${i}`, `D${i}`, [`S${i}`]));
  const columns: Column[] = [{ id: 'K0', at: [4.5, 18], size: [1, 1] }];
  return { stalls, drops, chargers, columns };
}
