import { printLength } from '../../../../routing/site/feet-inches.ts';
import type { Point3, Site } from '../../../../routing/site/site.ts';
import type { Box } from '../../../plan-shape.ts';
import type { Job } from '../draft.ts';
import type { Table } from '../table.ts';
import { fromGridlineWords, NONE } from './figures.ts';

/** A length for the example of how a place is given, feet. */
const EXAMPLE = 4.5;
/** Two points of one plan place, feet. */
const SAME = 0.005;

/** A row for each drop (two where its retractor does not hang under its box), junction, pull point and entry. */
export function settingOutSchedule({ site, plan }: Pick<Job, 'site' | 'plan'>): Table {
  const boxes = new Map(plan.boxes.map((box) => [box.id, box]));
  const { units } = site;
  return {
    short: 'setting-out',
    title: 'Setting-out schedule',
    lead: [
      site.gridlines.x.length + site.gridlines.y.length === 0
        ? 'The site has no gridlines: x and y are from the origin of the site file.'
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
              ...builtWords(site, built?.box),
            ],
          ];
        const boxRow = [id, 'box', ...placeWords(site, box), NONE, least, ...builtWords(site, built?.box)];
        if (retractor === undefined) return [boxRow];
        const [x, y, z] = placeWords(site, retractor);
        return [boxRow, [id, 'retractor', x, y, NONE, z, NONE, ...builtWords(site, built?.retractor)]];
      }),
      ...site.pullpoints.map(({ id, at }) => otherRow(site, id, 'pull point', at, boxWords(boxes.get(id)))),
      ...plan.boxes
        .filter(({ kind }) => kind === 'junction')
        .map((box) => otherRow(site, box.id, 'junction box', box.at, boxWords(box))),
      ...site.equipment.map(({ id, kind, entry }) => otherRow(site, id, `${kind}, entry`, entry, NONE)),
    ],
    foot: [
      'Least box: NEC 314.16 by volume up to 6 AWG, 314.28 by length from 4 AWG on. As built: to be written in by the field.',
    ],
  };
}

const otherRow = (site: Site, id: string, part: string, at: Point3, least: string): string[] => [
  id,
  part,
  ...placeWords(site, at),
  NONE,
  least,
  ...builtWords(site, undefined),
];

const builtWords = (site: Site, at: Point3 | undefined): readonly string[] =>
  at === undefined ? ['', '', ''] : placeWords(site, at);

const placeWords = (site: Site, [x, y, z]: Point3): [string, string, string] => [
  fromGridlineWords(site.gridlines.x, x, site.units),
  fromGridlineWords(site.gridlines.y, y, site.units),
  printLength(z, site.units),
];

function boxWords(box: Box | undefined): string {
  if (box === undefined) return NONE;
  if (box.length !== null) return `${Number(box.length.toFixed(1))}" long`;
  if (box.box !== null) return box.box;
  return box.volume === null ? NONE : `${Number(box.volume.toFixed(1))} cu in`;
}
