import { printLength } from '../../../../routing/site/numbers/feet-inches.ts';
import type { Made } from '../../../plan-file/hung.ts';
import { type MemberLoad, steelLoads } from '../../../steel/steel-loads.ts';
import { MADE_OF, STATICS_ONLY } from '../../site-work/steel-loads-sheet.ts';
import type { Job } from '../kit/draft.ts';
import type { Table } from '../kit/tables/table.ts';
import { figure, lengthWords, NONE } from './figures.ts';

/** The loads on the structure, for the engineer who checks it; none where no member carries anything. */
export function steelTables(job: Job): readonly Table[] {
  const loads = steelLoads(job.site, job.plan);
  return loads.length === 0 ? [] : [reactionTable(job, loads), loadTable(job, loads)];
}

const FOOT = [
  STATICS_ONLY,
  'Weights are nominal for raceways and conductors and the heavier of the usual for all else: take those of the submittals in their place.',
];

const reactionTable = ({ site, plan }: Job, loads: readonly MemberLoad[]): Table => ({
  short: 'loads on the structure',
  title: 'Loads on the structure, by member',
  columns: [
    { head: 'Member' },
    { head: 'Length', align: 'right' },
    { head: 'Points', align: 'right' },
    { head: 'Lines', align: 'right' },
    { head: 'Total lb', align: 'right' },
    { head: 'Rests on, lb', most: 34 },
    { head: 'Moment lb ft', align: 'right' },
    { head: 'At', align: 'right' },
    { head: 'Trapezes full lb', align: 'right' },
  ],
  rows: loads.map(({ member, pounds, statics, loads: own, whenFilled }) => [
    member.id,
    printLength(Math.hypot(...member.to.map((part, i) => part - member.from[i]!)), site.units),
    String(own.filter(({ to }) => to === null).length),
    String(own.filter(({ to }) => to !== null).length),
    figure(pounds, 1),
    statics.rests
      .map(({ at, on, pounds: own }) => `${on ?? 'end'} at ${lengthWords(at, site.units)}: ${figure(own, 1)}`)
      .join('; '),
    figure(statics.moment, 0),
    lengthWords(statics.at, site.units),
    whenFilled > 0 ? `+${figure(whenFilled, 1)}` : NONE,
  ]),
  foot: [
    ...FOOT,
    'Rests are the columns and members drawn under it, its ends where none is. Upward pull is told as less than 0.',
    'Trapezes full: what the member would carry more if each trapeze on it were filled with conduits like its largest, each with all the copper it takes.',
    ...(plan.loose.length === 0
      ? []
      : [
          `Not held by any member drawn: ${figure(
            plan.loose.reduce((sum, { pounds }) => sum + pounds, 0),
            1,
          )} lb.`,
        ]),
  ],
});

const loadTable = ({ site }: Job, loads: readonly MemberLoad[]): Table => ({
  short: 'loads on the structure',
  title: 'Loads on the structure, each point and line',
  columns: [
    { head: 'Member' },
    { head: 'From', align: 'right' },
    { head: 'To', align: 'right' },
    { head: 'lb', align: 'right' },
    { head: 'lb/ft', align: 'right' },
    { head: 'Sideways lb', align: 'right' },
    { head: 'Made of, lb', most: 34 },
    { head: 'Of', most: 28 },
  ],
  rows: loads.flatMap(({ member, loads: own }) =>
    own.map(({ from, to, pounds, poundsPerFoot, made, sideways, of }) => [
      member.id,
      lengthWords(from, site.units),
      lengthWords(to, site.units),
      figure(pounds, 1),
      figure(poundsPerFoot, 2),
      sideways > 0 ? figure(sideways, 1) : NONE,
      madeInWords(made),
      of.join(', '),
    ]),
  ),
  foot: [
    'From and to are along the member from its first end. Pull: what a cord carried to its inlet pulls down beyond its weight.',
  ],
});

const madeInWords = (made: Made): string =>
  MADE_OF.flatMap((what) => (made[what] === undefined ? [] : [`${what} ${figure(made[what], 1)}`])).join(', ');
