import Konva from 'konva';
import type { Point2 } from '../../../../routing/site/site.ts';
import { type Camera, pushed, zoomed } from '../../../../web/board/camera.ts';
import type { DropMark } from '../../../../web/board/kinds/drops.ts';
import type { StallMark } from '../../../../web/board/kinds/stalls.ts';
import { readInk } from '../../../../web/board/painting/ink.ts';
import type { Scene } from '../../../../web/board/scene/scene.ts';
import type { MakePeer } from './peer.ts';

/** A node of the canvas library for each shape of the drawing, as its manual has it: all on one layer, drops draggable. */
export const nodeBoard: MakePeer = (element, scene, viewport, first) => {
  const stage = new Konva.Stage({ container: element as HTMLDivElement, ...viewport });
  const layer = new Konva.Layer();
  stage.add(layer);
  addNodes(layer, scene);
  let camera: Camera = first;
  const look = (): void => {
    const { x, y, scale } = camera;
    // y of the site goes up.
    layer.setAttrs({ x: viewport.width / 2 - x * scale, y: viewport.height / 2 + y * scale });
    layer.scale({ x: scale, y: -scale });
    layer.batchDraw();
  };
  stage.on('pointermove', ({ evt }) => {
    if (evt.buttons !== 4) return;
    camera = pushed(camera, evt.movementX, evt.movementY);
    look();
  });
  stage.on('wheel', ({ evt }) => {
    camera = zoomed(camera, viewport, { px: evt.clientX, py: evt.clientY }, Math.exp(-evt.deltaY * 0.0015));
    look();
  });
  look();
  return {
    look: (to) => {
      camera = to;
      look();
    },
  };
};

const flat = (points: readonly (readonly number[])[]): number[] => points.flatMap(([x, y]) => [x!, y!]);

function addNodes(layer: Konva.Layer, scene: Scene): void {
  const ink = readInk(document.documentElement);
  const line = (points: readonly (readonly number[])[], stroke: string, strokeWidth: number, closed = false): void => {
    layer.add(
      new Konva.Line({
        points: flat(points),
        stroke,
        strokeWidth,
        closed,
        strokeScaleEnabled: false,
        listening: false,
      }),
    );
  };
  const words = ([x, y]: Point2, text: string): void => {
    layer.add(new Konva.Text({ x, y, text, fontSize: 1.6, scaleY: -1, fill: ink.ink, listening: false }));
  };
  for (const mark of scene.stalls.items as readonly StallMark[]) {
    line(mark.corners, ink.ink, 1, true);
    line(mark.car, ink.soft, 1, true);
    words(mark.labelAt, mark.label);
  }
  for (const { member } of scene.members.items) line([member.from, member.to], ink.soft, 1);
  for (const { corners } of scene.columns.items) line(corners, ink.ink, 1, true);
  for (const { raceway } of scene.raceways.items) line(raceway.path, ink.ruleStrong, 3);
  for (const { path } of scene.runs.items) if (path.length > 1) line(path, ink.ink, 1);
  for (const { corners, equipment } of scene.equipment.items) {
    line(corners, ink.ink, 2, true);
    words([equipment.at[0], equipment.at[1]], equipment.id);
  }
  for (const { pullpoint } of scene.pullpoints.items)
    layer.add(
      new Konva.Rect({
        x: pullpoint.at[0] - 0.5,
        y: pullpoint.at[1] - 0.5,
        width: 1,
        height: 1,
        stroke: ink.ink,
        strokeWidth: 0.1,
        listening: false,
      }),
    );
  for (const { drop } of scene.drops.items as readonly DropMark[]) {
    const [x, y] = drop.retractor ?? drop.box;
    const group = new Konva.Group({ x, y, draggable: true });
    group.add(new Konva.Circle({ radius: 1.2, stroke: ink.ink, strokeWidth: 0.2, fill: ink.sheet }));
    group.add(new Konva.Circle({ radius: 0.35, fill: ink.ink }));
    group.add(new Konva.Text({ x: 1.5, y: 1.5, text: drop.id, fontSize: 1.6, scaleY: -1, fill: ink.ink }));
    layer.add(group);
  }
}
