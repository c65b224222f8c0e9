import { fromFeet } from '../../../routing/site/numbers/units.ts';
import type { Site } from '../../../routing/site/site.ts';
import type { Plan } from '../../plan/plan-shape.ts';
import { pullSchedule } from '../../takeoff/buying/pull-schedule.ts';
import { CAUTIONS } from '../../words/cautions.ts';
import type { Cell } from '../csv.ts';

/** A row for each pull, in the order in which a crew makes them: what, from where to where, through what, how long, from which reel. */
export function pullScheduleSheet(site: Site, plan: Plan): readonly (readonly Cell[])[] {
  const { units } = site;
  const head = [
    'pull',
    'circuit or feeder',
    'kind',
    'from',
    'to',
    'conduit',
    'conductors',
    'colors',
    `cut length (${units})`,
    'reel',
  ];
  const rows = pullSchedule(site, plan).map(
    ({ of, kind, from, to, through, conductors, colors, feet, reels }, n): Cell[] => [
      n + 1,
      of,
      kind,
      from,
      to,
      through.join(' '),
      conductors.join(' + '),
      colors.join(', '),
      Number(fromFeet(feet, units).toFixed(1)),
      reels.length > 0 ? reels.join(', ') : 'cut to length',
    ],
  );
  return [head, ...rows, [], [CAUTIONS]];
}
