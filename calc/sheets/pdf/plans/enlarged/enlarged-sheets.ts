import type { Drawing } from '../../../drawing/drawing.ts';
import { right } from '../../kit/area.ts';
import type { Draft, Job, SheetNumbers } from '../../kit/draft.ts';
import type { Pen } from '../../kit/pen.ts';
import type { SheetKeynotes } from '../../kit/title/keynotes.ts';
import { type View, viewIn } from '../../kit/view/view.ts';
import { drawPlanFoot } from '../../kit/view/view-title.ts';
import { keynotesIn, keynotesOf } from '../keynotes.ts';
import { drawInFull } from '../plan-in-full.ts';
import { fullNotes } from '../plan-notes.ts';
import { planFoot, planRoom } from '../plan-sheet.ts';
import type { EnlargedAreas } from './enlarged-areas.ts';
import { drawKeyPlan } from './key-plan.ts';
import { drawMatchLines, matchEdges } from './match-lines.ts';
import { type Tile, tileKey } from './tiles.ts';

const KEY_PLAN = 150;

/** Plans of the dense parts, at a scale at which boxes and retractors can be set out from them. */
export function enlargedSheets(job: Job, drawing: Drawing, { scale, tiles }: EnlargedAreas): readonly Draft[] {
  const keynotes = keynotesOf(job.site, job.plan);
  return tiles.map((tile, i): Draft => {
    const area = tile.name ?? `area ${i + 1}`;
    const title = tiles.length === 1 && tile.name === undefined ? 'Enlarged plan' : `Enlarged plan, ${area}`;
    const view = viewIn(planRoom(job.shape), tile.window, scale);
    return {
      key: tileKey(tile),
      series: 'E-4',
      title,
      scale: scale.says,
      plan: view,
      keynotes: keynotesIn(keynotes, view),
      draw: (pen, numbers, marks) => drawTile(pen, job, drawing, { tiles, tile, view, title, marks }, numbers),
    };
  });
}

interface TileSheet {
  readonly tiles: readonly Tile[];
  readonly tile: Tile;
  readonly view: View;
  readonly title: string;
  readonly marks: SheetKeynotes | undefined;
}

function drawTile(pen: Pen, job: Job, drawing: Drawing, sheet: TileSheet, numbers: SheetNumbers): void {
  const { site, shape } = job;
  const { tiles, tile, view, title, marks } = sheet;
  drawInFull(pen, job, drawing, view, {
    numbers,
    ...(marks && { keynotes: marks }),
    before: (ground) => drawMatchLines(pen, view, matchEdges(tiles, tile, view), numbers, ground),
  });
  const foot = planFoot(shape);
  const hasKey = tiles.length > 1;
  drawPlanFoot(pen, foot, view, site, title, fullNotes(job), right(foot) - (hasKey ? KEY_PLAN + 16 : 0));
  if (hasKey)
    drawKeyPlan(
      pen,
      { ...foot, x: right(foot) - KEY_PLAN, width: KEY_PLAN },
      tiles,
      tile,
      (one) => numbers.get(tileKey(one))!,
    );
}
