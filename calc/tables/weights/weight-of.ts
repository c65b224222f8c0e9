import type { Metal, Method } from '../../../routing/site/schema/vocabulary.ts';
import type { ConduitConductor } from '../../plan-file/branches.ts';
import { indexed } from '../indexed.ts';
import { compareSizes } from '../sizes.ts';
import type { ComponentRow } from './component-weights.ts';
import { FITTINGS, TRAY } from './component-weights.ts';
import { CONDUCTOR_WEIGHTS } from './conductor-weights.ts';
import { RACEWAY_WEIGHTS, type RacewayWeightRow } from './raceway-weights.ts';

const racewayRow = indexed<RacewayWeightRow>(({ method, tradeSize }) => `${method} ${tradeSize}`);

/** The row of a raceway; undefined for a tray, and for one whose trade size no table gave. */
export const racewayWeight = (method: Method, tradeSize: string | null): RacewayWeightRow | undefined =>
  tradeSize === null ? undefined : racewayRow(RACEWAY_WEIGHTS.rows, `${method} ${tradeSize}`);

const NYLON: ReadonlySet<string> = new Set(['THHN', 'THWN', 'THWN-2']);
const LINKED: ReadonlySet<string> = new Set(['XHHW', 'XHHW-2']);
/** Thicker coverings than XHHW-2 weigh so much more with their conductor. Common practice, no source. */
const THICKER = 1.1;

/** Pounds a foot of one insulated conductor; a size that the table lacks weighs as the next larger one. */
export function conductorPounds(size: string, metal: Metal, insulation: string): number {
  const covering = NYLON.has(insulation) ? 'nylon' : 'linked';
  const more = NYLON.has(insulation) || LINKED.has(insulation) ? 1 : THICKER;
  for (const row of CONDUCTOR_WEIGHTS.rows) {
    const known = row[metal];
    if (known !== null && compareSizes(row.size, size) >= 0) return (more * known[covering]) / 1000;
  }
  throw new RangeError(`no weight for ${size} ${metal} ${insulation}`);
}

/** What a foot of a conduit weighs, pounds, by what it is made of. */
export interface ConduitWeight {
  readonly conduit: number;
  readonly wire: number;
  readonly fittings: number;
}

/**
 * What a foot of a conduit with its conductors weighs: the raceway, the wires in it, and couplings and straps as a share
 * of the raceway. One whose trade size no table gave weighs its wires alone.
 */
export function conduitWeight(
  {
    method,
    tradeSize,
    conductors,
  }: { method: Method; tradeSize: string | null; conductors: readonly ConduitConductor[] },
  metal: Metal,
): ConduitWeight {
  const conduit = method === 'tray' ? TRAY.pounds : (racewayWeight(method, tradeSize)?.pounds ?? 0);
  let wire = 0;
  for (const { use, size, insulation, count } of conductors)
    wire += count * conductorPounds(size, use === 'pilot' ? 'copper' : metal, insulation);
  return { conduit, wire, fittings: FITTINGS.share * conduit };
}

/** The heavier figure of the first row that is large enough; past the last row, in proportion. */
export function heavier(rows: readonly ComponentRow[], size: number): number {
  const row = rows.find(({ upTo }) => size <= upTo * (1 + 1e-9));
  if (row !== undefined) return row.high;
  const last = rows.at(-1)!;
  return (last.high * size) / last.upTo;
}
