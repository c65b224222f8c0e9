import { printLength } from '../../../../routing/site/numbers/feet-inches.ts';
import { settingOutLine, type TapeAxis, tapedFrom } from '../../../../routing/site/place/taped-place.ts';
import type { AsBuilt, Point3, Site } from '../../../../routing/site/site.ts';
import type { PlannedBox } from '../../../plan-file/branches.ts';
import { tablesOf } from '../../../tables/editions.ts';
import { citedShort } from '../../../tables/sections.ts';
import type { Job } from '../kit/draft.ts';
import type { Table } from '../kit/tables/table.ts';
import { fromGridlineWords, NONE } from './figures.ts';

/** A length for the example of how a place is given, feet. */
const EXAMPLE = 4.5;
const HANDHOLE = 'handhole, its conduits';
/** Two points of one plan place, feet. */
const SAME = 0.005;

/** A row for each drop (two where its retractor does not hang under its box), junction, pull point and entry. */
export function settingOutSchedule({ site, plan }: Pick<Job, 'site' | 'plan'>): Table {
  const boxes = new Map(plan.boxes.map((box) => [box.id, box]));
  const handholes = new Map(plan.handholes.map(({ id, size, rating }) => [id, `${size}, ${rating}`]));
  const pulls = new Set(site.pullpoints.map(({ id }) => id));
  const { units } = site;
  const tables = tablesOf(site.rules);
  return {
    short: 'setting-out',
    title: 'Setting-out schedule',
    lead: [
      site.gridlines.x.length + site.gridlines.y.length === 0
        ? 'The site has no gridlines: x and y are from the origin of the drawing.'
        : `2 + ${printLength(EXAMPLE, units)}: that far past gridline 2, to the right on the sheet in x, up on the sheet in y; −: before it.`,
    ],
    columns: [
      { head: 'Mark' },
      { head: 'Part', most: 14 },
      { head: 'x', align: 'right' },
      { head: 'y', align: 'right' },
      { head: 'Above grade', align: 'right' },
      { head: 'Retractor above grade', align: 'right' },
      { head: 'Least box', most: 16 },
      { head: 'As built x', align: 'right', least: 6 },
      { head: 'As built y', align: 'right', least: 6 },
      { head: 'As built z', align: 'right', least: 5 },
      { head: 'Checked', least: 5, most: 10 },
    ],
    rows: [
      ...site.drops.flatMap(({ id, box, retractor }) => {
        const built = site.asBuilt.get(id);
        const least = boxWords(boxes.get(id));
        const isUnder = retractor !== undefined && Math.hypot(retractor[0] - box[0], retractor[1] - box[1]) < SAME;
        if (isUnder && built?.retractor === undefined)
          return [
            [
              id,
              'box, retractor',
              ...placeWords(site, box),
              printLength(retractor[2], units),
              least,
              ...builtWords(site, built?.box, box, built),
            ],
          ];
        const boxRow = [id, 'box', ...placeWords(site, box), NONE, least, ...builtWords(site, built?.box, box, built)];
        if (retractor === undefined) return [boxRow];
        const [x, y, z] = placeWords(site, retractor);
        return [
          boxRow,
          [id, 'retractor', x, y, NONE, z, NONE, ...builtWords(site, built?.retractor, retractor, built)],
        ];
      }),
      ...site.pullpoints.map(({ id, at }) =>
        otherRow(
          site,
          id,
          handholes.has(id) ? HANDHOLE : 'pull point',
          at,
          handholes.get(id) ?? boxWords(boxes.get(id)),
        ),
      ),
      ...plan.boxes
        .filter(({ id, kind }) => kind === 'junction' || (kind === 'pullpoint' && !pulls.has(id)))
        .map((box) =>
          otherRow(
            site,
            box.id,
            handholes.has(box.id) ? HANDHOLE : box.kind === 'junction' ? 'junction box' : 'pull point',
            box.at,
            handholes.get(box.id) ?? boxWords(box),
          ),
        ),
      ...site.equipment.map(({ id, kind, entry }) => otherRow(site, id, `${kind}, entry`, entry, NONE)),
    ],
    foot: [
      `Least box: ${citedShort(tables, 'boxVolume')} by volume up to 6 AWG, ${tables.sections.pullBox} by length from 4 AWG on and in the ground (${tables.sections.handholeSize}), where the cover of a handhole is at grade. As built: to be written in by the field.`,
    ],
  };
}

const otherRow = (site: Site, id: string, part: string, at: Point3, least: string): string[] => [
  id,
  part,
  ...placeWords(site, at),
  NONE,
  least,
  ...builtWords(site, undefined, at, undefined),
];

/** What the tape read, from the lines that the place is set out from, and who read it. */
function builtWords(site: Site, at: Point3 | undefined, drawn: Point3, found: AsBuilt | undefined): readonly string[] {
  const checked = [found?.checkedOn, found?.checkedBy].filter(Boolean).join(' ');
  if (at === undefined) return ['', '', '', checked];
  const along = (axis: TapeAxis): string => {
    const line = settingOutLine(site.gridlines, drawn, axis);
    const offset = tapedFrom(site.gridlines, at, axis, line);
    return fromGridlineWords(line ? [{ label: line.label, at: 0 }] : [], offset, site.units);
  };
  return [along('x'), along('y'), printLength(at[2], site.units), checked];
}

const placeWords = (site: Site, [x, y, z]: Point3): [string, string, string] => [
  fromGridlineWords(site.gridlines.x, x, site.units),
  fromGridlineWords(site.gridlines.y, y, site.units),
  printLength(z, site.units),
];

function boxWords(box: PlannedBox | undefined): string {
  if (box === undefined) return NONE;
  if (box.length !== null) return `${Number(box.length.toFixed(1))}" long`;
  if (box.box !== null) return box.box;
  return box.volume === null ? NONE : `${Number(box.volume.toFixed(1))} cu in`;
}
