import { distance } from '../../routing/plane/space.ts';
import { cordStart } from '../../routing/reach/cords/cord-start.ts';
import { byId } from '../../routing/site/look-up.ts';
import { siteRule } from '../../routing/site/rules/rule-notes.ts';
import type { Site } from '../../routing/site/site.ts';
import { branchDropSource } from '../circuits/branch-size.ts';
import { type MarginKind, marginsOf } from '../plan/margins.ts';
import type { UncountedPlan } from '../plan/plan-shape.ts';
import type { Step } from '../words/explain.ts';
import { measured } from '../words/measured.ts';

/**
 * How a margin of a charger was found: of its cord, what is available and what the worst case needs; of its branch, the
 * conductor length; of its volts, what is left of the limit. Empty where the plan has no such margin.
 */
export function whyMargin(site: Site, plan: UncountedPlan, charger: string, kind: MarginKind): readonly Step[] {
  const margin = marginsOf(plan, site).get(charger)?.[kind];
  if (margin === undefined || margin === null) return [];
  if (kind === 'cord') return cordSteps(site, plan, charger);
  const { left, used, limit } = margin;
  if (kind === 'volts') {
    const total = marginsOf(plan, site).get(charger)!.volts!.of === 'total';
    return [
      {
        find: total ? 'left of the voltage drop in all' : 'left of the voltage drop of the branch',
        formula: `limit - ${total ? 'worst drop from nominal to the box' : 'drop of the branch'}; of the two limits the one that leaves less`,
        values: { limit: measured(limit, '%'), drop: measured(used, '%') },
        result: left,
        unit: '%',
        source: total ? siteRule('dropLimit.total') : branchDropSource(byId(site.chargers).get(charger) ?? {}),
      },
    ];
  }
  const { length } = plan.runs.find((run) => run.charger === charger)!;
  const { equipment, box } = site.rules.allowance;
  return [
    {
      find: 'conductor length',
      formula: 'run + allowance at the equipment + allowance at the box',
      values: {
        run: measured(length ?? 0, 'ft'),
        'at the equipment': measured(equipment, 'ft'),
        'at the box': measured(box, 'ft'),
      },
      result: used,
      unit: 'ft',
      source: `shortest path along the raceways; ${siteRule('allowance.equipment')}, ${siteRule('allowance.box')}`,
    },
    {
      find: 'left of the branch',
      formula: 'limit - conductor length',
      values: { limit: measured(limit, 'ft'), 'conductor length': measured(used, 'ft') },
      result: left,
      unit: 'ft',
      source: 'longest branch of the charger, else of the site',
    },
  ];
}

function cordSteps(site: Site, plan: UncountedPlan, charger: string): readonly Step[] {
  const cord = marginsOf(plan, site).get(charger)!.cord!;
  const { worst } = plan.reach.find((reach) => reach.charger === charger && reach.stall === cord.stall)!;
  const dropId = site.chargers.find(({ id }) => id === charger)!.drop;
  const drop = site.drops.find(({ id }) => id === dropId)!;
  const start = cordStart(drop, site.rules);
  const { needed, available, margin, inletAt, path, direction, inlet } = worst;
  const plain = path.slice(1).reduce((sum, [x, y], i) => sum + Math.hypot(x - path[i]![0], y - path[i]![1]), 0);
  return [
    {
      find: 'cord available',
      formula: 'cord - box to retractor - slack kept back',
      values: {
        cord: measured(drop.cord, 'ft'),
        'box to retractor': measured(drop.retractor ? distance(drop.box, drop.retractor) : 0, 'ft'),
        slack: measured(site.rules.cordSlack, 'ft'),
      },
      result: available,
      unit: 'ft',
      source: siteRule('cordSlack'),
    },
    {
      find: 'cord needed in the worst case',
      formula: start.onGround
        ? 'down the pedestal + plan length on the ground, round every vehicle and column + up to the inlet'
        : 'sqrt(plan length² + difference of height²), the plan length round every vehicle and column',
      values: {
        case: `stall ${cord.stall}, ${direction}, inlet ${inlet}`,
        ...(needed === null ? {} : { 'plan length': measured(plain, 'ft') }),
        ...(start.onGround
          ? { 'down the pedestal': measured(start.from[2], 'ft'), 'up to the inlet': measured(inletAt[2], 'ft') }
          : { 'difference of height': measured(start.from[2] - inletAt[2], 'ft') }),
      },
      result: needed ?? 'no way leads there',
      ...(needed === null ? {} : { unit: 'ft' }),
      source: start.onGround
        ? 'shortest path in the plane round obstacles, on the ground from the foot of the pedestal'
        : 'shortest path in the plane round obstacles; the taut cord is a lower bound on comfort',
    },
    ...(margin === null
      ? []
      : [
          {
            find: 'left of the cord',
            formula: 'available - needed',
            values: { available: measured(available, 'ft'), needed: measured(needed!, 'ft') },
            result: margin,
            unit: 'ft',
            source: 'definition',
          },
        ]),
  ];
}
