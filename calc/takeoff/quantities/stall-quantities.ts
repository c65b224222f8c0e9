import type { Charger, Stall } from '../../../routing/site/site.ts';
import { takeoffKind } from '../../prices/kind.ts';
import { type Tally, tallying } from '../tally.ts';

const STRIPING = takeoffKind({
  item: 'striping',
  spec: 'lines and stencil of a stall',
  unit: 'each',
  basis: 'one of each stall that a charger serves; common practice',
});
const SIGN = takeoffKind({
  item: 'sign',
  spec: 'charging only, on its post',
  unit: 'each',
  basis: 'one of each stall that a charger serves; common practice',
});
const WHEEL_STOP = takeoffKind({
  item: 'wheel stop',
  spec: 'pinned',
  unit: 'each',
  basis: 'one of each stall that is served from a pedestal; common practice',
});

/** Stalls that chargers serve: those from pedestals apart. */
export interface StallsServed {
  readonly all: ReadonlySet<string>;
  readonly fromPedestals: ReadonlySet<string>;
}

/** The stalls that chargers serve; `pedestals` are the drops that are one. */
export function stallsServedBy(chargers: readonly Charger[], pedestals: ReadonlySet<string>): StallsServed {
  return {
    all: new Set(chargers.flatMap(({ stalls }) => stalls)),
    fromPedestals: new Set(chargers.flatMap(({ stalls, drop }) => (pedestals.has(drop) ? stalls : []))),
  };
}

/** What is painted and set at stalls that are served. */
export function stallQuantities(stalls: readonly Stall[], { all, fromPedestals }: StallsServed): Tally {
  const { add, tally } = tallying();
  for (const { id } of stalls) {
    if (!all.has(id)) continue;
    add(STRIPING, id, 1);
    add(SIGN, id, 1);
    if (fromPedestals.has(id)) add(WHEEL_STOP, id, 1);
  }
  return tally;
}
