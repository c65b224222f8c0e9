import { type Box, joinedBox, NO_BOX } from '../plane/box.ts';
import type { Finding } from '../site/rules/finding.ts';
import { aisleFindings, cordKeepoutFindings } from './cord-findings.ts';
import { cordStart } from './cord-start.ts';
import { meets } from './cure.ts';
import { obstaclesFor, vehicleUnder } from './field.ts';
import { hang, lying } from './hang.ts';
import type { Reach, ReachCase } from './reach-result.ts';
import type { Served } from './shared.ts';
import { partlyCovered, tooShort } from './short-reach.ts';
import { type CordCase, inletCases, MARGIN_TIE, stallReach, worstOf } from './stall-reach.ts';

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
    const result = stallReach(start, inletCases(stall, vehicle, rules.headClearance), near);
    seen = joinedBox(seen, result.seen);
    const worst = worstOf(result.cases);
    const path = worst.cord?.path ?? [];
    const row: Reach = {
      charger: charger.id,
      stall: stall.id,
      coverage: result.coverage,
      worst: {
        ...plain(worst),
        path,
        inletAt: worst.inletAt,
        hang: start.onGround
          ? lying(path, (worst.margin ?? -1) >= -MARGIN_TIE)
          : hang(path, start.from[2], worst.inletAt[2], start.available, rules.clearHeight.walk),
      },
      cases: result.cases.map(plain),
      overVehicle: over?.stall.id ?? null,
    };
    if (!meets(result.coverage, rules)) {
      const short = tooShort(served, stall, row, result.cases);
      seen = joinedBox(seen, short.seen);
      findings.push(short.finding);
    } else if (result.coverage < 1) findings.push(partlyCovered(served, row));
    findings.push(...cordKeepoutFindings(served, stall, result.cases, start), ...aisleFindings(served, row));
    return row;
  });
  return { reach, findings, seen };
}

const plain = ({ direction, inlet, share, needed, available, margin }: CordCase): ReachCase => ({
  direction,
  inlet,
  share,
  needed,
  available,
  margin,
});
