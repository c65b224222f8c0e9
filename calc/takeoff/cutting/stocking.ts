import { kept } from '../../../routing/kept/kept.ts';
import { addTo } from '../../../routing/lists/grouping.ts';
import type { Rules } from '../../../routing/site/site.ts';
import type { TakeoffRow } from '../../plan-file/takeoff.ts';
import type { TakeoffKind } from '../../prices/kind.ts';
import { STICK } from '../../prices/spec.ts';
import { type Sum, talliedParts } from '../tally.ts';
import { type CutGroup, cutGroup, type StockWay } from './stock.ts';

/** What is cut from stock, and how it is bought. */
const STOCKED: ReadonlyMap<string, StockWay> = new Map([
  ...['raceway', 'feeder raceway'].map((item) => [item, 'stick'] as const),
  ...['conductor', 'grounding conductor', 'pilot conductor'].map((item) => [item, 'reel'] as const),
  ...[
    'feeder conductor',
    'feeder grounding conductor',
    'feeder bonding conductor',
    'electrode conductor',
    'ground ring',
  ].map((item) => [item, 'length'] as const),
]);

const wayOf = ({ item, spec }: TakeoffKind): StockWay | undefined => {
  const way = STOCKED.get(item);
  // Flexible conduit comes in coils, of which a length is cut.
  return way === 'stick' && spec.startsWith('LFMC') ? 'length' : way;
};

/** Sums that are cut from the same stock. */
export interface Stocked {
  readonly way: StockWay;
  readonly spec: string;
  readonly sums: readonly Sum[];
  readonly cutting: () => CutGroup;
}

/** Waste of what is bought for a kind: of conductors or of raceways. */
const wasteOf = (way: StockWay, { item }: TakeoffKind, { waste }: Pick<Rules, 'waste'>): number =>
  way === 'stick' || item.endsWith('raceway') ? waste.raceway : waste.conductor;

/** What two sums have in common that are cut from the same stock. */
export const stockKey = ({ item, spec }: TakeoffKind): string =>
  `${STOCKED.get(item) === 'stick' ? 'raceway' : item} ${spec}`;

/** The sums that are cut from stock, together where they are cut from the same. */
export function stocksOf(sums: readonly Sum[], rules: Rules): ReadonlyMap<string, Stocked> {
  const groups = new Map<string, Sum[]>();
  for (const sum of sums) {
    if (wayOf(sum.kind) === undefined) continue;
    const key = stockKey(sum.kind);
    addTo(groups, key, sum);
  }
  return new Map(
    [...groups].map(([key, own]) => {
      const { kind } = own[0]!;
      const way = wayOf(kind)!;
      const share = wasteOf(way, kind, rules);
      const cutting = kept((): CutGroup => {
        const parts = own.flatMap(talliedParts);
        return cutGroup(parts[0]!, parts, way, kind.spec, share);
      });
      return [key, { way, spec: kind.spec, sums: own, cutting }];
    }),
  );
}

/** Sticks or reels that something is cut from, counted when they are asked for. */
export function stockRow({ way, spec, sums, cutting }: Stocked): TakeoffRow {
  const parts = kept(() => sums.flatMap(talliedParts));
  const of = kept(() => [...new Set(parts().map((part) => part.of))]);
  return {
    item: way === 'stick' ? 'raceway stick' : 'reel',
    spec: way === 'stick' ? `${spec}, ${STICK} ft` : spec,
    get quantity() {
      return cutting().count;
    },
    high: 0,
    unit: 'each',
    basis:
      way === 'stick'
        ? 'those of the cutting plan, branches and feeders together, and no less than the length with waste'
        : 'those of the cutting plan, of the length that buys the fewest feet, and no less than the length with waste',
    get parts() {
      return parts();
    },
    get of() {
      return of();
    },
  };
}
