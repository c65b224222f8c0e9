import { fromFeet } from '../../../routing/site/numbers/units.ts';
import type { Site } from '../../../routing/site/site.ts';
import type { Plan } from '../../plan/plan-shape.ts';
import type { Made, MadeOf } from '../../plan-file/hung.ts';
import { type ListedLoad, steelLoads } from '../../steel/steel-loads.ts';
import {
  BOX_WEIGHTS,
  CORD_WEIGHTS,
  FITTINGS,
  MODULE_WEIGHTS,
  RETRACTOR_WEIGHTS,
  TRAPEZE_PARTS,
} from '../../tables/weights/component-weights.ts';
import { CONDUCTOR_WEIGHTS } from '../../tables/weights/conductor-weights.ts';
import { RACEWAY_WEIGHTS } from '../../tables/weights/raceway-weights.ts';
import { CAUTIONS } from '../../words/cautions.ts';
import type { Cell } from '../csv.ts';

/** What loads are made of, in the order of the columns. */
export const MADE_OF: readonly MadeOf[] = [
  'conduit',
  'wire',
  'fittings',
  'trapeze',
  'box',
  'module',
  'retractor',
  'cord',
  'pull',
];

/** What is said of the loads wherever they are listed. */
export const STATICS_ONLY =
  'Statics only: each member as simple spans from rest to rest (columns and members drawn under it, its ends where none is) under what hangs from it, without its own weight; what other members bring to it is told as their reactions. Capacity is checked by others.';

/**
 * What each member carries: a row for the member with its largest moment, one for each place where it rests with its
 * reaction, then one for each point and line with what it is made of, in pounds; places are along the member from its first end. The weights' sources and the
 * cautions stand under the rows.
 */
export function steelLoadsSheet(site: Site, plan: Plan): readonly (readonly Cell[])[] {
  const { units } = site;
  const length = (feet: number): number => round(fromFeet(feet, units), 4);
  const head = [
    'member',
    'load',
    `from (${units})`,
    `to (${units})`,
    'pounds',
    'pounds per foot',
    ...MADE_OF.map((what) => `${what} (lb)`),
    'sideways (lb)',
    'toward (degrees from +x)',
    'of',
    'reaction (lb)',
    'largest moment (lb ft)',
    `moment at (${units})`,
    'more when trapezes are full (lb)',
  ];
  const rows = steelLoads(site, plan).flatMap(({ member, pounds, statics, loads, whenFilled }): Cell[][] => {
    const { rests, moment, at } = statics;
    const all: Cell[] = [
      member.id,
      'all',
      0,
      length(Math.hypot(...member.to.map((part, i) => part - member.from[i]!))),
      round(pounds, 2),
      null,
      ...madeCells(sumOf(loads)),
      null,
      null,
      null,
      null,
      round(moment, 1),
      length(at),
      round(whenFilled, 2),
    ];
    const resting = rests.map((rest): Cell[] => [
      member.id,
      'rests',
      length(rest.at),
      ...Array.from({ length: 5 + MADE_OF.length }, () => null),
      rest.on ?? 'end',
      round(rest.pounds, 2),
    ]);
    return [all, ...resting, ...loads.map((load) => loadRow(member.id, load, length))];
  });
  const loose = plan.loose.map(({ of, pounds }): Cell[] => [
    null,
    'hangs from nothing',
    null,
    null,
    round(pounds, 2),
    null,
    ...MADE_OF.map(() => null),
    null,
    of,
  ]);
  return [head, ...rows, ...loose, [], [STATICS_ONLY], ...sources(), [CAUTIONS]];
}

function loadRow(member: string, load: ListedLoad, length: (feet: number) => number): Cell[] {
  const { from, to, pounds, poundsPerFoot, made, sideways, heading, of } = load;
  return [
    member,
    to === null ? 'point' : 'line',
    length(from),
    to === null ? null : length(to),
    round(pounds, 2),
    poundsPerFoot === null ? null : round(poundsPerFoot, 4),
    ...madeCells(made),
    sideways > 0 ? round(sideways, 2) : null,
    heading === null ? null : round(heading, 1),
    of.join(' '),
  ];
}

const madeCells = (made: Made): Cell[] =>
  MADE_OF.map((what) => {
    const own = made[what];
    return own === undefined ? null : round(own, 3);
  });

function sumOf(loads: readonly ListedLoad[]): Made {
  const sum: Partial<Record<MadeOf, number>> = {};
  for (const { made } of loads)
    for (const what of MADE_OF) if (made[what] !== undefined) sum[what] = (sum[what] ?? 0) + made[what];
  return sum;
}

const sources = (): Cell[][] => [
  [`Raceways: ${RACEWAY_WEIGHTS.source}.`],
  [`Conductors: ${CONDUCTOR_WEIGHTS.source}.`],
  [`Fittings: ${100 * FITTINGS.share}% of the raceway; ${FITTINGS.source}.`],
  [`Trapezes: ${TRAPEZE_PARTS.source}.`],
  [
    `Boxes: ${BOX_WEIGHTS.source}. Charging modules: ${MODULE_WEIGHTS.source}. Retractors: ${RETRACTOR_WEIGHTS.source}. Cords: ${CORD_WEIGHTS.source}. The heavier figure of each range.`,
  ],
  ['Pull: what a cord carried to its farthest inlet pulls down beyond its own weight, no more than a person pulls.'],
];

const round = (value: number, decimals: number): number => Number(value.toFixed(decimals));
