import { printLength } from '../../../routing/site/numbers/feet-inches.ts';
import { fromFeet } from '../../../routing/site/numbers/units.ts';
import { settingOutLine, type TapeAxis, tapedFrom } from '../../../routing/site/place/taped-place.ts';
import type { Point3, Site } from '../../../routing/site/site.ts';
import { asBuiltOf } from '../../plan/as-built.ts';
import type { Margins } from '../../plan/margins.ts';
import type { Plan } from '../../plan/plan-shape.ts';
import { CAUTIONS } from '../../words/cautions.ts';
import type { Cell } from '../csv.ts';
import { POINT_HEADS, pointRows, TAPE_HEADS, tapeRows } from './set-out-rows.ts';

/**
 * Where the field sets each box and retractor: from the nearest gridlines and above finished grade, in tape units, with
 * what was measured from the same lines where the site has it, and room to write it in where it has not. Under that every
 * point that is set out as the tape reads it, with what closes, and the running dimensions along each row.
 */
export function settingOutSheet(site: Site, plan: Plan): readonly (readonly Cell[])[] {
  const head = [
    'drop',
    'part',
    'from gridline',
    'offset x',
    `offset x (${site.units})`,
    'from gridline',
    'offset y',
    `offset y (${site.units})`,
    'above grade',
    `above grade (${site.units})`,
    'as built offset x',
    'as built offset y',
    'as built above grade',
    'off by',
    'cord spare as drawn',
    'cord spare as built',
    'checked on',
    'checked by',
    'note',
  ];
  const compared = asBuiltOf(plan, site).drops;
  const rows = site.drops.flatMap((drop) => {
    const built = site.asBuilt.get(drop.id);
    const chargers = compared.get(drop.id)?.chargers ?? [];
    const spare = [
      least(
        chargers.map(({ drawn }) => drawn),
        site,
      ),
      least(
        chargers.map((charger) => charger.built),
        site,
      ),
    ];
    const parts: readonly (readonly ['box' | 'retractor', Point3 | undefined])[] = [
      ['box', drop.box],
      ['retractor', drop.retractor],
    ];
    return parts.flatMap(([part, at]) => {
      if (!at) return [];
      return [
        [
          drop.id,
          part,
          ...along(site, at, 'x'),
          ...along(site, at, 'y'),
          printLength(at[2], site.units),
          number(site, at[2]),
          ...measuredWords(site, at, built?.[part]),
          ...spare,
          built?.checkedOn ?? null,
          built?.checkedBy ?? null,
          built?.note ?? null,
        ],
      ];
    });
  });
  return [
    head,
    ...rows,
    [],
    ['every point by the tape'],
    POINT_HEADS.map((each) => each.toLowerCase()),
    ...pointRows(site, plan).map((cells) => cells.map((cell) => cell || null)),
    [],
    ['running dimensions, one tape a row'],
    TAPE_HEADS.map((each) => each.toLowerCase()),
    ...tapeRows(site, plan),
    [],
    [CAUTIONS],
  ];
}

/** A length as a number, in the file's units, for what is to be worked with. */
const number = ({ units }: Site, feet: number): number => Number(fromFeet(feet, units).toFixed(4)) + 0;

/** A worked-out length is told to the inch or the centimeter. */
const INCH = { inchParts: 1, decimals: 2 } as const;

/** What the tape read from the lines that a place is set out from, and how far that is from the drawing. */
function measuredWords({ gridlines, units }: Site, at: Point3, found: Point3 | undefined): readonly Cell[] {
  if (!found) return [null, null, null, null];
  const from = (axis: TapeAxis): string =>
    printLength(tapedFrom(gridlines, found, axis, settingOutLine(gridlines, at, axis)), units);
  const away = Math.hypot(at[0] - found[0], at[1] - found[1], at[2] - found[2]);
  return [from('x'), from('y'), printLength(found[2], units), printLength(away, units)];
}

/** The least cord that the chargers of a drop have to spare; less than nothing where it is short. */
function least(margins: readonly Margins[], { units }: Site): Cell {
  const left = margins.flatMap(({ cord }) => (cord ? [cord.left] : []));
  const worst = Math.min(...left);
  return Number.isFinite(worst) ? printLength(worst, units, INCH) : null;
}

/** Label and offset from the gridline that it is set out from, or from the origin where there is none, also as a number. */
function along(site: Site, at: Point3, axis: TapeAxis): [Cell, Cell, Cell] {
  const line = settingOutLine(site.gridlines, at, axis);
  const offset = tapedFrom(site.gridlines, at, axis, line);
  return [line?.label ?? 'origin', printLength(offset, site.units), number(site, offset)];
}
