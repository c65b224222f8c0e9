import { readFileSync } from 'node:fs';
import { readSite } from '../../../../routing/site/file/read.ts';
import { ELEMENT_LISTS } from '../../../../routing/site/kinds/kinds.ts';
import type { SiteFile } from '../../../../routing/site/site.ts';
import { applyEdit } from '../../../../web/document/change/edit.ts';
import { elementsOf } from '../../../../web/document/change/element-lists.ts';
import { rotate } from '../../../../web/document/edits/moving/move.ts';
import { makeLot } from '../../../bench/make-lot.ts';
import { SMALL } from '../../../web/document/small-site.ts';

function sample(name: string): SiteFile {
  const read = readSite(readFileSync(`samples/${name}.site.json`, 'utf8'));
  if (!read.ok) throw new RangeError('the sample is not read');
  return read.file;
}

/** All of a lot turned about a point, its gridlines with it unless they are left. */
function turned(file: SiteFile, by: number): SiteFile {
  const all = ELEMENT_LISTS.flatMap((list) => elementsOf(file, list).map(({ id }) => ({ list, id })));
  return applyEdit(file, rotate(file, all, [40, -7], by)) as SiteFile;
}

const library = sample('library-lot');

/** Lots of every shape that a set has to be lettered for, by what is told of each. */
export const TWELVE_LOTS: readonly (readonly [string, SiteFile])[] = [
  ['library-lot', library],
  ['library-pedestals', sample('library-pedestals')],
  ['fleet-yard, angled', sample('fleet-yard')],
  ['hospital-lot', sample('hospital-lot')],
  ['tiny', SMALL],
  ['ten stalls, one canopy', makeLot({ name: 'Ten', stalls: 10, perCanopy: 10 })],
  ['tall: eight short canopies one over another', makeLot({ name: 'Tall', stalls: 80, perCanopy: 10 })],
  ['long: one canopy of ninety', makeLot({ name: 'Long', stalls: 90, perCanopy: 90 })],
  ['600 stalls', makeLot({ name: 'Six hundred', stalls: 600, perCanopy: 50 })],
  ['turned by 33 degrees', turned(library, 33)],
  ['pedestals stood upright', turned({ ...sample('library-pedestals'), gridlines: { x: [], y: [] } }, 90)],
  [
    'long names',
    {
      ...library,
      stalls: (library.stalls ?? []).map((stall, i) => ({ ...stall, label: `Visitor stall ${i + 1}` })),
      gridlines: {
        ...library.gridlines,
        x: (library.gridlines?.x ?? []).map((line, i) => ({ ...line, label: `Column line ${i + 1}` })),
      },
    },
  ],
];
