import { type AccessibleStall, accessibleTable } from '../../../routing/checks/access/accessible-stalls.ts';
import { ACCESS_STANDARDS, ACCESSIBLE_WORDS } from '../../../routing/checks/access/standards.ts';
import { fromFeet } from '../../../routing/site/numbers/units.ts';
import type { Site } from '../../../routing/site/site.ts';
import { CAUTIONS } from '../../words/cautions.ts';
import type { Cell } from '../csv.ts';

/** What is said of accessible stalls wherever they are listed. */
export const ACCESSIBLE_NOTE =
  'Which standard applies, routes, slopes, signs and markings are for the designer and the authority having jurisdiction; nothing here says that anything complies.';

/**
 * Accessible charging stalls, asked and given: a row for each count of each standard, then one for each accessible stall
 * with a charger and its sizes; null where no stall has a charger.
 */
export function accessibleSheet(site: Site): readonly (readonly Cell[])[] | null {
  const { counts, stalls } = tableOf(site);
  if (counts.every(({ of }) => of === 0)) return null;
  const { units } = site;
  const length = (feet: number): Cell => (feet === 0 ? null : Number(fromFeet(feet, units).toFixed(3)));
  const head = ['what', 'by', 'use', 'asked', 'given', 'short', 'source'];
  const sizes = ['width', 'length', 'access aisle'] as const;
  return [
    head,
    ...counts.map(({ standard, use, of, asked, given, source }): Cell[] => [
      `stalls, of ${of} ${ACCESS_STANDARDS[standard].counts === 'stalls' ? 'with a charger' : 'vehicles at once'}`,
      `${ACCESS_STANDARDS[standard].name}${standard === site.rules.accessibleBy ? ', chosen' : ''}`,
      ACCESSIBLE_WORDS[use],
      asked,
      given,
      Math.max(0, asked - given),
      source,
    ]),
    ...stalls.flatMap((one) =>
      sizesOf(one).map(([given, asked], i): Cell[] => [
        `${sizes[i]!} of ${one.stall.id} (${units})`,
        null,
        ACCESSIBLE_WORDS[one.use],
        length(asked),
        length(given),
        asked > given + 0.02 ? length(asked - given) : null,
        one.source,
      ]),
    ),
    [],
    [ACCESSIBLE_NOTE],
    [CAUTIONS],
  ];
}

/** The table of a site, by the standard that it chooses. */
export const tableOf = ({ stalls, aisles, chargers, rules }: Site) =>
  accessibleTable(stalls, aisles, chargers, rules.accessibleBy);

/** Width, length and access aisle of a stall, each given and asked, feet. */
export const sizesOf = ({
  stall,
  aisle,
  asked,
}: AccessibleStall): readonly (readonly [given: number, asked: number])[] => [
  [stall.width, asked.width],
  [stall.depth, asked.depth],
  [aisle, asked.aisle],
];
