import { type Box, joinedBox, NO_BOX } from '../plane/box.ts';
import type { Finding } from '../site/rules/finding.ts';
import type { Charger, Stall } from '../site/site.ts';
import { aisleFindings, cordKeepoutFindings, type ReachedInlets } from './cords/cord-findings.ts';
import { cordStart } from './cords/cord-start.ts';
import { cordTo } from './cords/cords.ts';
import { hang, lying } from './cords/hang.ts';
import { partlyCovered, tooShort } from './cords/short-reach.ts';
import { meets } from './cure.ts';
import { obstaclesFor, vehicleUnder } from './field.ts';
import type { Reach } from './reach-result.ts';
import { ReachRow } from './reach-row.ts';
import type { Served, Shared } from './shared.ts';
import { type CordStart, casesIn, inletsAt, MARGIN_TIE, stallReach } from './stall-reach.ts';

export interface ChargerReach {
  /** One for each stall the charger serves, in its order. */
  readonly reach: readonly Reach[];
  readonly findings: readonly Finding[];
  /** Nothing that stands wholly outside this box had a say. */
  readonly seen: Box;
}

/** The reach of one charger's cord to each stall it serves, and what is to be said of it. */
export function chargerReach(served: Served): ChargerReach {
  const { charger, drop, stalls, field, shared } = served;
  const { rules } = shared;
  const start = cordStart(drop, rules);
  const [x, y] = start.from;
  const over = vehicleUnder(field, [x, y]);
  const near = obstaclesFor(field, [x, y]);
  const findings: Finding[] = [];
  let seen: Box = joinedBox(NO_BOX, { minX: x, minY: y, maxX: x, maxY: y });
  const reach = stalls.map(({ stall, vehicle }): Reach => {
    const cases = casesIn(stall, vehicle);
    const inlets = inletsAt(stall, vehicle, rules.headClearance, cases);
    const reached = stallReach(start, cases, inlets, near);
    seen = joinedBox(seen, reached.cords.seen);
    const row = rowOf(charger, stall, start, over?.stall.id ?? null, { cases, inlets, reached, shared });
    if (!meets(reached.coverage, rules)) {
      const short = tooShort(served, stall, row, row.cases);
      seen = joinedBox(seen, short.seen);
      findings.push(short.finding);
    } else if (reached.coverage < 1) findings.push(partlyCovered(served, row));
    if (shared.cordKeepouts.length > 0)
      findings.push(...cordKeepoutFindings(served, stall, { cases, inlets, reached }, start));
    if (shared.aisles.length > 0) findings.push(...aisleFindings(served, row));
    return row;
  });
  return { reach, findings, seen };
}

interface Reached extends ReachedInlets {
  readonly shared: Shared;
}

function rowOf(
  charger: Charger,
  stall: Stall,
  start: CordStart,
  overVehicle: string | null,
  { cases, inlets, reached, shared }: Reached,
): Reach {
  const { available } = start;
  const { worst, margin, needed, coverage, cords } = reached;
  const { direction, inlet, share } = cases[worst]!;
  const inletAt = inlets[worst]!;
  const path = cordTo(cords, worst)?.path ?? [];
  const worstCase = {
    direction,
    inlet: inlet.name,
    share,
    needed: margin === null ? null : needed[worst]!,
    available,
    margin,
    path,
    inletAt,
    hang: start.onGround
      ? lying(path, (margin ?? -1) >= -MARGIN_TIE)
      : hang(path, start.from[2], inletAt[2], available, shared.rules.clearHeight.walk),
  };
  return new ReachRow(charger.id, stall.id, coverage, worstCase, overVehicle, cases, needed);
}
