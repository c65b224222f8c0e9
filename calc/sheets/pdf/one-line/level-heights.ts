import type { SupplyNode } from '../../../supply/tree/supply-tree.ts';
import { LEADING } from '../kit/lettering/letters.ts';
import type { OneLinePage } from './one-line-tree.ts';
import { SYMBOL_HALF, SYMBOL_HEIGHT } from './symbol-pen.ts';

/** Places of lines that a revision changed. */
export interface LineDeltas {
  readonly number: string;
  readonly feeder: ReadonlySet<number>;
  readonly equipment: ReadonlySet<number>;
}

/** A piece of equipment with its words, wrapped to its column. */
export interface WordedNode {
  readonly id: string;
  readonly supply: SupplyNode;
  readonly feeder: readonly string[];
  readonly equipment: readonly string[];
  /** Mark of the revision that changed some of those lines, and their places. */
  readonly deltas: LineDeltas | null;
  readonly hasBranches: boolean;
  /** An electrode conductor goes from it, and its symbol has no ground of its own. */
  readonly isGrounded: boolean;
  /** Whether a device stands where its feeder starts, and one where it ends. */
  readonly devices: { readonly head: boolean; readonly end: boolean };
  readonly children: readonly WordedNode[];
}

/** Measures of a one-line, points. */
export interface OneLineSize {
  /** How many times the size of the symbols. */
  readonly k: number;
  readonly letters: number;
  readonly column: number;
  readonly feederRoom: number;
  readonly equipmentRoom: number;
}

const ROW_GAP = 16;
export const BRANCH = 16;
export const WORDS_OFF = 6;
/** Most that is put between two levels to fill a sheet, in sizes of the lettering. */
export const SPREAD = 6;

export function oneLineSize(k: number, small: number): OneLineSize {
  const letters = k * small;
  const column = 27 * letters;
  const symbol = k * SYMBOL_HALF + WORDS_OFF;
  return { k, letters, column, feederRoom: column - k * 14 - symbol, equipmentRoom: column - 2 * symbol };
}

export interface LevelHeight {
  readonly feeder: number;
  readonly equipment: number;
}

export const feederHeight = ({ feeder, devices }: WordedNode, { k, letters }: OneLineSize): number =>
  Math.max((devices.head && devices.end ? 52 : 30) * k, (feeder.length + 1.2) * letters * LEADING);
export const equipmentHeight = ({ equipment, hasBranches }: WordedNode, { k, letters }: OneLineSize): number =>
  Math.max(k * SYMBOL_HEIGHT + (hasBranches ? BRANCH + 8 : 0), equipment.length * letters * LEADING) + ROW_GAP;

/** Heights of the levels of some trees: what the tallest feeder and the tallest equipment on each need. */
export function levelHeights(roots: readonly WordedNode[], size: OneLineSize): readonly LevelHeight[] {
  const heights: LevelHeight[] = [];
  const visit = (node: WordedNode, level: number): void => {
    const height = heights[level] ?? { feeder: 0, equipment: 0 };
    heights[level] = {
      feeder: Math.max(height.feeder, level === 0 ? 0 : feederHeight(node, size)),
      equipment: Math.max(height.equipment, equipmentHeight(node, size)),
    };
    for (const child of node.children) visit(child, level + 1);
  };
  for (const root of roots) visit(root, 0);
  return heights;
}

/** What a piece of a one-line has to know of the others. */
export interface OtherPieces {
  /** Number of the sheet on which a node stands at the top. */
  readonly goesOn: (node: WordedNode) => string;
  /** The node stands on an earlier piece with all its words. */
  readonly isRepeated: (node: WordedNode) => boolean;
  readonly firstSheet: (node: WordedNode) => string;
}

/** Height that a piece needs, points. */
export const pieceHeight = (page: OneLinePage<WordedNode>, size: OneLineSize): number =>
  levelsOfPage(page, size).reduce((sum, { feeder, equipment }) => sum + feeder + equipment, 24);

export function levelsOfPage(page: OneLinePage<WordedNode>, size: OneLineSize): readonly LevelHeight[] {
  const levels = Math.max(...page.map(({ level }) => level)) + 1;
  return Array.from({ length: levels }, (_, level): LevelHeight => {
    const mine = page.filter((placed) => placed.level === level).map(({ node }) => node);
    const label = level === 0 && mine.some(({ supply }) => supply.feeder !== null) ? size.letters * LEADING : 0;
    return {
      feeder: Math.max(...mine.map((node) => (node.supply.feeder === null ? 0 : feederHeight(node, size)))) + label,
      equipment: Math.max(...mine.map((node) => equipmentHeight(node, size))),
    };
  });
}
