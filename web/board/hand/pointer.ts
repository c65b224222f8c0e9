import type { ScreenPoint } from '../camera.ts';
import { isDrawTool } from '../draw/tool-names.ts';
import { takeTyped, type } from '../draw/typed-in.ts';
import { FIGURE, startTyping } from '../typed/typing.ts';
import { boardCorner } from './board-corner.ts';
import type { Gesture } from './gesture.ts';
import { aiming } from './gestures/aiming.ts';
import { drawing } from './gestures/drawing.ts';
import { hovering } from './gestures/hovering.ts';
import { measuring } from './gestures/measuring.ts';
import { panning } from './gestures/panning.ts';
import { pinching } from './gestures/pinching.ts';
import { pressWithHand } from './gestures/press.ts';
import { clearAway, type Hand, handOf, handPoint, siteAt } from './hand.ts';
import type { GestureWorld, HandWorld } from './hand-world.ts';
import { keyOf } from './key-of.ts';
import { measureHand } from './measure-hand.ts';

/** Lets the pointer, one finger or two, work on the board; returns the way to stop. */
export function attachPointer(board: HandWorld): () => void {
  const { element, view, scene } = board;
  const world: GestureWorld = { ...board, measure: measureHand(view, scene) };
  const corner = boardCorner(element);
  const fingers = new Map<number, ScreenPoint>();
  const idle = hovering(world);
  let gesture: Gesture = idle;
  let space = false;

  const become = (next: Gesture): void => {
    gesture = next;
    corner.hold(next !== idle);
    const { doing } = next;
    if (view.getState().doing !== doing) view.setState({ doing });
  };

  const down = (event: PointerEvent): void => {
    const hand = handOf(event, corner.at(event));
    fingers.set(event.pointerId, hand.at);
    held(element, event.pointerId);
    if (fingers.size === 2) {
      gesture.giveWay();
      clearAway(view);
      become(pinching(view, fingers));
      return;
    }
    if (gesture.retype && view.getState().typing) takeTyped(world);
    if (gesture !== idle) return;
    const pushes = event.button === 1 || event.button === 2 || space;
    become(pushes ? panning(view, hand.at) : begun(world, hand));
  };
  const move = (event: PointerEvent): void => {
    const hand = handOf(event, corner.at(event));
    if (fingers.has(event.pointerId)) fingers.set(event.pointerId, hand.at);
    become(gesture.move(hand));
  };
  const up = (event: PointerEvent): void => {
    fingers.delete(event.pointerId);
    become(gesture.end(handOf(event, corner.at(event))) ?? idle);
  };
  const cancel = (): void => {
    const was = gesture;
    fingers.clear();
    become(idle);
    was.cancel();
    clearAway(view);
  };
  const leave = (): void => {
    if (gesture === idle) view.setState({ pointer: null, hovered: null });
  };

  const keyInHand = (event: KeyboardEvent): void => {
    const key = keyOf(event);
    if (key === 'Escape' && gesture !== idle) cancel();
    else if (gesture.retype && !view.getState().typing && (FIGURE.test(key) || key === 't')) {
      type(world, key === 't' ? startTyping('x') : startTyping('length', key));
      event.preventDefault();
    } else return;
    event.stopImmediatePropagation();
  };
  const typedAnew = view.subscribe((now, was) => {
    if (!gesture.retype || now.typing === was.typing) return;
    if (now.typing) gesture.retype();
    else {
      become(idle);
      view.setState({ guides: [] });
    }
  });
  const spaceBar = (event: KeyboardEvent): void => {
    if (event.key !== ' ') return;
    event.preventDefault();
    space = event.type === 'keydown';
  };
  const noMenu = (event: Event): void => event.preventDefault();

  const stop = new AbortController();
  const { signal } = stop;
  element.addEventListener('pointerdown', down, { signal });
  element.addEventListener('pointermove', move, { signal });
  element.addEventListener('pointerup', up, { signal });
  element.addEventListener('pointercancel', cancel, { signal });
  element.addEventListener('pointerleave', leave, { signal });
  element.addEventListener('contextmenu', noMenu, { signal });
  element.addEventListener('keydown', spaceBar, { signal });
  element.addEventListener('keyup', spaceBar, { signal });
  window.addEventListener('keydown', keyInHand, { signal, capture: true });
  return () => {
    stop.abort();
    corner.stop();
    typedAnew();
  };
}

/** Has all that a pointer does come to the board; a finger whose press was kept may have gone by now. */
function held(element: HTMLElement, pointer: number): void {
  try {
    element.setPointerCapture(pointer);
  } catch (error) {
    if (!(error instanceof DOMException && error.name === 'NotFoundError')) throw error;
  }
}

/** What a press with the tool in the hand begins. */
function begun(world: GestureWorld, hand: Hand): Gesture {
  const { view, draw, measure } = world;
  const { tool } = view.getState();
  if (tool === 'pan') return panning(view, hand.at);
  const place = siteAt(view, hand.at);
  if (isDrawTool(tool)) {
    if (hand.isFinger) return aiming(world, { from: hand.at, place, moved: false });
    draw.press(place, handPoint(view, hand));
    return drawing(world, hand.at);
  }
  if (tool === 'measure') {
    measure.press(place, handPoint(view, hand));
    return measuring(world, hand.at);
  }
  return pressWithHand(world, hand);
}
