import { type CordField, vehicleUnder } from '../../reach/field.ts';
import { holdsPoint } from '../../reach/keepout.ts';
import type { Shared } from '../../reach/shared.ts';
import { printLength } from '../../site/numbers/feet-inches.ts';
import type { Finding } from '../../site/rules/finding.ts';
import { siteRule } from '../../site/rules/rule-notes.ts';
import type { Drop, Point3 } from '../../site/site.ts';

/** What is to be said of one drop by itself: its cord, the rest of its connector, and where it hangs. */
export function dropFindings(drop: Drop, field: CordField, shared: Shared): Finding[] {
  return [
    ...cordLimit(drop, shared),
    ...restHeight(drop, shared),
    ...pedestalHeight(drop, shared),
    ...overVehicle(drop, field, shared),
    ...inKeepout(drop, shared),
  ];
}

function cordLimit(drop: Drop, { rules, units }: Shared): Finding[] {
  if (drop.cord <= rules.cordLimit) return [];
  const length = (feet: number): string => printLength(feet, units);
  return [
    {
      severity: 'fail',
      rule: 'cord-limit',
      about: [drop.id],
      says: `The cord of ${drop.id}, ${length(drop.cord)}, is ${length(drop.cord - rules.cordLimit)} longer than the ${length(rules.cordLimit)} of usable cord allowed; longer is for equipment listed with a cable management system, and is then set in the site's rules.`,
      value: drop.cord,
      limit: rules.cordLimit,
      unit: 'ft',
      source: siteRule('cordLimit'),
    },
  ];
}

function restHeight({ id, restHeight: at }: Drop, { rules, units }: Shared): Finding[] {
  const { low, high } = rules.restHeight;
  if (at === undefined || (at >= low && at <= high)) return [];
  const length = (feet: number): string => printLength(feet, units);
  const tooLow = at < low;
  return [
    {
      severity: tooLow ? 'fail' : 'warn',
      rule: 'rest-height',
      about: [id],
      says: `The stowed connector of ${id} rests at ${length(at)}, ${length(tooLow ? low - at : at - high)} ${tooLow ? 'lower' : 'higher'} than the ${length(tooLow ? low : high)} allowed.`,
      value: at,
      limit: tooLow ? low : high,
      unit: 'ft',
      source: tooLow
        ? siteRule('restHeight.low')
        : `reach range of 48 in, 2010 ADA Standards 308; ${siteRule('restHeight.high')}`,
    },
  ];
}

/** A pedestal stands on the ground: one whose box is higher than a hand reaches is none. */
function pedestalHeight({ id, box, mount }: Drop, { rules, units }: Shared): Finding[] {
  const limit = rules.pedestalHeight;
  if ((mount !== 'pedestal' && mount !== 'wall') || box[2] <= limit) return [];
  const length = (feet: number): string => printLength(feet, units);
  const high = `at ${length(box[2])}, ${length(box[2] - limit)} over the ${length(limit)} allowed`;
  return [
    {
      severity: mount === 'pedestal' ? 'fail' : 'warn',
      rule: 'pedestal-height',
      about: [id],
      says:
        mount === 'pedestal'
          ? `The box of pedestal ${id} is ${high}: a pedestal stands on the ground. Bring the box down, or mount it overhead.`
          : `The wall box of ${id} is ${high}.`,
      value: box[2],
      limit,
      unit: 'ft',
      source: `reach range of 48 in, 2010 ADA Standards 308; ${siteRule('pedestalHeight')}`,
    },
  ];
}

function overVehicle(drop: Drop, field: CordField, { units }: Shared): Finding[] {
  const what = drop.retractor ? 'retractor' : 'box';
  const [x, y, z] = drop.retractor ?? drop.box;
  const under = vehicleUnder(field, [x, y]);
  if (!under) return [];
  const { stall, vehicle } = under;
  const above = z - vehicle.height;
  const gap =
    above >= 0
      ? `${printLength(above, units)} above its roof`
      : `${printLength(-above, units)} below the height of its roof`;
  return [
    {
      severity: above >= 0 ? 'warn' : 'fail',
      rule: 'over-vehicle',
      about: [drop.id, stall.id],
      says: `The ${what} of ${drop.id} hangs right over the vehicle in ${stall.id}, ${gap}. Its cord would rub over that roof to reach an inlet: move the drop to the stripe beside the stall.`,
      value: above,
      limit: 0,
      unit: 'ft',
      source: 'common practice, no source',
    },
  ];
}

function inKeepout(drop: Drop, shared: Shared): Finding[] {
  const points: [string, Point3][] = [['box', drop.box]];
  if (drop.retractor) points.push(['retractor', drop.retractor]);
  return points.flatMap(([what, at]) => {
    const hit = shared.dropKeepouts.find((keepout) => holdsPoint(keepout, at));
    if (!hit) return [];
    return [
      {
        severity: 'fail',
        rule: 'keepout-crossed',
        about: [drop.id, hit.id],
        says: `The ${what} of ${drop.id} stands in keep-out ${hit.id}, which blocks drops.`,
        source: 'keep-out of the site that blocks drops',
      } satisfies Finding,
    ];
  });
}
