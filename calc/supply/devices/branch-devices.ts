import { kept } from '../../../routing/kept/kept.ts';
import type { Charger, Load } from '../../../routing/site/site.ts';
import { branchBreaker } from '../../circuits/branch.ts';
import type { Device } from '../../plan-file/supply.ts';
import type { CodeTables } from '../../tables/code-tables.ts';
import type { SupplyLines } from '../tree/supply-lines.ts';
import type { SupplyTree } from '../tree/supply-tree.ts';
import { loadBreaker } from './load-breaker.ts';

/** Breakers of chargers, in the order of the file, each in the equipment that feeds it. */
export const chargerDevices = kept(
  (chargers: readonly Charger[], tree: SupplyTree, lines: SupplyLines, tables: CodeTables): readonly Device[] => {
    const ratings = new Map<number, number | null>();
    return chargers.map(({ id, from, amps, volts }) => {
      let rating = ratings.get(amps);
      if (rating === undefined) {
        const breaker = branchBreaker(tables, amps, true);
        rating = Number.isFinite(breaker) ? breaker : null;
        ratings.set(amps, rating);
      }
      const own = lines.chargers.get(id)!;
      return {
        id,
        use: 'charger',
        at: from,
        of: id,
        protects: [id],
        amps: rating,
        lines: own,
        poles: own.length,
        volts: tree.nodes[tree.placeOf.get(from)!]?.system.volts ?? volts,
        known: 'sized',
        existing: false,
      };
    });
  },
);

/** Breakers of the other loads and of what generates, likewise. */
export const loadDevices = kept(
  (loads: readonly Load[], tree: SupplyTree, lines: SupplyLines, tables: CodeTables): readonly Device[] =>
    loads.map((load) => {
      const { system } = tree.nodes[tree.placeOf.get(load.from)!]!;
      const own = lines.loads.get(load.id)!;
      return {
        id: load.id,
        use: 'load',
        at: load.from,
        of: load.id,
        protects: [load.id],
        amps: loadBreaker(tables, load, system, own),
        lines: own,
        poles: own.length,
        volts: system.volts,
        known: 'sized',
        existing: false,
      };
    }),
);
