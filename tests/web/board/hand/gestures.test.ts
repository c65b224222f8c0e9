import { beforeEach, describe, expect, test } from 'vitest';
import type { Point2 } from '../../../../routing/site/site.ts';
import { placeOnSite, type ScreenPoint, toScreen } from '../../../../web/board/camera.ts';
import { drawHand } from '../../../../web/board/draw/draw-hand.ts';
import type { Gesture } from '../../../../web/board/hand/gesture.ts';
import { hovering } from '../../../../web/board/hand/gestures/hovering.ts';
import { measuring } from '../../../../web/board/hand/gestures/measuring.ts';
import { panning } from '../../../../web/board/hand/gestures/panning.ts';
import { pinching } from '../../../../web/board/hand/gestures/pinching.ts';
import { pressWithHand } from '../../../../web/board/hand/gestures/press.ts';
import type { Hand } from '../../../../web/board/hand/hand.ts';
import type { GestureWorld } from '../../../../web/board/hand/hand-world.ts';
import { measureHand } from '../../../../web/board/hand/measure-hand.ts';
import { type Scene, sceneOf } from '../../../../web/board/scene/scene.ts';
import { startTyping } from '../../../../web/board/typed/typing.ts';
import { createViewStore } from '../../../../web/board/view-store.ts';
import { createPageStore } from '../../../../web/page-state/page-store.ts';
import { D1, opened } from '../../document/keeping/opened-store.ts';
import '../../../../web/board/draw/tools/tools.ts';

let world: GestureWorld;

beforeEach(async () => {
  const document = await opened();
  const view = createViewStore({ camera: { x: 10, y: 10, scale: 10 }, viewport: { width: 800, height: 600 } });
  const scene = (): Scene => sceneOf(document.getState().site, document.getState().plan);
  const page = createPageStore();
  const draw = drawHand({ document, view, page }, scene);
  world = { document, view, page, scene, draw, measure: measureHand(view, scene) };
});

const on = (place: Point2): ScreenPoint =>
  toScreen(world.view.getState().camera, world.view.getState().viewport, place);
const under = (at: ScreenPoint): Point2 =>
  placeOnSite(world.view.getState().camera, world.view.getState().viewport, at);
const hand = (place: Point2, held: Partial<Hand> = {}): Hand => ({
  ...{ at: on(place), near: 8, isFinger: false, shift: false, free: false, encircles: false },
  ...held,
});
const boxOf = (): readonly number[] => world.document.getState().file.drops!.find(({ id }) => id === D1.id)!.box;
const place = (): Point2 => [boxOf()[0]!, boxOf()[1]!];
const selected = (): string[] => world.document.getState().selection.map(({ id }) => id);
const undoName = (): string | undefined => world.document.getState().undoName;

/** A gesture taken through moves to places. */
const through = (gesture: Gesture, ...hands: readonly Hand[]): Gesture =>
  hands.reduce((held, next) => held.move(next), gesture);

const OPEN: Point2 = [35, -10];

describe('a drag', () => {
  const dragged = (): Gesture => {
    const [x, y] = place();
    return through(pressWithHand(world, hand([x, y])), hand([x + 3, y], { free: true }));
  };

  test('previews, and is one entry when it is let go', () => {
    const [x, y] = place();
    const gesture = dragged();
    expect(gesture.doing).toBe('dragging');
    expect(place()[0]).toBeCloseTo(x + 3, 6);
    expect(undoName()).toBeUndefined();
    expect(gesture.end(hand([x + 3, y]))).toBeNull();
    expect(place()[0]).toBeCloseTo(x + 3, 6);
    expect(undoName()).toBeDefined();
  });

  test.each(['cancel', 'giveWay'] as const)('that is taken back by %s leaves everything as it was', (how) => {
    const before = boxOf();
    dragged()[how]();
    expect(boxOf()).toEqual(before);
    expect(undoName()).toBeUndefined();
  });

  test('goes on without being held while a distance is typed, and goes as far as that', () => {
    const [x, y] = place();
    const gesture = dragged();
    world.view.setState({ typing: startTyping('length', '2') });
    gesture.retype?.();
    expect(Math.hypot(place()[0] - x, place()[1] - y)).toBeCloseTo(2, 6);
    expect(gesture.end(hand([x + 3, y]))).toBe(gesture);
    expect(undoName()).toBeUndefined();
  });

  test('with Shift keeps to one axis', () => {
    const [x, y] = place();
    through(pressWithHand(world, hand([x, y])), hand([x + 3, y + 1], { shift: true, free: true }));
    expect(place()[0]).toBeCloseTo(x + 3, 6);
    expect(place()[1]).toBe(y);
  });
});

describe('a press', () => {
  test('that trembles chooses what is under it; on open ground nothing is chosen any more', () => {
    const at = hand(place());
    const tremble = { ...at, at: { px: at.at.px + 2, py: at.at.py + 2 } };
    const gesture = through(pressWithHand(world, at), tremble);
    expect(gesture.doing).toBe('pressing');
    gesture.end(tremble);
    expect(selected()).toEqual([D1.id]);
    pressWithHand(world, hand(OPEN)).end(hand(OPEN));
    expect(selected()).toEqual([]);
  });

  test('of a finger on what is not chosen pushes the drawing and moves nothing', () => {
    const before = boxOf();
    const [x, y] = place();
    const gesture = through(
      pressWithHand(world, hand([x, y], { isFinger: true, near: 18 })),
      hand([x + 3, y], { isFinger: true, near: 18 }),
    );
    expect(gesture.doing).toBe('panning');
    expect(boxOf()).toEqual(before);
    expect(selected()).toEqual([]);
  });

  test('dragged from open ground is a box, with Ctrl a path; both choose what lies within', () => {
    const [x, y] = place();
    const corners: Point2[] = [
      [x + 6, y - 6],
      [x + 6, y + 6],
      [x - 6, y + 6],
      [x - 6, y - 6],
    ];
    const band = through(pressWithHand(world, hand(OPEN)), hand([x - 1, y + 1]), hand([x - 1, y + 1]));
    expect(band.doing).toBe('boxing');
    expect(world.view.getState().band).not.toBeNull();
    band.end(hand([x - 1, y + 1]));
    expect(selected()).toContain(D1.id);
    expect(world.view.getState().band).toBeNull();

    world.document.getState().select([]);
    const [first, ...rest] = corners.map((corner) => hand(corner, { encircles: true }));
    const path = through(pressWithHand(world, first!), rest[0]!, ...rest);
    expect(world.view.getState().lasso.length).toBeGreaterThan(3);
    path.end(first!);
    expect(selected()).toContain(D1.id);
    expect(world.view.getState().lasso).toEqual([]);
  });
});

describe('the drawing', () => {
  test('stays under the hand that pushes it', () => {
    const at = on(OPEN);
    const to = { px: at.px + 70, py: at.py - 30 };
    panning(world.view, at).move({ ...hand(OPEN), at: to });
    const [x, y] = under(to);
    expect([x, y].map((each) => Number(each.toFixed(9)))).toEqual(OPEN);
  });

  test('stays under two fingers that pinch, and the one that stays pushes it on', () => {
    const fingers = new Map([
      [1, { px: 300, py: 300 }],
      [2, { px: 500, py: 300 }],
    ]);
    const [left, right] = [...fingers.values()].map(under);
    const gesture = pinching(world.view, fingers);
    fingers.set(1, { px: 250, py: 320 }).set(2, { px: 550, py: 320 });
    const pinched = gesture.move(hand(OPEN));
    expect(world.view.getState().camera.scale).toBeCloseTo(15, 9);
    for (const [finger, was] of [
      [1, left],
      [2, right],
    ] as const) {
      const [x, y] = under(fingers.get(finger)!);
      expect(x).toBeCloseTo(was![0], 9);
      expect(y).toBeCloseTo(was![1], 9);
    }
    fingers.delete(2);
    expect(pinched.end(hand(OPEN))?.doing).toBe('panning');
    fingers.delete(1);
    expect(pinched.end(hand(OPEN))).toBeNull();
  });
});

describe('a measurement', () => {
  const begun = (): Gesture => {
    world.measure.press(OPEN, { near: 0.8, free: true });
    return measuring(world, on(OPEN));
  };

  test('ends where a drag lets go; after a press it waits for the other end', () => {
    const to = hand([OPEN[0] + 5, OPEN[1]], { free: true });
    through(begun(), to).end(to);
    expect(world.view.getState().measureFrom).toBeNull();
    expect(world.view.getState().measured).not.toBeNull();
    begun().end(hand(OPEN));
    expect(world.view.getState().measureFrom).toEqual(OPEN);
  });

  test.each(['cancel', 'giveWay'] as const)('is thrown away by %s', (how) => {
    begun()[how]();
    expect(world.view.getState().measured).toBeNull();
    expect(world.view.getState().measureFrom).toBeNull();
  });
});

test('a hand in the middle of nothing shows what it would take, and changes nothing', () => {
  const { file } = world.document.getState();
  const idle = hovering(world);
  expect(idle.move(hand(place()))).toBe(idle);
  expect(world.view.getState().hovered?.id).toBe(D1.id);
  idle.move(hand(OPEN));
  expect(world.view.getState().hovered).toBeNull();
  expect(world.document.getState().file).toBe(file);
});
