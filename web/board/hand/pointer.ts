import type { Point2 } from '../../../routing/site/site.ts';
import { moveElements } from '../../document/edits/move.ts';
import type { Ref } from '../../document/element-lists.ts';
import { keepsDrawing } from '../../document/field-work.ts';
import type { DocumentStore } from '../../document/store.ts';
import { pushed, type ScreenPoint, toSite, zoomed } from '../camera.ts';
import type { DrawHand, Point } from '../draw/draw-hand.ts';
import { FIGURE } from '../draw/draw-keys.ts';
import { takeTyped, type } from '../draw/drawing.ts';
import { isDrawTool } from '../draw/tool-names.ts';
import { startTyping, typedPlace } from '../draw/typing.ts';
import { type Passing, pickAt, pickIn, pickWithin } from '../scene/pick.ts';
import type { Scene } from '../scene/scene.ts';
import { snapAt } from '../snap/snap-at.ts';
import type { ViewStore } from '../view-store.ts';
import { anchorOf, RIDES } from './anchor.ts';
import { boardCorner } from './board-corner.ts';
import { type Gesture, IDLE, TREMBLE } from './gesture.ts';
import { handleOnScreen, handlesOf } from './handles.ts';
import { keyOf } from './key-of.ts';
import { type Measuring, measuring } from './measuring.ts';

export interface HandWorld {
  readonly element: HTMLElement;
  readonly document: DocumentStore;
  readonly view: ViewStore;
  readonly scene: () => Scene;
  readonly draw: DrawHand;
}

/** Pixels within which the hand takes hold of a thing, or is drawn to a line. */
const NEAR = { mouse: 8, pen: 8, touch: 18 } as const;
const nearOf = ({ pointerType }: PointerEvent): number => NEAR[pointerType as keyof typeof NEAR] ?? NEAR.mouse;

/** With Ctrl held the hand draws a path round what it takes, whatever it begins on. */
const encircles = (event: PointerEvent): boolean => event.ctrlKey || event.metaKey;

/** Lets the pointer, one finger or two, work on the board; returns the way to stop. */
export function attachPointer(world: HandWorld): () => void {
  const { element, document, view, scene, draw } = world;
  let gesture: Gesture = IDLE;
  const fingers = new Map<number, ScreenPoint>();
  let space = false;
  /** Moves what is dragged anew, once something else is typed. */
  let dragAnew = (): void => {};

  const corner = boardCorner(element);
  const { at } = corner;
  const measure: Measuring = measuring(view, scene);
  const inSite = (point: ScreenPoint): Point2 => toSite(view.getState().camera, view.getState().viewport, point);
  const passing = (): Passing => {
    const { hiddenKinds, lockedKinds } = view.getState();
    return lockedKinds.size === 0 ? hiddenKinds : new Set([...hiddenKinds, ...lockedKinds]);
  };
  const pointing = (event: PointerEvent): Point => ({
    near: nearOf(event) / view.getState().camera.scale,
    free: event.altKey,
  });
  const become = (next: Gesture): void => {
    gesture = next;
    corner.hold(next.kind !== 'idle');
    const doing = DOING[next.kind];
    if (view.getState().doing !== doing) view.setState({ doing });
  };

  const down = (event: PointerEvent): void => {
    const point = at(event);
    fingers.set(event.pointerId, point);
    element.setPointerCapture(event.pointerId);
    if (fingers.size === 2) {
      // A first finger that moved or drew something did so only because the second came later.
      if (gesture.kind === 'dragging') document.getState().cancelPreview();
      else if (gesture.kind === 'aiming' || gesture.kind === 'drawing') draw.liftOff(gesture.kind === 'drawing');
      else if (gesture.kind === 'measuring') measure.stop();
      const [a, b] = [...fingers.values()];
      view.setState({ band: null, lasso: [], guides: [] });
      become({ kind: 'pinching', last: [a!, b!] });
      return;
    }
    if (gesture.kind === 'dragging' && view.getState().typing) takeTyped(world);
    if (gesture.kind !== 'idle') return;
    const { tool } = view.getState();
    if (event.button === 1 || event.button === 2 || tool === 'pan' || space) become({ kind: 'panning', last: point });
    else if (isDrawTool(tool) && event.pointerType === 'touch') {
      become({ kind: 'aiming', from: point, at: inSite(point), moved: false });
    } else if (isDrawTool(tool)) {
      draw.press(inSite(point), pointing(event));
      become({ kind: 'drawing', from: point });
    } else if (tool === 'measure') {
      measure.press(inSite(point), pointing(event));
      become({ kind: 'measuring', from: point });
    } else press(event, point);
  };

  const press = (event: PointerEvent, point: ScreenPoint): void => {
    const { camera, viewport } = view.getState();
    const { site, selection, select } = document.getState();
    const near = nearOf(event);
    const here = inSite(point);
    const keeps = keepsDrawing(document.getState());
    const handle = (keeps ? [] : handlesOf(site, selection, camera.scale)).find((each) => {
      const shown = handleOnScreen(each, camera, viewport);
      return Math.hypot(shown.px - point.px, shown.py - point.py) <= near;
    });
    if (handle && !encircles(event)) {
      select([handle.ref]);
      become({
        kind: 'pressing',
        from: point,
        at: here,
        refs: [handle.ref],
        anchor: [handle.at[0], handle.at[1]],
        alone: null,
        adds: false,
      });
      return;
    }
    const adds = event.shiftKey;
    const ref = pickAt(scene(), here, near / camera.scale, passing());
    if (!ref || encircles(event)) {
      become({ kind: 'pressing', from: point, at: here, refs: null, anchor: null, alone: null, adds });
      return;
    }
    const held = selection.some(({ list, id }) => list === ref.list && id === ref.id);
    if (!held && GROUND.has(ref.list)) {
      // A lot is all stalls: what is drawn from one is a box, and it is chosen when the hand lets go where it pressed.
      become({ kind: 'pressing', from: point, at: here, refs: null, anchor: null, alone: ref, adds });
      return;
    }
    // A finger moves only what it has chosen before: else a swipe across the drawing would carry a drop along.
    const moves = !keeps && (event.pointerType !== 'touch' || held);
    if (adds) select([ref], 'toggle');
    // Nor does it choose before it lifts: it may yet push or pinch the drawing.
    else if (!held && moves) select([ref]);
    const refs =
      moves && !(adds && held) ? document.getState().selection.map(({ list, id }): Ref => ({ list, id })) : null;
    become({
      kind: 'pressing',
      from: point,
      at: here,
      refs,
      anchor: anchorOf(site, ref),
      alone: adds ? null : ref,
      adds,
    });
  };

  const move = (event: PointerEvent): void => {
    const point = at(event);
    if (fingers.has(event.pointerId)) fingers.set(event.pointerId, point);
    if (gesture.kind === 'idle') hover(event, point);
    else if (gesture.kind === 'panning') {
      const { camera } = view.getState();
      view.setState({ camera: pushed(camera, point.px - gesture.last.px, point.py - gesture.last.py) });
      become({ kind: 'panning', last: point });
    } else if (gesture.kind === 'pinching') pinch();
    else if (gesture.kind === 'lassoing') {
      const here = inSite(point);
      view.setState({ lasso: [...view.getState().lasso, here], pointer: here });
    } else if (gesture.kind === 'aiming') aim(event, point, gesture);
    else if (gesture.kind === 'drawing') draw.hover(inSite(point), pointing(event));
    else if (gesture.kind === 'measuring') measure.hover(inSite(point), pointing(event));
    else if (gesture.kind === 'boxing') {
      const [x, y] = inSite(point);
      const [fx, fy] = gesture.from;
      const band = { minX: Math.min(x, fx), minY: Math.min(y, fy), maxX: Math.max(x, fx), maxY: Math.max(y, fy) };
      view.setState({ band, pointer: [x, y] });
    } else if (gesture.kind === 'dragging') drag(event, point, gesture);
    else if (Math.hypot(point.px - gesture.from.px, point.py - gesture.from.py) >= TREMBLE)
      setOff(event, point, gesture);
  };

  /** A finger that draws sets its place where it lifts; only where it drags out a line or a rectangle, where it began. */
  const aim = (event: PointerEvent, point: ScreenPoint, held: Extract<Gesture, { kind: 'aiming' }>): void => {
    const { from } = held;
    if (!held.moved && Math.hypot(point.px - from.px, point.py - from.py) < TREMBLE) return;
    if (draw.drags()) {
      draw.press(held.at, pointing(event));
      become({ kind: 'drawing', from });
    } else become({ ...held, moved: true });
    draw.hover(inSite(point), pointing(event));
  };

  /** A press that has moved becomes a drag, a push of the drawing, or a box. */
  const setOff = (event: PointerEvent, point: ScreenPoint, press: Extract<Gesture, { kind: 'pressing' }>): void => {
    if (press.refs && press.anchor) {
      become({ kind: 'dragging', from: press.at, refs: press.refs, anchor: press.anchor });
      view.setState({ hovered: null });
      move(event);
    } else if (event.pointerType === 'touch') become({ kind: 'panning', last: point });
    else if (encircles(event)) {
      view.setState({ lasso: [press.at] });
      become({ kind: 'lassoing', adds: press.adds });
    } else become({ kind: 'boxing', from: press.at, adds: press.adds });
  };

  const drag = (event: PointerEvent, point: ScreenPoint, held: Extract<Gesture, { kind: 'dragging' }>): void => {
    const { camera } = view.getState();
    const [x, y] = inSite(point);
    let dx = x - held.from[0];
    let dy = y - held.from[1];
    const alongX = event.shiftKey && Math.abs(dx) >= Math.abs(dy);
    const alongY = event.shiftKey && !alongX;
    if (alongX) dy = 0;
    if (alongY) dx = 0;
    const wanted: Point2 = [held.anchor[0] + dx, held.anchor[1] + dy];
    const near = nearOf(event) / camera.scale;
    const free = event.altKey;
    const found = free
      ? { at: wanted, guides: [] }
      : snapAt(scene(), view.getState(), {
          at: wanted,
          near,
          moving: held.refs,
          grounded: !held.refs.some(({ list }) => RIDES.has(list)),
        });
    const { typing } = view.getState();
    const typed = typing && typedPlace(typing, held.anchor, found.at, scene().units);
    const to: Point2 = typed ?? [alongY ? held.anchor[0] : found.at[0], alongX ? held.anchor[1] : found.at[1]];
    const { committed, preview } = document.getState();
    preview(moveElements(committed().file, held.refs, to[0] - held.anchor[0], to[1] - held.anchor[1]));
    view.setState({ pointer: to, guides: typed ? [] : found.guides });
    dragAnew = () => drag(event, point, held);
  };

  const hover = (event: PointerEvent, point: ScreenPoint): void => {
    const state = view.getState();
    const pointer = inSite(point);
    if (isDrawTool(state.tool)) {
      draw.hover(pointer, pointing(event));
      return;
    }
    if (state.measureFrom) {
      measure.hover(pointer, pointing(event));
      return;
    }
    const ref =
      state.tool === 'select' ? pickAt(scene(), pointer, nearOf(event) / state.camera.scale, passing()) : null;
    const same = ref?.id === state.hovered?.id && ref?.list === state.hovered?.list;
    view.setState(same ? { pointer } : { pointer, hovered: ref });
  };

  const pinch = (): void => {
    if (gesture.kind !== 'pinching') return;
    const [a, b] = [...fingers.values()];
    if (!a || !b) return;
    const [c, d] = gesture.last;
    const { camera, viewport } = view.getState();
    const middle = { px: (a.px + b.px) / 2, py: (a.py + b.py) / 2 };
    const before = { px: (c.px + d.px) / 2, py: (c.py + d.py) / 2 };
    const spread = Math.hypot(a.px - b.px, a.py - b.py) / (Math.hypot(c.px - d.px, c.py - d.py) || 1);
    const moved = pushed(camera, middle.px - before.px, middle.py - before.py);
    view.setState({ camera: zoomed(moved, viewport, middle, spread) });
    become({ kind: 'pinching', last: [a, b] });
  };

  const up = (event: PointerEvent): void => {
    fingers.delete(event.pointerId);
    const { select, commitPreview } = document.getState();
    switch (gesture.kind) {
      case 'pinching':
        // The finger that stays goes on pushing the drawing.
        if (fingers.size === 1) {
          become({ kind: 'panning', last: [...fingers.values()][0]! });
          return;
        }
        break;
      case 'dragging':
        // Whoever types how far goes on without holding it.
        if (view.getState().typing) return;
        commitPreview();
        break;
      case 'lassoing':
        select(pickWithin(scene(), view.getState().lasso, passing()), gesture.adds ? 'add' : 'replace');
        break;
      case 'aiming': {
        const { moved, at: where } = gesture;
        become(IDLE);
        draw.press(moved ? inSite(at(event)) : where, pointing(event));
        return;
      }
      case 'drawing': {
        const { px, py } = at(event);
        const { from } = gesture;
        become(IDLE);
        if (Math.hypot(px - from.px, py - from.py) >= TREMBLE) draw.letGo();
        return;
      }
      case 'measuring': {
        const { px, py } = at(event);
        if (Math.hypot(px - gesture.from.px, py - gesture.from.py) >= TREMBLE) measure.end();
        break;
      }
      case 'boxing': {
        const { band } = view.getState();
        if (band) select(pickIn(scene(), band, passing()), gesture.adds ? 'add' : 'replace');
        break;
      }
      case 'pressing':
        if (gesture.alone) {
          select([gesture.alone], gesture.adds ? 'toggle' : 'replace');
        } else if (!gesture.refs && !gesture.adds) select([]);
        break;
    }
    view.setState({ band: null, lasso: [], guides: [] });
    become(IDLE);
  };

  const cancel = (): void => {
    const was = gesture.kind;
    fingers.clear();
    become(IDLE);
    if (was === 'dragging') type(world, null);
    else if (was === 'aiming') draw.liftOff(false);
    else if (was === 'measuring') measure.stop();
    view.setState({ band: null, lasso: [], guides: [] });
  };
  const keyInHand = (event: KeyboardEvent): void => {
    const key = keyOf(event);
    if (key === 'Escape' && gesture.kind !== 'idle') cancel();
    else if (gesture.kind === 'dragging' && !view.getState().typing && (FIGURE.test(key) || key === 't')) {
      type(world, key === 't' ? startTyping('x') : startTyping('length', key));
      event.preventDefault();
    } else return;
    event.stopImmediatePropagation();
  };
  const typedAnew = view.subscribe((now, was) => {
    if (gesture.kind !== 'dragging' || now.typing === was.typing) return;
    if (now.typing) dragAnew();
    else {
      become(IDLE);
      view.setState({ guides: [] });
    }
  });
  const leave = (): void => {
    if (gesture.kind === 'idle') view.setState({ pointer: null, hovered: null });
  };
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

/** What lies under everything else, and is moved only once it has been chosen. */
const GROUND: ReadonlySet<Ref['list']> = new Set(['stalls', 'aisles', 'keepouts', 'members']);

const DOING = {
  idle: 'nothing',
  pressing: 'pressing',
  panning: 'panning',
  pinching: 'panning',
  dragging: 'dragging',
  boxing: 'boxing',
  measuring: 'measuring',
  aiming: 'drawing',
  drawing: 'drawing',
  lassoing: 'boxing',
} as const;
