import { plan } from '../../../calc/plan/plan.ts';
import { INVENTED_LIST } from '../../../calc/prices/invented-list.ts';
import type { What } from '../../../calc/propose/propose.ts';
import { costOf } from '../../../calc/takeoff/bid/cost.ts';
import type { Point3, Raceway, SiteFile } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { FEW_ANSWERS, proposed as proposedOf } from './propose-parts.ts';

export const BEAMS = [0, 27, 54, 81, 108].map((x, i) => ({
  id: `B${i + 1}`,
  from: [x, -18, 13] as const,
  to: [x, 18, 13] as const,
}));
export const CANOPY: NonNullable<SiteFile['members']> = [
  ...BEAMS,
  ...[-15, -9, -3, 3, 9, 15].map((y) => ({ id: `PU${y}`, from: [0, y, 13.5] as const, to: [108, y, 13.5] as const })),
];

/** Twenty-four stalls under a canopy, and their panel beyond the drive aisle, 24 ft wide. */
export const lot = (raceways: readonly Raceway[], members: NonNullable<SiteFile['members']> = CANOPY): SiteFile => ({
  format: 'overrow/site',
  version: 1,
  units: 'ft',
  name: 'over the aisle',
  stalls: [1, -1].flatMap((side) =>
    Array.from({ length: 12 }, (_, i) => ({
      id: `S${side > 0 ? 'N' : 'S'}${i + 1}`,
      at: [i * 9 + 4.5, side * 18] as const,
      width: 9,
      depth: 18,
      heading: side > 0 ? 270 : 90,
    })),
  ),
  columns: [0, 27, 54, 81, 108].map((x, i) => ({ id: `C${i + 1}`, at: [x, 0], size: [1, 1], height: 13 })),
  members,
  aisles: [
    {
      id: 'A1',
      outline: [
        [-10, 18],
        [120, 18],
        [120, 42],
        [-10, 42],
      ],
    },
  ],
  equipment: [
    {
      id: 'P1',
      kind: 'panelboard',
      at: [0, 50],
      size: [3, 1, 6],
      entry: [0, 50, 2],
      volts: 208,
      phases: 3,
      busAmps: 800,
      mainAmps: 800,
      spaces: 84,
    },
  ],
  raceways,
});

export const BURIED: Raceway = {
  id: 'U1',
  path: [
    [0, 50, 2],
    [0, 50, -2],
    [0, 0, -2],
    [0, 0, 2],
  ],
  method: 'PVC40',
  place: 'underground',
};
export const TRUNK: Raceway = {
  id: 'T1',
  path: [
    [0, 0, 2],
    [0, 0, 11],
    [108, 0, 11],
  ],
  method: 'EMT',
  place: 'overhead',
};

export const proposed = (file: SiteFile, what: What = 'all') => proposedOf(file, what, 1, { answers: FEW_ANSWERS });
export const failing = (file: SiteFile): string[] =>
  plan(toSite(file)).findings.flatMap(({ severity, says }) => (severity === 'fail' ? [says] : []));
export const quantity = (file: SiteFile, item: string): number =>
  plan(toSite(file)).takeoff.reduce((sum, row) => sum + (row.item === item ? row.quantity : 0), 0);
export const dollars = (file: SiteFile): number => costOf(plan(toSite(file)).takeoff, INVENTED_LIST, 0).cost;

/** EMT to 1 in. is supported each 10 ft (NEC 358.30(A)). */
export const EVERY = 10;
/** The reach of a member, `hangReach` of the rules. */
const REACH = 3;

/**
 * The longest stretch of what hangs that no member holds, by places a tenth of a foot apart along it: an own look at
 * distances to line segments in the plan. Upright legs stand against something.
 */
export function longestLoose({ raceways = [], members = [] }: SiteFile): number {
  let longest = 0;
  for (const { path, place } of raceways) {
    if (place !== 'overhead') continue;
    let loose = 0;
    path.slice(1).forEach((b, i) => {
      const a = path[i]!;
      const long = Math.hypot(b[0] - a[0], b[1] - a[1], b[2] - a[2]);
      if (Math.hypot(b[0] - a[0], b[1] - a[1]) < 0.01) {
        loose = 0;
        return;
      }
      const n = Math.ceil(long * 10);
      for (let k = 0; k < n; k++) {
        const t = (k + 0.5) / n;
        const at = [0, 1, 2].map((axis) => a[axis]! + (b[axis]! - a[axis]!) * t) as [number, number, number];
        const isHeld = members.some(({ from, to }) => {
          const [ux, uy] = [to[0] - from[0], to[1] - from[1]];
          const s = Math.min(1, Math.max(0, ((at[0] - from[0]) * ux + (at[1] - from[1]) * uy) / (ux * ux + uy * uy)));
          const level = from[2] + (to[2] - from[2]) * s;
          return Math.hypot(from[0] + ux * s - at[0], from[1] + uy * s - at[1]) <= REACH && level >= at[2];
        });
        loose = isHeld ? 0 : loose + long / n;
        longest = Math.max(longest, loose);
      }
    });
  }
  return longest;
}

export const place = ({ drops = [] }: SiteFile, id: string): Point3 => drops.find((one) => one.id === id)!.box;
