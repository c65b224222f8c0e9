import { accessibleTable } from '../../../routing/checks/access/accessible-stalls.ts';
import { planWords } from '../../../routing/site/place/gridline-words.ts';
import { workingSpaceSize } from '../../../routing/site/place/working-space.ts';
import type { Column, Equipment, Pullpoint, Site } from '../../../routing/site/site.ts';
import { designOf } from '../../branches/design.ts';
import type { UncountedPlan } from '../../plan/plan-shape.ts';
import { leastWorkingSpace } from '../../tables/equipment-of.ts';
import { type AskedLine, checked } from './asked.ts';
import { stepsOf } from './circuit-lines.ts';
import { sizeName } from './size-name.ts';

/** What is looked at of equipment and feeders: where it stands, the room before it, ratings, and the steps of its work. */
export const equipmentChecklist = (site: Site, plan: UncountedPlan): readonly AskedLine[] => [
  ...site.equipment.filter(({ existing }) => existing !== true).flatMap((equipment) => linesOf(site, plan, equipment)),
  ...feederLines(site, plan),
];

function linesOf(site: Site, plan: UncountedPlan, equipment: Equipment): readonly AskedLine[] {
  const { id, kind, at, mainAmps, interruptingAmps } = equipment;
  const own = { of: id, list: 'equipment', where: planWords(at, site.gridlines, site.units) } as const;
  if (kind === 'source') return [];
  const space = workingSpaceSize(equipment, leastWorkingSpace(designOf(site.rules).tables));
  const fault = plan.supply.equipment.find((each) => each.id === id)?.faultAmps;
  return [
    ...stepsOf(own, ['set']),
    placeLine(own, [at[0], at[1], 0], site),
    ...(space === null
      ? []
      : (['depth', 'width', 'height'] as const).map(
          (side): AskedLine => ({
            ...own,
            what: `Working space, ${side}`,
            rule: 'working-space',
            expected: { kind: 'length', least: space[side] },
            mark: checked(`working ${side}`),
          }),
        )),
    ...(mainAmps === undefined
      ? []
      : [
          {
            ...own,
            what: 'Main',
            rule: 'main-overload',
            expected: { kind: 'number', least: mainAmps, most: mainAmps, unit: 'A' },
            mark: checked('main'),
          } as const,
        ]),
    ...(fault === undefined
      ? []
      : [
          {
            ...own,
            what: 'Interrupting rating, as marked',
            rule: 'interrupting-rating',
            expected: {
              kind: 'number',
              least: Math.ceil(fault),
              ...(interruptingAmps !== undefined && { drawn: interruptingAmps }),
              unit: 'A',
            },
            mark: checked('interrupting rating'),
          } as const,
        ]),
    ...stepsOf(own, ['terminated', 'tested']),
  ];
}

const placeLine = (
  own: Pick<AskedLine, 'of' | 'list' | 'where'>,
  at: readonly [number, number, number],
  { rules }: Site,
): AskedLine => ({
  ...own,
  what: 'Place',
  rule: 'as-built',
  expected: { kind: 'place', at, within: rules.builtTolerance },
  mark: { what: 'place', part: 'at' },
});

/** Pull points and columns: where they stand. */
export function standingLines(site: Site): readonly AskedLine[] {
  const lines = (list: 'pullpoints' | 'columns', { id, at }: Pullpoint | Column): readonly AskedLine[] => {
    const own = { of: id, list, where: planWords([at[0], at[1]], site.gridlines, site.units) } as const;
    return [...stepsOf(own, ['set']), placeLine(own, [at[0], at[1], at[2] ?? 0], site)];
  };
  return [
    ...site.pullpoints.flatMap((each) => lines('pullpoints', each)),
    ...site.columns.flatMap((each) => lines('columns', each)),
  ];
}

function feederLines(site: Site, plan: UncountedPlan): readonly AskedLine[] {
  const grounds = new Map(plan.supply.feeders.map((feeder) => [feeder.id, feeder]));
  return site.feeders
    .filter(({ existing }) => existing !== true)
    .flatMap(({ id, from, to, conductor, breakerAmps, device }) => {
      const own = { of: id, list: 'feeders', where: `${from} to ${to}` } as const;
      const { size, metal, sets, insulation } = conductor;
      const ground = grounds.get(id)?.ground;
      return [
        {
          ...own,
          what: 'Conductors',
          rule: 'feeder-size',
          expected: {
            kind: 'seen',
            words: `${sets > 1 ? `${sets} sets of ` : ''}${sizeName(size)} ${metal} ${insulation}${ground ? `, ${ground.use} ${sizeName(ground.size)}` : ''}`,
          },
          mark: checked('conductors'),
        } as const,
        ...(device === 'none'
          ? []
          : [
              {
                ...own,
                what: 'Overcurrent device',
                rule: 'feeder-conductor',
                expected: { kind: 'number', least: breakerAmps, most: breakerAmps, unit: 'A' },
                mark: checked('device'),
              } as const,
            ]),
        ...stepsOf(own, ['pulled', 'terminated', 'tested']),
      ];
    });
}

/** Accessible stalls with a charger: their width and that of the aisle beside them. */
export const stallLines = (site: Site): readonly AskedLine[] =>
  accessibleTable(site.stalls, site.aisles, site.chargers, site.rules.accessibleBy).stalls.flatMap(
    ({ stall, asked, aisle }): AskedLine[] => {
      const own = {
        of: stall.id,
        list: 'stalls',
        where: planWords(stall.at, site.gridlines, site.units),
        rule: 'accessible-size',
      } as const;
      return [
        ...(asked.width > 0
          ? [
              {
                ...own,
                what: 'Width of the accessible stall',
                expected: { kind: 'length', least: asked.width, drawn: stall.width },
                mark: checked('stall width'),
              } as const,
            ]
          : []),
        ...(asked.aisle > 0
          ? [
              {
                ...own,
                what: 'Width of the access aisle beside it',
                expected: { kind: 'length', least: asked.aisle, drawn: aisle },
                mark: checked('access aisle'),
              } as const,
            ]
          : []),
      ];
    },
  );
