import { kept } from '../../../routing/kept/kept.ts';
import { addTo } from '../../../routing/lists/grouping.ts';
import { insideOf, obstacleOf } from '../../../routing/plane/obstacle.ts';
import { rectangleAt } from '../../../routing/plane/rectangle.ts';
import { printLength } from '../../../routing/site/numbers/feet-inches.ts';
import type { Finding } from '../../../routing/site/rules/finding.ts';
import type { Units } from '../../../routing/site/schema/vocabulary.ts';
import type { Column, Drop, Equipment, Point2 } from '../../../routing/site/site.ts';
import { footprintOf } from '../../../routing/standing/footprint.ts';
import type { Handhole } from '../../plan-file/branches.ts';
import type { CodeTables } from '../../tables/code-tables.ts';
import { citedShort } from '../../tables/sections.ts';

/** Conductors deeper than this are out of reach from the cover of a handhole, feet. Common practice, no source. */
const DEEPEST = 4;

const sourceOf = (tables: CodeTables): string =>
  `${citedShort(tables, 'boxAccess', 'handholes')} (from memory): boxes reached without digging or taking up paving`;

/**
 * Boxes in the ground. One that stands under equipment or a column, or deeper than an arm reaches, cannot be reached as
 * the code asks; the others are told together, as what they are taken for.
 */
export const handholeFindings = kept(
  (
    handholes: readonly Handhole[],
    columns: readonly Column[],
    equipment: readonly Equipment[],
    drops: readonly Drop[],
    units: Units,
    tables: CodeTables,
  ): readonly Finding[] => {
    if (handholes.length === 0) return [];
    const source = sourceOf(tables);
    const over = [
      ...columns.map(({ id, at, size, rotation = 0 }) => ({ id, outline: rectangleAt(at, size, rotation) })),
      ...equipment.map((one) => ({ id: one.id, outline: footprintOf(one) })),
    ].map(({ id, outline }) => ({ id, outline: obstacleOf(outline as readonly Point2[]) }));
    const closed = handholes.flatMap(({ id, at }): Finding[] => {
      const [x, y, z] = at;
      const covered = over.find(({ outline }) => insideOf(outline, x, y));
      if (covered !== undefined)
        return [
          {
            severity: 'fail',
            rule: 'buried-box',
            about: [id, covered.id],
            says: `The box ${id} in the ground stands under ${covered.id} and cannot be reached. Move where its conduits part, or run them apart.`,
            source,
          },
        ];
      if (-z <= DEEPEST) return [];
      return [
        {
          severity: 'fail',
          rule: 'buried-box',
          about: [id],
          says: `The box ${id} lies ${printLength(-z, units)} below grade, deeper than is reached from a cover at grade. Bring its conduits up, or run them apart.`,
          value: -z,
          limit: DEEPEST,
          unit: 'ft',
          source: `${source}; common practice, no source for the depth`,
        },
      ];
    });
    const counts = new Map<string, number>();
    for (const { size, rating } of handholes)
      counts.set(`${size}, ${rating}`, (counts.get(`${size}, ${rating}`) ?? 0) + 1);
    const each = [...counts].sort().map(([what, count]) => `${count} of ${what}`);
    const under = underPedestals(handholes, drops);
    const aside =
      under.length === 0
        ? ''
        : ` ${under.length === 1 ? `${under[0]} lies under a pedestal: set it beside it` : `${under.length} lie under pedestals: set them beside`}, where the cover opens.`;
    const places = handholes.length === 1 ? 'one place' : `${handholes.length} places`;
    return [
      ...closed,
      {
        severity: under.length > 0 ? 'warn' : 'note',
        rule: 'buried-box',
        about: handholes.map(({ id }) => id),
        says: `Conduits are opened in the ground at ${places}. Each is taken as a handhole with its cover at grade: ${each.join('; ')}.${aside} Home runs that do not part in the ground need none.`,
        value: handholes.length,
        source,
      },
    ];
  },
);

/** A handhole nearer to the middle of a pedestal, feet, has it on its cover. Common practice, no source. */
const BASE = 0.5;

function underPedestals(handholes: readonly Handhole[], drops: readonly Drop[]): readonly string[] {
  // By the foot, for there may be many of both.
  const byFoot = new Map<string, Handhole[]>();
  const foot = (x: number, y: number): string => `${Math.floor(x)} ${Math.floor(y)}`;
  for (const one of handholes) {
    const key = foot(one.at[0], one.at[1]);
    addTo(byFoot, key, one);
  }
  const found = new Set<string>();
  for (const { mount, box } of drops) {
    if (mount !== 'pedestal') continue;
    for (const dx of [-BASE, BASE])
      for (const dy of [-BASE, BASE])
        for (const { id, at } of byFoot.get(foot(box[0] + dx, box[1] + dy)) ?? [])
          if (Math.hypot(at[0] - box[0], at[1] - box[1]) < BASE) found.add(id);
  }
  return [...found];
}
