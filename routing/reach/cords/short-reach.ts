import type { Box } from '../../plane/box.ts';
import { printLength } from '../../site/numbers/feet-inches.ts';
import type { Finding } from '../../site/rules/finding.ts';
import { siteRule } from '../../site/rules/rule-notes.ts';
import type { Stall } from '../../site/site.ts';
import { cordNeeded, leastMove, type Move } from '../cure.ts';
import { holdsPoint } from '../keepout.ts';
import type { Reach, ReachCase } from '../reach-result.ts';
import type { Served, Shared } from '../shared.ts';

const METRE = 1 / 0.3048;

/** The finding for a stall that a cord covers less of than the rule asks, with the cord or the move that would cure it. */
export function tooShort(
  served: Served,
  stall: Stall,
  row: Reach,
  cases: readonly ReachCase[],
): { readonly finding: Finding; readonly seen: Box } {
  const { charger, drop, shared } = served;
  const { rules, units } = shared;
  const length = (feet: number): string => printLength(feet, units);
  const { needed, available, margin } = row.worst;
  const car = `${stall.vehicle ?? rules.vehicle} parked ${row.worst.direction}`;
  const what =
    needed === null || margin === null
      ? `no way round the vehicles and columns leads to the inlet ${row.worst.inlet} of a ${car}`
      : `the inlet ${row.worst.inlet} of a ${car} needs ${length(needed)}, ${length(-margin)} more than the ${length(available)} there is`;
  const wanted = rules.coverage < 1 ? `, ${percent(rules.coverage)} are wanted` : '';
  const { move, seen } = leastMove({
    drop,
    served: [...served.stalls].sort((a, b) => Number(b.stall === stall) - Number(a.stall === stall)),
    field: served.field,
    rules,
    grain: units === 'm' ? 0.05 * METRE : 1 / 12,
    allowed: (at) => !shared.dropKeepouts.some((keepout) => holdsPoint(keepout, at)),
  });
  const cure = cureOf(shared, cordNeeded(cases, drop.cord, rules), move);
  return {
    seen,
    finding: {
      severity: 'fail',
      rule: 'reach',
      about: [charger.id, drop.id, stall.id],
      says: `The cord of ${charger.id} at ${drop.id} is short for ${stall.id}: ${what}. It covers ${percent(row.coverage)} of the cases${wanted}. ${cure}`,
      ...(needed === null ? {} : { value: needed }),
      limit: available,
      unit: 'ft',
      source: `${siteRule('coverage')}, ${siteRule('cordSlack')}: common practice`,
    },
  };
}

function cureOf({ rules, units }: Shared, cord: number | null, move: Move | null): string {
  const length = (feet: number): string => printLength(feet, units);
  const moved = move && `move the ${move.what} ${length(move.distance)} ${move.toward}`;
  if (cord === null) return moved ? `${capital(moved)}.` : 'No cord and no straight move of the drop would cure it.';
  const rounded = roundedUp(cord, units === 'm' ? METRE / 10 : 1);
  const past =
    rounded > rules.cordLimit
      ? `, past the ${length(rules.cordLimit)} limit unless the equipment is listed with cable management`
      : '';
  const longer = `A cord of ${length(rounded)} would reach${past}`;
  return moved ? `${longer}; or ${moved}.` : `${longer}; no straight move of the drop would cure it.`;
}

/** The finding for a stall that meets the rule although some cases are short. */
export function partlyCovered({ charger, drop, shared }: Served, row: Reach): Finding {
  const { needed, available, margin } = row.worst;
  const by = margin === null ? 'has no way' : `is ${printLength(-margin, shared.units)} short`;
  return {
    severity: 'note',
    rule: 'reach',
    about: [charger.id, drop.id, row.stall],
    says: `The cord of ${charger.id} at ${drop.id} covers ${percent(row.coverage)} of the cases in ${row.stall}, as the site's rule of ${percent(shared.rules.coverage)} allows; ${row.worst.direction} with the inlet ${row.worst.inlet} it ${by}.`,
    ...(needed === null ? {} : { value: needed }),
    limit: available,
    unit: 'ft',
    source: siteRule('coverage'),
  };
}

const roundedUp = (feet: number, step: number): number => Math.ceil(feet / step - 1e-9) * step;
// Rounded down, so that a stall that is not wholly covered never reads 100 %.
const percent = (share: number): string => `${Math.floor(share * 100 + 1e-9)}%`;
const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);
