import { printLength } from '../../site/numbers/feet-inches.ts';
import type { Finding } from '../../site/rules/finding.ts';
import { siteRule } from '../../site/rules/rule-notes.ts';
import type { Keepout, Point2, Point3, Stall } from '../../site/site.ts';
import { outlineOf } from '../../standing/outlines.ts';
import { besideVehicle } from '../field.ts';
import type { Reach } from '../reach-result.ts';
import type { Served } from '../shared.ts';
import { type CordStart, type LikelyCase, MARGIN_TIE, type StallReach } from '../stall-reach.ts';
import { cordTo } from './cords.ts';
import { partsInside } from './plan-path.ts';

/** The inlets of a stall, and the cord as it reaches them. */
export interface ReachedInlets {
  readonly cases: readonly LikelyCase[];
  /** Where the inlet of each is. */
  readonly inlets: readonly Point3[];
  readonly reached: StallReach;
}

/** Keep-outs that block cords and that a taut cord passes through, at the elevation it has there, on its way. */
export function cordKeepoutFindings(served: Served, stall: Stall, inlets: ReachedInlets, start: CordStart): Finding[] {
  const { charger, drop, shared } = served;
  const findings: Finding[] = [];
  for (const keepout of shared.cordKeepouts) {
    const through = inlets.cases.find((_, i) => crosses(inlets, i, keepout, start));
    if (!through) continue;
    findings.push({
      severity: 'fail',
      rule: 'keepout-crossed',
      about: [charger.id, keepout.id, drop.id, stall.id],
      says: `The cord of ${charger.id} at ${drop.id} crosses keep-out ${keepout.id} on its way to the inlet ${through.inlet.name} in ${stall.id}, ${through.direction}: move the drop, or serve the stall from another.`,
      source: 'keep-out of the site that blocks cords',
    });
  }
  return findings;
}

function crosses(
  { inlets, reached: { cords, needed } }: ReachedInlets,
  place: number,
  keepout: Keepout,
  { from, available, onGround }: CordStart,
): boolean {
  // A cord that does not arrive has its own finding.
  if (available - needed[place]! < -MARGIN_TIE) return false;
  const cord = cordTo(cords, place);
  if (!cord) return false;
  const inletAt = inlets[place]!;
  const low = keepout.from ?? Number.NEGATIVE_INFINITY;
  const high = keepout.to ?? Number.POSITIVE_INFINITY;
  const elevation = (at: number): number => from[2] + (at / cord.length) * (inletAt[2] - from[2]);
  return partsInside(cord.path, outlineOf(keepout)).some(([start, end]) => {
    const a = onGround ? 0 : elevation(start);
    const b = onGround ? 0 : elevation(end);
    return Math.min(a, b) < high && Math.max(a, b) > low;
  });
}

/** Less of a low cord than this over an aisle is not spoken of: a step in from the stalls. Common practice, no source. */
const LEAST_OVER = 1;

/**
 * Aisles and walkways over which the slack cord hangs lower than the walk headroom in the worst case. Where it lies along
 * a parked vehicle, as round a tail that stands out of its stall, it is in nobody's way that the vehicle is not.
 */
export function aisleFindings({ charger, drop, field, shared }: Served, row: Reach): Finding[] {
  const { strip, low } = row.worst.hang ?? { strip: null, low: 0 };
  if (!strip || shared.aisles.length === 0) return [];
  const { walk } = shared.rules.clearHeight;
  const length = (feet: number): string => printLength(feet, shared.units);
  const legs = strip.path
    .slice(1)
    .map((end, i): [Point2, Point2] => [strip.path[i]!, end])
    .filter(([a, b]) => !besideVehicle(field, [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2]));
  return shared.aisles.flatMap((aisle): Finding[] => {
    const over = legs
      .flatMap((leg) => partsInside(leg, outlineOf(aisle)))
      .reduce((sum, [from, to]) => sum + to - from, 0);
    if (over < LEAST_OVER) return [];
    const does =
      drop.mount === 'pedestal'
        ? `lies on the ground over ${length(over)} of ${aisle.id}, where it is tripped over and driven over.`
        : `hangs lower than the walk headroom of ${length(walk)} over ${length(over)} of ${aisle.id}; its lowest point is ${low === 0 ? 'on the ground' : `at ${length(low)}`}.`;
    return [
      {
        severity: 'warn',
        rule: 'low-cord',
        about: [charger.id, aisle.id, drop.id, row.stall],
        says: `The slack cord of ${charger.id} at ${drop.id}, out to the inlet ${row.worst.inlet} in ${row.stall}, ${does}`,
        value: over,
        limit: LEAST_OVER,
        unit: 'ft',
        source: `headroom of 80 in on walks, 2010 ADA Standards 307.4; ${siteRule('clearHeight.walk')}`,
      },
    ];
  });
}
