import type { CodeTables } from '../../tables/code-tables.ts';
import { standardRatingAtLeast } from '../../tables/protection-of.ts';
import { fullLineAmps, heldLineAmps, type LoadWish } from './charger-amps.ts';

/** A panelboard as it is bought, and the ceiling that its chargers are held to. */
export interface PanelSize {
  readonly busAmps: number;
  readonly mainAmps: number;
  readonly spaces: number;
  /** Absent where its chargers run at full rate. */
  readonly managedAmps?: number;
}

/** Busbars that panelboards come with, and how many spaces they have at least. Common practice, no source. */
const BUSES: readonly (readonly [busAmps: number, spaces: number])[] = [
  [100, 24],
  [125, 30],
  [225, 42],
  [400, 42],
  [600, 54],
  [800, 66],
  [1200, 84],
];
/** Spaces of panelboards. Common practice, no source. */
const SPACES: readonly number[] = [24, 30, 42, 54, 66, 84];
/** Of a single-phase charger between two lines. */
const POLES = 2;

/**
 * The least panelboard for so many chargers of a lot of `all`: a main of a standard rating that carries 125 % of what they
 * draw, or are held to, on its busiest line, the next busbar, and spaces for them. Null where none is so large.
 */
export function panelSize(tables: CodeTables, wish: LoadWish, chargers: number, all: number): PanelSize | null {
  const { factor } = tables.continuous;
  const full = fullLineAmps(tables, chargers);
  const held = heldLineAmps(wish, chargers, all);
  const mainAmps = standardRatingAtLeast(
    tables,
    Math.max(BUSES[0]![0], factor * Math.min(full, held ?? Number.POSITIVE_INFINITY)),
  );
  const bus = BUSES.find(([amps]) => amps >= mainAmps);
  const spaces = SPACES.find((count) => count >= POLES * chargers);
  if (bus === undefined || spaces === undefined) return null;
  const ceiling = wish.kind === 'ceiling' ? Math.floor(held ?? full) : Math.floor(mainAmps / factor);
  return {
    busAmps: bus[0],
    mainAmps,
    spaces: Math.max(bus[1], spaces),
    ...(held !== null && ceiling < full && { managedAmps: ceiling }),
  };
}
