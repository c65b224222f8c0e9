import { planWords } from '../../../routing/site/place/gridline-words.ts';
import type { Site } from '../../../routing/site/site.ts';
import { designOf } from '../../branches/design.ts';
import { leastCovered } from '../../checks/conduits/cover-findings.ts';
import type { UncountedPlan } from '../../plan/plan-shape.ts';
import type { Conduit, PlannedBox } from '../../plan-file/branches.ts';
import type { CodeTables } from '../../tables/code-tables.ts';
import { cited } from '../../tables/sections.ts';
import { lotSupports } from '../set-out-points.ts';
import { type AskedLine, checked } from './asked.ts';
import { sizeName } from './size-name.ts';

/** What is looked at of raceways: what hangs or lies along them, conduit by conduit, and the boxes between. */
export function conduitLines(site: Site, plan: UncountedPlan): readonly AskedLine[] {
  const { tables } = designOf(site.rules);
  const fed = new Map(site.chargers.map(({ id, from }) => [id, from]));
  return [
    ...supportLines(site, plan),
    ...coverLines(site, tables),
    ...plan.conduits.flatMap((conduit) => linesOf(conduit, fed.get(conduit.circuits[0] ?? '') ?? conduit.from, site)),
    ...boxLines(site, plan, tables),
  ];
}

function linesOf(conduit: Conduit, of: string, { rules }: Site): readonly AskedLine[] {
  const { id, method, tradeSize, conductors, circuits, fillPercent, fillLimit, bendDegrees, from, to } = conduit;
  const own = { of, list: 'equipment', where: `${from} to ${to}` } as const;
  const inside = conductors.map(({ count, size, use }) => `${count} ${sizeName(size)}${USE_WORDS[use]}`).join(', ');
  return [
    {
      ...own,
      what: `Conduit ${id}`,
      rule: method === 'tray' ? 'tray-fill' : 'conduit-fill',
      expected: {
        kind: 'seen',
        words: `${tradeSize === null ? method : `${tradeSize} in ${method}`}, ${circuits.length === 1 ? '1 circuit' : `${circuits.length} circuits`}: ${inside}; ${fillPercent.toFixed(1)}% filled of ${fillLimit.toFixed(0)}%`,
      },
      mark: checked(`conduit ${id}`.slice(0, 64)),
    },
    ...(bendDegrees < 1
      ? []
      : [
          {
            ...own,
            what: `Bends of conduit ${id}`,
            rule: 'bends',
            expected: { kind: 'number', most: rules.bendLimit, drawn: Math.round(bendDegrees), unit: '°' },
            mark: checked(`bends ${id}`.slice(0, 64)),
          } as const,
        ]),
  ];
}

const USE_WORDS = { line: '', grounding: ' ground', bonding: ' bonding', pilot: ' pilot' } as const;

function supportLines(site: Site, plan: UncountedPlan): readonly AskedLine[] {
  return lotSupports(site, plan).flatMap(({ raceway, supports }) => {
    const [first, last] = [supports[0], supports.at(-1)];
    if (!first || !last) return [];
    return [
      {
        of: raceway.id,
        list: 'raceways',
        what: 'Supports along it',
        where: `${place(site, first.at)} to ${place(site, last.at)}`,
        rule: 'unsupported',
        expected: { kind: 'number', least: supports.length, drawn: supports.length, unit: '' },
        mark: checked('supports'),
      } as const,
    ];
  });
}

const place = (site: Site, [x, y]: readonly number[]): string => planWords([x!, y!], site.gridlines, site.units);

const coverLines = (site: Site, tables: CodeTables): readonly AskedLine[] =>
  site.raceways.flatMap((raceway) => {
    const worst = leastCovered(raceway, site.stalls, site.aisles, tables);
    if (worst === null) return [];
    const { id, path } = raceway;
    return [
      {
        of: id,
        list: 'raceways',
        what: 'Cover over it',
        where: `${place(site, path[0]!)} to ${place(site, path.at(-1)!)}`,
        rule: 'cover',
        expected: { kind: 'length', least: worst.needed / 12, drawn: worst.cover / 12 },
        mark: checked('cover'),
      } as const,
    ];
  });

/** Boxes on the way, and handholes: those at drops come with their drop. */
function boxLines(site: Site, plan: UncountedPlan, tables: CodeTables): readonly AskedLine[] {
  const handholes = new Map(plan.handholes.map((handhole) => [handhole.id, handhole]));
  const pulls = new Set(site.pullpoints.map(({ id }) => id));
  const drops = new Set(site.drops.map(({ id }) => id));
  return plan.boxes.flatMap((box) => {
    const handhole = handholes.get(box.id);
    const words = handhole ? `${handhole.size}, ${handhole.rating}` : sizeOf(box);
    if (words === null) return [];
    const isDrop = drops.has(box.id);
    const of = isDrop || pulls.has(box.id) ? box.id : (box.conduits[0]?.split('-')[0] ?? box.id);
    return [
      {
        of,
        list: isDrop ? 'drops' : pulls.has(box.id) ? 'pullpoints' : 'equipment',
        what: handhole ? `Handhole ${box.id}` : `Box ${box.id}, at least`,
        where: place(site, box.at),
        rule: null,
        source: cited(tables, handhole ? 'handholeSize' : box.volume === null ? 'pullBox' : 'boxVolume'),
        expected: { kind: 'seen', words },
        mark: checked(`box ${box.id}`.slice(0, 64)),
      } as const,
    ];
  });
}

const sizeOf = ({ box, length, volume }: PlannedBox): string | null =>
  length !== null
    ? `${Number(length.toFixed(1))} in long`
    : box !== null
      ? `${box} in`
      : volume === null
        ? null
        : `${Number(volume.toFixed(1))} cu in`;
