import { addTo } from '../../../../routing/lists/grouping.ts';
import { treeOf } from '../../../supply/tree/supply-lines.ts';
import type { SupplyNode } from '../../../supply/tree/supply-tree.ts';
import { type Area, top } from '../kit/area.ts';
import { type Draft, type Job, NOT_TO_SCALE } from '../kit/draft.ts';
import { wrapped } from '../kit/lettering/lines-of-text.ts';
import { smallDelta } from '../kit/revision/delta.ts';
import { drawViewTitle, FOOT } from '../kit/view/view-title.ts';
import { feederConduitsOf } from '../schedules/feeder-schedule.ts';
import { levelHeights, type OneLineSize, oneLineSize, pieceHeight, type WordedNode } from './level-heights.ts';
import { drawOneLine } from './one-line-drawing.ts';
import { type OneLinePage, oneLinePages } from './one-line-tree.ts';
import { endsOf, equipmentLines, feederLines } from './one-line-words.ts';

const NO_DEVICES = { head: false, end: false };

/** Sizes tried, largest first: a small supply is drawn large enough to fill its sheet. */
const SIZES = [1.6, 1.3, 1];

/** The supply as a one-line diagram, on as many sheets as it takes; none for a site without equipment. */
export const oneLineSheets = (job: Job): readonly Draft[] => oneLineIn(job, job.shape.field).sheets;

/** The one-line laid out in a part of each sheet, and how large it is drawn. */
export function oneLineIn(job: Job, field: Area): { readonly sheets: readonly Draft[]; readonly size: OneLineSize } {
  const { lettering } = job;
  const room = { ...field, y: field.y + FOOT, height: field.height - FOOT };
  const laidAt = (k: number) => {
    const size = oneLineSize(k, lettering.sizes.small);
    const roots = wordedRoots(job, size);
    const columns = Math.max(1, Math.floor(room.width / size.column));
    const pages = oneLinePages(roots, columns, levelsThatFit(roots, room.height, size));
    return { size, pages };
  };
  const laid = SIZES.map(laidAt);
  const { size, pages: pieces } = laid.find(({ pages }) => pages.length === 1) ?? laid.at(-1)!;
  const sheets = stacked(pieces, room.height, size);
  const keyOf = (i: number): string => `one-line ${i + 1}`;
  const firstOn = new Map<WordedNode, number>();
  for (const [i, piece] of pieces.entries()) for (const { node } of piece) if (!firstOn.has(node)) firstOn.set(node, i);
  const drafts = sheets.map((mine, i): Draft => {
    const title = sheets.length === 1 ? 'Supply one-line' : `Supply one-line ${i + 1} of ${sheets.length}`;
    return {
      key: keyOf(i),
      series: 'E-6',
      title,
      scale: NOT_TO_SCALE,
      draw: (pen, numbers) => {
        const sheetOf = (piece: number): string =>
          numbers.get(keyOf(sheets.findIndex((sheet) => sheet.includes(piece)))) ?? '';
        const whole = mine.reduce((sum, piece) => sum + pieceHeight(pieces[piece]!, size), 0);
        let y = top(room);
        for (const piece of mine) {
          const height = (room.height * pieceHeight(pieces[piece]!, size)) / whole;
          y -= height;
          drawOneLine(pen, { ...room, y, height }, pieces[piece]!, size, {
            goesOn: (node) => sheetOf(firstOn.get(node) ?? piece),
            // What hangs on one piece of equipment may take several pieces: its own words stand on the first.
            isRepeated: (node) => firstOn.get(node)! < piece,
            firstSheet: (node) => sheetOf(firstOn.get(node)!),
          });
        }
        const foot = { ...field, height: FOOT };
        const says = 'Not to scale. Volts and amps: every charger at once, at its rating or as managed.';
        drawViewTitle(pen, foot, '1', title, says);
      },
    };
  });
  return { sheets: drafts, size };
}

/** Pieces, by their places in the list, that go under one another on each sheet. */
function stacked(
  pieces: readonly OneLinePage<WordedNode>[],
  height: number,
  size: OneLineSize,
): readonly (readonly number[])[] {
  const sheets: number[][] = [];
  let left = 0;
  pieces.forEach((piece, i) => {
    const needed = pieceHeight(piece, size);
    if (sheets.length === 0 || needed > left) {
      sheets.push([]);
      left = height;
    }
    sheets.at(-1)!.push(i);
    left -= needed;
  });
  return sheets;
}

function wordedRoots(job: Job, size: OneLineSize): readonly WordedNode[] {
  const { site, plan, lettering, revision } = job;
  const { nodes } = treeOf(site);
  const conduits = feederConduitsOf(job);
  const children = new Map<number, number[]>();
  nodes.forEach(({ parent }, place) => {
    addTo(children, parent, place);
  });
  const before = revision ? linesBefore(revision.earlier()) : null;
  const deltaRoom = before === null ? 0 : smallDelta(lettering);
  const wrap = (lines: readonly string[], room: number, known: ReadonlySet<string> | undefined) => {
    const changed = new Set<number>();
    const all: string[] = [];
    for (const line of lines) {
      const own = wrapped(line, room - deltaRoom, size.letters, lettering, { most: 3 });
      if (before !== null && own.length > 0 && known?.has(line) !== true) changed.add(all.length);
      all.push(...own);
    }
    return { lines: all, changed };
  };
  const worded = (place: number): WordedNode => {
    const supply: SupplyNode = nodes[place]!;
    const { id } = supply.equipment;
    const known = before?.get(id);
    const feeder = wrap(feederLines(supply, site, plan, conduits), size.feederRoom, known);
    const equipment = wrap(equipmentLines(supply, site, plan), size.equipmentRoom, known);
    return {
      id,
      supply,
      feeder: feeder.lines,
      equipment: equipment.lines,
      deltas: revision ? { number: revision.number, feeder: feeder.changed, equipment: equipment.changed } : null,
      devices: supply.feeder === null ? NO_DEVICES : endsOf(plan, supply.feeder.id, id),
      isGrounded: supply.primary === null && plan.supply.bonded.some((one) => one.id === id),
      hasBranches: [...site.chargers, ...site.loads].some(({ from }) => from === id),
      children: (children.get(place) ?? []).map(worded),
    };
  };
  return (children.get(-1) ?? []).map(worded);
}

/** What the one-line of an earlier version says of each piece of equipment and the feeder that comes to it. */
function linesBefore(job: Job): ReadonlyMap<string, ReadonlySet<string>> {
  const { site, plan } = job;
  const conduits = feederConduitsOf(job);
  return new Map(
    treeOf(site).nodes.map((supply) => [
      supply.equipment.id,
      new Set([...feederLines(supply, site, plan, conduits), ...equipmentLines(supply, site, plan)]),
    ]),
  );
}

/**
 * Levels that any tree of the supply can have on one sheet: at least two, so that something is fed. Where not all go on
 * one, the head of each later sheet has the feeder that comes to it.
 */
function levelsThatFit(roots: readonly WordedNode[], height: number, size: OneLineSize): number {
  const heights = levelHeights(roots, size);
  const upTo = (room: number): number => {
    let sum = 0;
    for (const [level, { feeder, equipment }] of heights.entries()) {
      sum += feeder + equipment;
      if (sum > room) return level;
    }
    return Infinity;
  };
  if (upTo(height) === Infinity) return Infinity;
  return Math.max(2, Math.min(heights.length, upTo(height - Math.max(...heights.map(({ feeder }) => feeder)))));
}
