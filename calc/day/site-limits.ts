import type { DayLimitFields } from '../../routing/site/schema/day-schema.ts';
import type { Charger, Load } from '../../routing/site/site.ts';
import { loadAmps } from '../supply/tree/load-lines.ts';
import type { SupplyLines } from '../supply/tree/supply-lines.ts';
import type { SupplyNode, SupplyTree } from '../supply/tree/supply-tree.ts';
import { toNeutral } from '../supply/tree/system.ts';

/** Part of a breaker's rating that continuous current may take: the code's 125%, solved for the current. */
const CONTINUOUS = 0.8;

export interface SiteLimits {
  readonly limits: readonly DayLimitFields[];
  /** What limits the chargers and was not read, in words. */
  readonly notRead: readonly string[];
}

/** Chargers and loads as they stand to a piece of equipment above them. */
interface Below {
  readonly chargers: readonly Charger[];
  readonly loads: readonly Load[];
  /** How many transformers lie between, and the ratio of the one where it is one; null where chargers differ in it. */
  readonly through: { readonly transformers: number; readonly ratio: number } | null;
}

/**
 * Limits of a day as the supply has them, from the chargers up: what management holds as it stands; of breakers and mains
 * 80%, less continuous loads and 80% of the others line by line; of transformers their amperes, less loads. Lines on the
 * chargers' own side, a delta primary one transformer up, a sum on a single-phase supply; beyond that none. Generation is
 * not counted.
 */
export function siteLimits(
  tree: SupplyTree,
  lines: SupplyLines,
  chargers: readonly Charger[],
  loads: readonly Load[],
): SiteLimits {
  const limits: DayLimitFields[] = [];
  const notRead: string[] = [];
  tree.nodes.forEach((node, place) => {
    const { equipment, feeder, primary, system } = node;
    const secondary = below(tree, place, chargers, loads, false);
    if (secondary.chargers.length === 0) return;
    const add = (
      id: string,
      at: Below,
      figure: number | undefined,
      part: number,
      takes: (load: Load) => number,
      phases: 1 | 3,
    ): void => {
      if (figure === undefined) return;
      const why = unreadable(at, phases);
      if (why !== null) {
        notRead.push(`${id}: ${why}`);
        return;
      }
      const { transformers, ratio } = at.through!;
      const kind = phases === 1 ? 'sum' : transformers === 0 ? 'lines' : 'delta';
      const other = otherLoads(at.loads, lines, tree, kind, ratio, takes);
      limits.push({
        id,
        kind,
        amps: part * figure,
        ...(kind === 'delta' && { ratio }),
        chargers: at.chargers.map((one) => one.id),
        ...(other !== null && { other: [other] }),
      });
    };
    add(equipment.id, secondary, equipment.managedAmps, 1, () => 0, system.phases);
    if (primary !== null && equipment.kva !== undefined) {
      const amps = (1000 * equipment.kva) / (system.phases === 3 ? Math.sqrt(3) * system.volts : system.volts);
      add(`${equipment.id} ${equipment.kva} kVA`, secondary, amps, 1, () => 1, system.phases);
    }
    const takes = ({ continuous }: Load): number => (continuous ? 1 : CONTINUOUS);
    if (primary === null) add(`${equipment.id} main`, secondary, equipment.mainAmps, CONTINUOUS, takes, system.phases);
    if (feeder !== null) {
      const incoming = primary === null ? secondary : below(tree, place, chargers, loads, true);
      add(`${feeder.id} breaker`, incoming, feeder.breakerAmps, CONTINUOUS, takes, (primary ?? system).phases);
    }
  });
  return { limits, notRead };
}

function unreadable({ through }: Below, phases: 1 | 3): string | null {
  if (through === null) return 'its chargers do not all lie behind the same transformers';
  if (through.transformers > 1) return 'its chargers lie behind two transformers';
  if (through.transformers === 1 && phases === 1) return 'its chargers lie behind a single-phase transformer';
  return null;
}

/** What hangs on a piece of equipment and beyond, seen from its secondary side, or from its primary where it has one. */
function below(
  tree: SupplyTree,
  top: number,
  chargers: readonly Charger[],
  loads: readonly Load[],
  fromPrimary: boolean,
): Below {
  const ways = new Map<string, { readonly transformers: number; readonly ratio: number }>();
  tree.nodes.forEach((node, place) => {
    const { equipment, parent } = node;
    const above =
      place === top
        ? { transformers: 0, ratio: 1 }
        : parent < 0
          ? undefined
          : ways.get(tree.nodes[parent]!.equipment.id);
    if (above === undefined) return;
    const isThrough = node.primary !== null && (place !== top || fromPrimary);
    ways.set(equipment.id, isThrough ? { transformers: above.transformers + 1, ratio: ratioOf(node) } : above);
  });
  const under = chargers.filter(({ from }) => ways.has(from));
  const first = under[0] === undefined ? undefined : ways.get(under[0].from)!;
  const isOne =
    first !== undefined &&
    under.every(({ from }) => {
      const way = ways.get(from)!;
      return way.transformers === first.transformers && Math.abs(way.ratio - first.ratio) < 1e-9;
    });
  return {
    chargers: under,
    loads: loads.filter(({ from, generation }) => generation !== true && ways.has(from)),
    through: isOne ? first : null,
  };
}

const ratioOf = ({ primary, system }: SupplyNode): number => (primary?.volts ?? system.volts) / toNeutral(system);

/** What loads take of each line, all day; on a delta primary at no less than what it can be, so that sums stay safe. */
function otherLoads(
  loads: readonly Load[],
  lines: SupplyLines,
  tree: SupplyTree,
  kind: 'sum' | 'lines' | 'delta',
  ratio: number,
  takes: (load: Load) => number,
): NonNullable<DayLimitFields['other']>[number] | null {
  const amps = { A: 0, B: 0, C: 0 };
  for (const load of loads) {
    const place = tree.placeOf.get(load.from);
    const on = lines.loads.get(load.id);
    if (place === undefined || on === undefined) continue;
    const current = takes(load) * loadAmps(load, tree.nodes[place]!.system, on);
    for (const [line, share] of sharesOf(on, kind)) amps[line] += (current * share) / (kind === 'delta' ? ratio : 1);
  }
  if (amps.A + amps.B + amps.C === 0) return null;
  const all = { from: '00:00', to: '00:00' };
  return kind === 'sum' ? { ...all, amps: Math.max(amps.A, amps.B, amps.C) } : { ...all, ...amps };
}

const ROOT_3 = Math.sqrt(3);

/** Magnitude of one ampere in each line: of a delta primary, A - C, B - A and C - B. */
function sharesOf(on: string, kind: 'sum' | 'lines' | 'delta'): readonly (readonly ['A' | 'B' | 'C', number])[] {
  const has = (line: string): boolean => on.includes(line);
  if (kind !== 'delta') return (['A', 'B', 'C'] as const).map((line) => [line, has(line) ? 1 : 0]);
  const from = { A: ['A', 'C'], B: ['B', 'A'], C: ['C', 'B'] } as const;
  return (['A', 'B', 'C'] as const).map((line) => {
    const [one, other] = from[line];
    const both = has(one) && has(other);
    if (on === 'ABC') return [line, ROOT_3];
    return [line, both ? 2 : has(one) || has(other) ? 1 : 0];
  });
}
