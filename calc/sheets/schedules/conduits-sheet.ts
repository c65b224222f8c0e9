import { fromFeet } from '../../../routing/site/numbers/units.ts';
import type { Site } from '../../../routing/site/site.ts';
import type { Plan } from '../../plan/plan-shape.ts';
import { CAUTIONS } from '../../words/cautions.ts';
import type { Cell } from '../csv.ts';

/** A row for each conduit between two places where it can be opened: size, what lies in it, fill and bends. */
export function conduitsSheet(
  { units }: Pick<Site, 'units'>,
  { conduits }: Pick<Plan, 'conduits'>,
): readonly (readonly Cell[])[] {
  const head = [
    'conduit',
    'from',
    'to',
    'method',
    'trade size',
    `length (${units})`,
    'circuits',
    'conductors',
    'fill (%)',
    'fill limit (%)',
    'bends',
    'bends (degrees)',
    'raceways',
  ];
  const rows = conduits.map((conduit): Cell[] => [
    conduit.id,
    conduit.from,
    conduit.to,
    conduit.method,
    // Spelled out: a spreadsheet takes 1/2 for a day of the year.
    conduit.tradeSize === null ? null : `${conduit.tradeSize} in`,
    Number(fromFeet(conduit.length, units).toFixed(4)),
    conduit.circuits.join(' '),
    conduit.conductors.map(({ count, size, insulation, use }) => `${count} x ${size} ${insulation} ${use}`).join(', '),
    Number(conduit.fillPercent.toFixed(2)),
    conduit.fillLimit,
    conduit.bends,
    Number(conduit.bendDegrees.toFixed(1)),
    conduit.raceways.join(' '),
  ]);
  return [head, ...rows, [], [CAUTIONS]];
}
