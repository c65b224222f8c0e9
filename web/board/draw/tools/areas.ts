import { areaOf } from '../../../../routing/plane/area.ts';
import { newId } from '../../../../routing/site/new-id.ts';
import { printLength } from '../../../../routing/site/numbers/feet-inches.ts';
import type { Keepout, Point2 } from '../../../../routing/site/site.ts';
import type { Edit } from '../../../document/change/edit.ts';
import type { ListName } from '../../../document/change/element-lists.ts';
import { addElements } from '../../../document/edits/add.ts';
import { type Advice, type BoardDraft, type DrawTool, type Ground, spotsOf } from '../draft.ts';
import type { KeepoutOptions } from '../options.ts';

/** A keep-out by its corners, or round at one press. */
export const keepoutTool: DrawTool<KeepoutOptions> = {
  ...outlineTool('Keep-out', 'keepouts'),
  edit: (ground, draft, options) => keepoutEdit(ground, draftOutline(draft), options),
  instead: ({ shape }) => (shape === 'round' ? roundKeepoutTool : null),
};

/** A light pole, a hydrant, a tree: round, by its middle. */
const roundKeepoutTool: DrawTool<KeepoutOptions> = {
  shape: 'point',
  atOnce: true,
  list: 'keepouts',
  edit: (ground, draft, options) => {
    const [spot] = spotsOf(draft);
    return keepoutEdit(ground, spot ? roundAbout(spot.at, options.across) : null, options);
  },
  words: ({ site }, draft, { across }) =>
    spotsOf(draft).length > 0 ? [`round, ${printLength(across, site.units)} across`] : [],
  advice: () => ({
    action: 'Keep-out',
    next: 'Press its middle: it is set at once.',
    keys: [
      ['0-9', 'its place'],
      ['Esc', 'select'],
    ],
  }),
};

const ROUND_CORNERS = 12;

/** Corners of an outline that a circle of a diameter, feet, fits into: what is round lies wholly inside. */
function roundAbout([x, y]: Point2, across: number): Point2[] {
  const half = Math.PI / ROUND_CORNERS;
  const reach = across / 2 / Math.cos(half);
  return Array.from({ length: ROUND_CORNERS }, (_, i): Point2 => {
    const turn = (2 * i + 1) * half;
    return [x + reach * Math.cos(turn), y + reach * Math.sin(turn)];
  });
}

function keepoutEdit({ file }: Ground, outline: Point2[] | null, { from, to, blocks }: KeepoutOptions): Edit | null {
  if (!outline) return null;
  const keepout: Keepout = {
    id: newId(file, 'K'),
    outline: outline as Keepout['outline'],
    ...(from !== null && { from }),
    ...(to !== null && { to }),
    blocks,
  };
  return addElements(file, 'keepouts', [keepout]);
}

/** What all areas that are drawn by their corners have in common. */
export function outlineTool<L extends ListName>(action: string, list: L) {
  return {
    shape: 'outline' as const,
    atOnce: false,
    list,
    words: ({ site }: Ground, draft: BoardDraft) => {
      const corners = spotsOf(draft);
      const [a, b] = corners.slice(-2);
      if (!a || !b) return [];
      const [wide, high] = [Math.abs(a.at[0] - b.at[0]), Math.abs(a.at[1] - b.at[1])];
      const length = (feet: number): string => printLength(feet, site.units);
      // Two corners are those of a rectangle, or a first side.
      if (corners.length === 2 && wide > 0 && high > 0)
        return [`${length(wide)} by ${length(high)}`, `${length(Math.hypot(wide, high))} as a side`];
      return [length(Math.hypot(wide, high)), `${corners.length} corners`];
    },
    lacks: ({ spots }: BoardDraft): string =>
      spots.length < 2
        ? 'An area has three corners or more. Press the next one.'
        : 'These corners lie in one line, and an area lies between three that do not. Press one more beside it.',
    advice: (draft: BoardDraft): Advice => ({
      action,
      next:
        draft.spots.length === 0
          ? 'Press its first corner, or drag a rectangle.'
          : 'Press each corner; finish with Enter.',
      keys: [
        ['0-9', 'length'],
        ['Enter', 'finish'],
        ['Backspace', 'back'],
        ['Esc', draft.spots.length === 0 ? 'select' : 'throw away'],
      ],
    }),
  };
}

/** Two corners that a drag has made are those of a rectangle; else it takes three that are not in one line. */
export function draftOutline(draft: BoardDraft): Point2[] | null {
  const corners = spotsOf(draft)
    .map(({ at }) => at)
    .filter((at, i, all) => i === 0 || Math.hypot(at[0] - all[i - 1]![0], at[1] - all[i - 1]![1]) > 0.02);
  if (corners.length === 2) {
    const [[ax, ay], [bx, by]] = corners as [Point2, Point2];
    if (Math.abs(ax - bx) < 0.05 || Math.abs(ay - by) < 0.05) return null;
    return [
      [ax, ay],
      [bx, ay],
      [bx, by],
      [ax, by],
    ];
  }
  return corners.length >= 3 && areaOf(corners) > 0.01 ? corners : null;
}
