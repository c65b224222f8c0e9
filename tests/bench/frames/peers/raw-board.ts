import type { Point2 } from '../../../../routing/site/site.ts';
import { type Camera, placeOnSite, pushed, zoomed } from '../../../../web/board/camera.ts';
import type { DropMark } from '../../../../web/board/kinds/drops.ts';
import { BASE_PICTURES } from '../../../../web/board/painting/base-pictures.ts';
import { readInk } from '../../../../web/board/painting/ink.ts';
import type { PictureBoard } from '../../../../web/board/painting/painting.ts';
import { boardFrame } from '../../../../web/board/pictures/frame.ts';
import { drawDrops, drawDropWords } from '../../../../web/board/pictures/stalls/drops.ts';
import type { SceneMark } from '../../../../web/board/scene/mark.ts';
import { nearestDrop } from './nearest-drop.ts';
import type { MakePeer } from './peer.ts';

/**
 * One canvas and the board's own pictures, all in view drawn at each step, with nothing round it: no layers, no store,
 * no tables, no plan worked anew. What is left to gain over the board is what this is quicker by.
 */
export const rawBoard: MakePeer = (element, scene, viewport, first) => {
  const canvas = element.appendChild(document.createElement('canvas'));
  canvas.width = viewport.width;
  canvas.height = viewport.height;
  const pen = canvas.getContext('2d')!;
  const ink = readInk(document.documentElement);
  let camera: Camera = first;
  let held: { readonly mark: DropMark; readonly from: Point2; by: Point2 } | null = null;
  let hidden: ReadonlySet<SceneMark> = new Set();
  const frame = () => boardFrame(camera, viewport, ink, { scene, station: 'layout', margins: true });
  const board: PictureBoard = {
    base: () => scene,
    hidden: () => hidden,
    shows: () => true,
    frame,
    shading: () => null,
    underlay: () => null,
    loads: () => null,
    raised: () => null,
  };
  const draw = (): void => {
    pen.clearRect(0, 0, viewport.width, viewport.height);
    for (const picture of BASE_PICTURES) {
      pen.save();
      picture.draw(pen, board);
      pen.restore();
    }
    if (!held) return;
    const { drop } = held.mark;
    const [dx, dy] = held.by;
    const moved = ([x, y, z]: readonly [number, number, number]) => [x + dx, y + dy, z] as const;
    const mark: DropMark = {
      ...held.mark,
      drop: { ...drop, box: moved(drop.box), ...(drop.retractor && { retractor: moved(drop.retractor) }) },
    };
    drawDrops(pen, frame(), [mark]);
    drawDropWords(pen, frame(), [mark]);
  };
  let waiting = false;
  const later = (): void => {
    if (waiting) return;
    waiting = true;
    requestAnimationFrame(() => {
      waiting = false;
      draw();
    });
  };
  element.addEventListener('pointerdown', ({ button, clientX: px, clientY: py }) => {
    if (button !== 0) return;
    const from = placeOnSite(camera, viewport, { px, py });
    const mark = nearestDrop(scene, from, 12 / camera.scale);
    held = mark && { mark, from, by: [0, 0] };
    hidden = new Set(mark ? [mark] : []);
  });
  element.addEventListener('pointermove', ({ buttons, movementX, movementY, clientX: px, clientY: py }) => {
    if (held) {
      const [x, y] = placeOnSite(camera, viewport, { px, py });
      held.by = [x - held.from[0], y - held.from[1]];
    } else if (buttons === 4) camera = pushed(camera, movementX, movementY);
    else return;
    later();
  });
  element.addEventListener('wheel', ({ deltaY, clientX: px, clientY: py }) => {
    camera = zoomed(camera, viewport, { px, py }, Math.exp(-deltaY * 0.0015));
    later();
  });
  draw();
  return {
    look: (to) => {
      camera = to;
      draw();
    },
  };
};
