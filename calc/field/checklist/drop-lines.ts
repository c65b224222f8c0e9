import { aisleClearHeight } from '../../../routing/checks/drops/clear-height.ts';
import { insideOf } from '../../../routing/plane/obstacle.ts';
import { planWords } from '../../../routing/site/place/gridline-words.ts';
import type { Drop, Point2, Point3, Site } from '../../../routing/site/site.ts';
import { outlineOf, stallOutline, stallsIn } from '../../../routing/standing/outlines.ts';
import { type AskedLine, checked } from './asked.ts';

/** What is looked at of each drop: where it hangs, how high over what passes below, how long its cord is and where it rests. */
export const dropLines = (site: Site): readonly AskedLine[] => site.drops.flatMap((drop) => linesOf(site, drop));

function linesOf(site: Site, drop: Drop): readonly AskedLine[] {
  const { id, box, retractor, cord, restHeight, mount = 'overhead' } = drop;
  const { rules, gridlines, units } = site;
  const own = { of: id, list: 'drops' } as const;
  const parts: readonly (readonly ['box' | 'retractor', Point3])[] = [
    ['box', box],
    ...(retractor ? ([['retractor', retractor]] as const) : []),
  ];
  const where = planWords([box[0], box[1]], gridlines, units);
  const heights = parts.flatMap(([part, [x, y, z]]): AskedLine[] => {
    const least = mount === 'overhead' ? clearHeightOver(site, [x, y]) : null;
    if (least === null) return [];
    return [
      {
        ...own,
        what: `Clear under the ${part}`,
        where: planWords([x, y], gridlines, units),
        rule: 'clear-height',
        expected: { kind: 'length', least, drawn: z },
        mark: checked(`clear under ${part}`),
      },
    ];
  });
  return [
    { ...own, what: 'Set', where, rule: null, expected: { kind: 'step' }, mark: { what: 'set' } },
    ...parts.map(
      ([part, at]): AskedLine => ({
        ...own,
        what: `Place of the ${part}`,
        where: planWords([at[0], at[1]], gridlines, units),
        rule: 'as-built',
        expected: { kind: 'place', at, within: rules.builtTolerance },
        mark: { what: 'place', part },
      }),
    ),
    ...heights,
    {
      ...own,
      what: 'Length of the cord',
      where,
      rule: 'cord-limit',
      expected: { kind: 'length', most: rules.cordLimit, drawn: cord },
      mark: checked('cord'),
    },
    ...(restHeight === undefined
      ? []
      : [
          {
            ...own,
            what: 'Connector at rest, above grade',
            where,
            rule: 'rest-height',
            expected: { kind: 'length', least: rules.restHeight.low, most: rules.restHeight.high, drawn: restHeight },
            mark: checked('rest height'),
          } as const,
        ]),
  ];
}

/** The greatest clear height that the rules of a site keep over a place of its ground, feet; null over neither stall nor aisle. */
export function clearHeightOver({ aisles, stalls, rules }: Site, [x, y]: Point2): number | null {
  const heights = [
    ...aisles.filter((aisle) => insideOf(outlineOf(aisle), x, y)).map((aisle) => aisleClearHeight(aisle, rules)),
    ...stallsIn(stalls, { minX: x, minY: y, maxX: x, maxY: y })
      .filter((stall) => insideOf(stallOutline(stall), x, y))
      .map(({ use }) => (use === 'van-accessible' ? rules.clearHeight.van : rules.clearHeight.stall)),
  ];
  return heights.length === 0 ? null : Math.max(...heights);
}
