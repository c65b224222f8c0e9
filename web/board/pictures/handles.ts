import type { Site } from '../../../routing/site/site.ts';
import type { Ref } from '../../document/change/element-lists.ts';
import { toScreen } from '../camera.ts';
import { handleOnScreen, handlesOf } from '../hand/handles.ts';
import type { ViewState } from '../view-store.ts';
import type { BoardPen, Frame } from './frame.ts';

/** What the hand can take hold of on the selected element: filled where it is what is held. */
export function drawHandles(
  pen: BoardPen,
  { ink }: Frame,
  site: Site,
  { camera, viewport }: Pick<ViewState, 'camera' | 'viewport'>,
  selection: readonly Ref[],
): void {
  const held = JSON.stringify(selection[0]?.part);
  for (const handle of handlesOf(site, selection, camera.scale)) {
    const { px, py } = handleOnScreen(handle, camera, viewport);
    const foot = toScreen(camera, viewport, [handle.at[0], handle.at[1]]);
    pen.strokeStyle = ink.ink;
    if (foot.px !== px || foot.py !== py) {
      pen.beginPath();
      pen.moveTo(foot.px, foot.py);
      pen.lineTo(px, py);
      pen.lineWidth = 0.8;
      pen.stroke();
    }
    pen.beginPath();
    if (handle.shape === 'square') pen.rect(px - 4.5, py - 4.5, 9, 9);
    else pen.arc(px, py, 5, 0, 2 * Math.PI);
    pen.fillStyle = JSON.stringify(handle.ref.part) === held ? ink.ink : ink.sheet;
    pen.fill();
    pen.lineWidth = 1.6;
    pen.stroke();
  }
}
