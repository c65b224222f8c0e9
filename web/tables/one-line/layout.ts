import { oneLinePages } from '../../../calc/sheets/pdf/one-line/one-line-tree.ts';
import { SYMBOL_HEIGHT } from '../../../calc/sheets/pdf/one-line/symbol-pen.ts';
import type { ChargerGroup, OneLineItem } from './model.ts';

/** Measures of the one-line on the page, pixels. */
export const COLUMN = 256;
/** From the left edge of a column to its line. */
export const AXIS = 46;
export const TEXT_PX = 17;
const FEEDER_TOP = 26;
const FEEDER_FOOT = 22;
const GROUP_HEAD = 24;
const GAP = 14;
const CHIPS_ACROSS = 3;
/** Chargers of a group that are shown before it is opened. */
const CHIPS_FIRST = 12;

/** An item with its place, pixels from the upper left corner of the whole. */
export interface PlacedItem {
  readonly item: OneLineItem;
  readonly x: number;
  /** Where its feeder begins, at the bus that it hangs on. */
  readonly y: number;
  /** Where its symbol begins. */
  readonly symbolY: number;
  readonly height: number;
  /** The bus over what it feeds: its height and ends; null where it feeds nothing. */
  readonly bus: { readonly y: number; readonly from: number; readonly to: number } | null;
}

export interface OneLineLayout {
  readonly width: number;
  readonly height: number;
  readonly placed: readonly PlacedItem[];
}

export interface ChipSize {
  /** From one row of chargers to the next. */
  readonly row: number;
  /** Groups that are opened, by `keyOf`. */
  readonly opened: ReadonlySet<string>;
}

export const groupKey = (item: string, group: ChargerGroup): string => `${item} ${group.lines}`;

/** The chargers of a group that are shown. */
export const shownOf = (item: string, group: ChargerGroup, opened: ReadonlySet<string>): ChargerGroup['chargers'] =>
  group.chargers.length > CHIPS_FIRST && !opened.has(groupKey(item, group))
    ? group.chargers.slice(0, CHIPS_FIRST)
    : group.chargers;

const feederHeight = ({ feeder }: OneLineItem): number =>
  feeder === null ? 0 : FEEDER_TOP + (feeder.says.length + 1) * TEXT_PX + FEEDER_FOOT;

function ownHeight(item: OneLineItem, { row, opened }: ChipSize): number {
  const words = Math.max(SYMBOL_HEIGHT, (item.says.length + 1) * TEXT_PX);
  const groups = item.groups.reduce((sum, group) => {
    const shown = shownOf(item.id, group, opened).length;
    const more = group.chargers.length > CHIPS_FIRST ? 1 : 0;
    return sum + GROUP_HEAD + (Math.ceil(shown / CHIPS_ACROSS) + more) * row;
  }, 0);
  return words + groups + item.loads.length * row + (item.loads.length > 0 ? GROUP_HEAD : 0) + 2 * GAP;
}

/** Places of all items: by the tree that the sheets lay out, a column for each item that feeds no other. */
export function placesOfItems(roots: readonly OneLineItem[], chips: ChipSize): OneLineLayout {
  const page = oneLinePages(roots, Infinity, Infinity)[0] ?? [];
  const levels: { feeder: number; own: number }[] = [];
  for (const { node, level } of page) {
    const tallest = levels[level] ?? { feeder: 0, own: 0 };
    levels[level] = {
      feeder: Math.max(tallest.feeder, feederHeight(node)),
      own: Math.max(tallest.own, ownHeight(node, chips)),
    };
  }
  const tops: number[] = [GAP];
  for (const [level, { feeder, own }] of levels.entries()) tops.push(tops[level]! + feeder + own);
  const xOf = (column: number): number => GAP + column * COLUMN;
  const ends = page.map(({ column }) => ({ from: xOf(column), to: xOf(column), fed: false }));
  for (const { column, parent } of page) {
    const end = ends[parent];
    if (end === undefined) continue;
    end.from = Math.min(end.from, xOf(column));
    end.to = Math.max(end.to, xOf(column));
    end.fed = true;
  }
  const placed = page.map(({ node, level, column }, place): PlacedItem => {
    const { from, to, fed } = ends[place]!;
    return {
      item: node,
      x: xOf(column),
      y: tops[level]!,
      symbolY: tops[level]! + levels[level]!.feeder,
      height: levels[level]!.feeder + ownHeight(node, chips),
      bus: fed ? { y: tops[level + 1]!, from: from + AXIS, to: to + AXIS } : null,
    };
  });
  const columns = Math.max(0, ...page.map(({ column }) => column)) + 1;
  return { width: 2 * GAP + columns * COLUMN, height: tops.at(-1)! + GAP, placed };
}

/** The part of the one-line that is in view. */
export interface Window {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

const BEYOND = 320;

/** What is in view and near it; the lines of an item reach from its feeder to the bus under it. */
export const inView = ({ placed }: OneLineLayout, { left, top, width, height }: Window): readonly PlacedItem[] =>
  placed.filter((one) => {
    const [right, foot] = [one.x + COLUMN, Math.max(one.y + one.height, one.bus?.y ?? 0)];
    const from = Math.min(one.x, one.bus?.from ?? Infinity);
    const to = Math.max(right, one.bus?.to ?? 0);
    return to > left - BEYOND && from < left + width + BEYOND && foot > top - BEYOND && one.y < top + height + BEYOND;
  });

/** Whether the item itself, not only its bus, is in view or near it. */
export const isNear = ({ x }: PlacedItem, { left, width }: Window): boolean =>
  x + COLUMN > left - BEYOND && x < left + width + BEYOND;
