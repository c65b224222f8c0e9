import { fromFeet } from '../../../routing/site/numbers/units.ts';
import type { Units } from '../../../routing/site/schema/vocabulary.ts';
import { FIGURE_NAMES, FIGURES, type FigureFact, type WayFigures } from '../../study/figures.ts';
import type { Study } from '../../study/shape.ts';
import { CAUTIONS } from '../../words/cautions.ts';
import { steady } from '../../words/steady.ts';
import type { Cell } from '../csv.ts';

/** A figure in the units of the file, to what is worth reading. */
function cellOf(fact: FigureFact, value: number | null, units: Units): Cell {
  if (value === null || !Number.isFinite(value)) return null;
  const own = fact.unit === 'ft' ? fromFeet(value, units) : value;
  return Number(steady(own).toFixed(2));
}

const headOf = ({ name, unit }: FigureFact, units: Units): string =>
  unit === 'dollars' ? `${name} ($)` : `${name} (${unit === 'ft' ? units : unit})`;

/** The figures of a way as cells, in the order of the head. */
export const figureCells = (figures: WayFigures, units: Units): readonly Cell[] =>
  FIGURE_NAMES.map((name) => cellOf(FIGURES[name], figures[name], units));

/** The ways of a study side by side, a row for each; under them those that cannot be, and what was looked at. */
export function studySheet(study: Study, units: Units): readonly (readonly Cell[])[] {
  const head: Cell[] = [
    'way',
    'mount',
    'supply',
    'chargers (A)',
    'nothing beats it',
    ...FIGURE_NAMES.map((name) => headOf(FIGURES[name], units)),
    'what forces what fails',
    'what it asks for',
    'the same comes of',
  ];
  const rows = study.ways.map((way): Cell[] => [
    way.id,
    way.mount,
    way.supply,
    way.amps,
    study.unbeaten.has(way.id) ? 'yes' : null,
    ...figureCells(way.figures, units),
    way.forced.map(({ finding, by }) => `${finding.rule}: ${by}`).join('; ') || null,
    way.says.join(' ') || null,
    way.also.join('; ') || null,
  ]);
  const none = study.cannot.map(({ name, says }): Cell[] => ['cannot be', name, says]);
  return [head, ...rows, [], ...none, [], ...lookedWords(study).map((says): Cell[] => [says]), [CAUTIONS]];
}

/** What was looked at, what of it was left out and why, and what all of it assumes. */
export const lookedWords = ({ looked, ways, cannot, leftOut, assumes }: Study): readonly string[] => [
  `${looked} combinations of mount, supply and charger were looked at; ${ways.length} are drawn, ${cannot.length} cannot be.`,
  ...leftOut.map((says) => `Left out before they were drawn: ${says}`),
  ...assumes,
];

/** What each figure is, as a list beside the comparison. */
export const figureNotes = (): readonly (readonly Cell[])[] => [
  ['figure', 'unit', 'better', 'what it is'],
  ...FIGURE_NAMES.map((name): Cell[] => {
    const { name: words, unit, better, says } = FIGURES[name];
    return [words, unit, better, says || null];
  }),
];
