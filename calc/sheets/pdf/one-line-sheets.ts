import { treeOf } from '../../supply/supply-lines.ts';
import type { SupplyNode } from '../../supply/supply-tree.ts';
import { type Draft, type Job, NOT_TO_SCALE } from './draft.ts';
import { wrapped } from './lines-of-text.ts';
import { drawOneLine, levelHeights, type OneLineSize, oneLineSize, type WordedNode } from './one-line-drawing.ts';
import { oneLinePages } from './one-line-tree.ts';
import { equipmentLines, feederLines } from './one-line-words.ts';
import { feederConduitsOf } from './schedules/feeder-schedule.ts';
import { drawViewTitle, FOOT } from './view-title.ts';

/** Sizes tried, largest first: a small supply is drawn large enough to fill its sheet. */
const SIZES = [1.6, 1.3, 1];

/** The supply as a one-line diagram, on as many sheets as it takes; none for a site without equipment. */
export function oneLineSheets(job: Job): readonly Draft[] {
  const { shape, lettering } = job;
  const room = { ...shape.field, y: shape.field.y + FOOT, height: shape.field.height - FOOT };
  const laidAt = (k: number) => {
    const size = oneLineSize(k, lettering.sizes.small);
    const roots = wordedRoots(job, size);
    const columns = Math.max(1, Math.floor(room.width / size.column));
    const pages = oneLinePages(roots, columns, levelsThatFit(roots, room.height, size));
    return { size, pages };
  };
  const laid = SIZES.map(laidAt);
  const { size, pages } = laid.find((one) => one.pages.length <= 1) ?? laid.at(-1)!;
  const keyOf = (i: number): string => `one-line ${i + 1}`;
  return pages.map((page, i): Draft => {
    const title = pages.length === 1 ? 'Supply one-line' : `Supply one-line ${i + 1} of ${pages.length}`;
    return {
      key: keyOf(i),
      series: 'E-6',
      title,
      scale: NOT_TO_SCALE,
      draw: (pen, numbers) => {
        const sheetOf = (node: WordedNode): string => {
          const on = pages.findIndex((other) => other.some((placed) => placed.level === 0 && placed.node === node));
          return numbers.get(keyOf(on)) ?? '';
        };
        drawOneLine(pen, room, page, size, sheetOf);
        const foot = { ...shape.field, height: FOOT };
        const says = 'Not to scale. Volts and amps: every charger at once, at its rating or as managed.';
        drawViewTitle(pen, foot, '1', title, says);
      },
    };
  });
}

function wordedRoots(job: Job, size: OneLineSize): readonly WordedNode[] {
  const { site, plan, lettering } = job;
  const { nodes } = treeOf(site);
  const conduits = feederConduitsOf(job);
  const children = new Map<number, number[]>();
  nodes.forEach(({ parent }, place) => {
    children.set(parent, [...(children.get(parent) ?? []), place]);
  });
  const wrap = (lines: readonly string[], room: number): readonly string[] =>
    lines.flatMap((line) => wrapped(line, room, size.letters, lettering, { most: 3 }));
  const worded = (place: number): WordedNode => {
    const supply: SupplyNode = nodes[place]!;
    const { id } = supply.equipment;
    return {
      id,
      supply,
      feeder: wrap(feederLines(supply, site, plan, conduits), size.feederRoom),
      equipment: wrap(equipmentLines(supply, site, plan), size.equipmentRoom),
      hasBranches: [...site.chargers, ...site.loads].some(({ from }) => from === id),
      children: (children.get(place) ?? []).map(worded),
    };
  };
  return (children.get(-1) ?? []).map(worded);
}

/** Levels that any tree of the supply can have on one sheet: at least two, so that something is fed. */
function levelsThatFit(roots: readonly WordedNode[], height: number, size: OneLineSize): number {
  let sum = 0;
  for (const [level, { feeder, equipment }] of levelHeights(roots, size).entries()) {
    sum += feeder + equipment;
    if (sum > height) return Math.max(2, level);
  }
  return Infinity;
}
