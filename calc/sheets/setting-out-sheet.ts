import { printLength } from '../../routing/site/feet-inches.ts';
import { fromGridline } from '../../routing/site/from-gridlines.ts';
import { setOutPlace } from '../../routing/site/grid-frame.ts';
import type { Gridline, Point3, Site } from '../../routing/site/site.ts';
import { fromFeet } from '../../routing/site/units.ts';
import { CAUTIONS } from '../cautions.ts';
import type { Cell } from './csv.ts';

/**
 * Where the field sets each box and retractor: from the nearest gridlines and above finished grade, in tape units, with
 * what was measured where the site has it, and room to write it in where it has not.
 */
export function settingOutSheet(site: Site): readonly (readonly Cell[])[] {
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
    'as built x',
    'as built y',
    'as built z',
    'off by',
    'checked on',
    'note',
  ];
  const rows = site.drops.flatMap((drop) => {
    const built = site.asBuilt.get(drop.id);
    const parts: readonly (readonly ['box' | 'retractor', Point3 | undefined])[] = [
      ['box', drop.box],
      ['retractor', drop.retractor],
    ];
    return parts.flatMap(([part, at]) => {
      if (!at) return [];
      const measured = built?.[part];
      const [x, y] = setOutPlace(site.gridlines, [at[0], at[1]]);
      return [
        [
          drop.id,
          part,
          ...along(site, site.gridlines.x, x),
          ...along(site, site.gridlines.y, y),
          printLength(at[2], site.units),
          number(site, at[2]),
          ...(measured ?? [null, null, null]).map(
            (value): Cell => (value === null ? null : printLength(value, site.units)),
          ),
          measured
            ? printLength(Math.hypot(at[0] - measured[0], at[1] - measured[1], at[2] - measured[2]), site.units)
            : null,
          built?.checkedOn ?? null,
          built?.note ?? null,
        ],
      ];
    });
  });
  return [head, ...rows, [], [CAUTIONS]];
}

/** A length as a number, in the file's units, for what is to be worked with. */
const number = ({ units }: Site, feet: number): number => Number(fromFeet(feet, units).toFixed(4)) + 0;

/** Label and offset from the nearest gridline, or from the origin where there is none; the offset as a number too. */
function along(site: Site, lines: readonly Gridline[], value: number): [Cell, Cell, Cell] {
  const { label, offset } = fromGridline(lines, value) ?? { label: 'origin', offset: value };
  return [label, printLength(offset, site.units), number(site, offset)];
}
