import { type Box, joinedBox, NO_BOX } from '../plane/box.ts';
import type { Finding } from '../site/rules/finding.ts';
import { aisleFindings, cordKeepoutFindings } from './cord-findings.ts';
import { cordStart } from './cord-start.ts';
import { meets } from './cure.ts';
import { obstaclesFor, vehicleUnder } from './field.ts';
import { hang, lying } from './hang.ts';
import type { Reach } from './reach-result.ts';
import type { Served } from './shared.ts';
import { partlyCovered, tooShort } from './short-reach.ts';
import { inletCases, MARGIN_TIE, stallReach, worstAt } from './stall-reach.ts';

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
    const inlets = inletCases(stall, vehicle, rules.headClearance);
    const result = stallReach(start, inlets, near);
    seen = joinedBox(seen, result.seen);
    const worst = worstAt(result.cases);
    const { direction, inlet, share, needed, available, margin } = result.cases[worst]!;
    const inletAt = inlets[worst]!.at;
    const path = result.cords[worst]?.path ?? [];
    const row: Reach = {
      charger: charger.id,
      stall: stall.id,
      coverage: result.coverage,
      worst: {
        direction,
        inlet,
        share,
        needed,
        available,
        margin,
        path,
        inletAt,
        hang: start.onGround
          ? lying(path, (margin ?? -1) >= -MARGIN_TIE)
          : hang(path, start.from[2], inletAt[2], start.available, rules.clearHeight.walk),
      },
      cases: result.cases,
      overVehicle: over?.stall.id ?? null,
    };
    if (!meets(result.coverage, rules)) {
      const short = tooShort(served, stall, row, result.cases);
      seen = joinedBox(seen, short.seen);
      findings.push(short.finding);
    } else if (result.coverage < 1) findings.push(partlyCovered(served, row));
    findings.push(...cordKeepoutFindings(served, stall, inlets, result, start), ...aisleFindings(served, row));
    return row;
  });
  return { reach, findings, seen };
}
