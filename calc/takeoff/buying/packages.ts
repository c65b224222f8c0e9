import { GEAR, GROUND_WORK } from '../systems.ts';

/** Packages in which material is bought, each from its own supplier. */
export const PACKAGES = [
  'gear',
  'chargers and cords',
  'wire',
  'pipe',
  'fittings',
  'boxes',
  'supports',
  'site',
] as const;
export type Package = (typeof PACKAGES)[number];

/** Work that is done and not bought; and what is counted for the order beside the feet of it. */
const NOT_BOUGHT: ReadonlySet<string> = new Set([
  'field bend',
  'test',
  'termination',
  'core drill',
  'saw cut',
  'trench',
  'backfill',
  'spoil',
  'raceway stick',
  'reel',
]);

const PACKAGE_OF: ReadonlyMap<string, Package> = new Map<string, Package>([
  ...GEAR.map((item) => [item, 'gear'] as const),
  ...['charging module', 'retractor', 'cord', 'strain relief', 'pedestal', 'label'].map(
    (item) => [item, 'chargers and cords'] as const,
  ),
  ...['lug', 'wire connector', 'bonding pigtail', 'electrode connection', 'ground rod', 'ground ring'].map(
    (item) => [item, 'wire'] as const,
  ),
  ...['raceway', 'feeder raceway', 'feeder over 1,000 V'].map((item) => [item, 'pipe'] as const),
  ...['junction box', 'pull point', 'cover', 'conduit body', 'handhole'].map((item) => [item, 'boxes'] as const),
  ...['strap', 'hanger', 'trapeze', 'threaded rod', 'beam clamp', 'stringer', 'tray support'].map(
    (item) => [item, 'supports'] as const,
  ),
]);

/** The package that an item is bought in; null for work, which is not bought. */
export function packageOf(item: string): Package | null {
  if (NOT_BOUGHT.has(item)) return null;
  if (/conductor$/.test(item)) return 'wire';
  return PACKAGE_OF.get(item) ?? (GROUND_WORK.includes(item) ? 'site' : 'fittings');
}

/** Weeks from order to delivery, where it is not from stock. Common practice, no source: the supplier says. */
const LEAD_WEEKS: ReadonlyMap<string, number> = new Map([
  ['service equipment', 40],
  ['switchboard', 40],
  ['transformer', 30],
  ['panelboard', 12],
  ['inverter', 12],
  ['disconnect', 8],
  ['breaker', 6],
  ['device over 1,000 V', 20],
  ['charging module', 12],
  ['pedestal', 12],
  ['retractor', 6],
  ['cord', 6],
  ['handhole', 4],
]);

/** 0 for what is on the shelf. */
export const leadWeeks = (item: string): number => LEAD_WEEKS.get(item) ?? 0;

/** What an engineer asks to see before it is ordered. Common practice, no source. */
const SUBMITTED: ReadonlySet<string> = new Set([
  ...[...LEAD_WEEKS.keys()],
  'strain relief',
  'junction box',
  'pull point',
  'trapeze',
  'stringer',
  'expansion fitting',
  'equipment pad',
  'sign',
]);

/** Whether a submittal goes to the engineer first: conductors and raceways by their kind. */
export const isSubmitted = (item: string): boolean =>
  SUBMITTED.has(item) || /conductor$/.test(item) || item.endsWith('raceway');

/** Sticks in a bundle and fittings in a box by trade size, inches. Common practice, no source. */
const PACKS: readonly (readonly [toInches: number, sticks: number, fittings: number])[] = [
  [0.5, 10, 50],
  [0.75, 10, 25],
  [1, 10, 20],
  [1.25, 5, 10],
  [2, 5, 5],
];
const IN_BOXES: ReadonlySet<string> = new Set(['coupling', 'connector', 'bushing']);
/** In a box whatever their size. Common practice, no source. */
const BY_HUNDRED: ReadonlySet<string> = new Set(['strap', 'wire connector', 'bonding pigtail', 'label']);

/** How many of an item come in one pack, and what it is called; null where they are bought one by one. */
export function packOf(item: string, inches: number | null): { readonly of: number; readonly called: string } | null {
  if (BY_HUNDRED.has(item)) return { of: 100, called: 'box' };
  const row = inches === null ? undefined : PACKS.find(([to]) => inches <= to + 1e-9);
  if (row === undefined) return null;
  if (item.endsWith('raceway')) return { of: row[1], called: 'bundle' };
  return IN_BOXES.has(item) ? { of: row[2], called: 'box' } : null;
}
