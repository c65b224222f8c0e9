import type { Point2 } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { placeOnSite, type ScreenPoint } from '../../board/camera.ts';
import { TREMBLE } from '../../board/hand/gesture.ts';
import type { ViewStore } from '../../board/view-store.ts';
import type { DocumentStore } from '../../document/store.ts';
import type { PageStore } from '../../page-state/page-store.ts';
import { changeUnderlay } from '../underlay-edits.ts';
import { chosenLayer, chosenUnderlay, type Placing, type UnderlayStore } from '../underlay-store.ts';
import { underlaysOf } from '../underlays.ts';
import { inUnderlay, onSite, turnedAbout, turnToAxis } from './placement.ts';

interface PlacingWorld {
  readonly element: HTMLElement;
  readonly document: DocumentStore;
  readonly underlays: UnderlayStore;
  readonly view: ViewStore;
  readonly page: PageStore;
}

/** Pixels within which a point is taken from a vertex of the drawing. */
const NEAR = 10;

/** What to do next on the way of placing the underlay. */
export function nextStep(placing: Placing): string {
  if (placing.kind === 'move') return 'Drag the underlay to where it belongs.';
  if (placing.points.length === 1) return 'Click the second point.';
  if (placing.points.length === 2) return 'Type how far apart the two points are.';
  return placing.kind === 'scale'
    ? 'Click the first of two points whose distance you know.'
    : 'Click the first of two points that should lie along the drawing.';
}

/** Tells the foot line and those who listen what to do next. */
function tellHand({ view, page }: Pick<PlacingWorld, 'view' | 'page'>, placing: Placing | null): void {
  const asks = placing && nextStep(placing);
  view.setState({ asks });
  if (asks) page.setState({ spoken: asks });
}

/** Begins a way of placing the underlay, or ends it (null). While it lasts the hand pushes the drawing and picks no element. */
export function startPlacing(
  { underlays, view, page }: Omit<PlacingWorld, 'element' | 'document'>,
  placing: Placing | null,
): void {
  underlays.setState({ placing });
  tellHand({ view, page }, placing);
  view.setState({ tool: placing ? 'pan' : 'select', measured: null, measureFrom: null });
}

type OnUnderlay = Omit<PlacingWorld, 'element'>;

/** Shows the chosen underlay pushed from one place of the site to another, from where it lay before the hand took hold of it. */
function pushUnderlay({ document, underlays, view }: OnUnderlay, from: Point2, [x, y]: Point2): boolean {
  const { file } = document.getState().committed();
  const { chosen } = underlays.getState();
  const before = underlaysOf(toSite(file))[chosen];
  if (!before) return false;
  const to: Point2 = [before.at[0] + x - from[0], before.at[1] + y - from[1]];
  document.getState().preview(changeUnderlay(file, chosen, 'Move underlay', before, { at: to }));
  view.setState({ pointer: [x, y] });
  return true;
}

/** Takes a point that is picked; the second along the drawing turns the underlay. */
function pickPoint(world: OnUnderlay, placing: Extract<Placing, { kind: 'scale' | 'level' }>, point: Point2): void {
  const { document, underlays, view } = world;
  const points = placing.points.length >= 2 ? [point] : [...placing.points, point];
  const [a, b] = points;
  if (a && b && Math.hypot(a[0] - b[0], a[1] - b[1]) < 1e-6) return;
  underlays.setState({ placing: { ...placing, points } });
  tellHand(world, { ...placing, points });
  view.setState({ measured: a ? [a, b ?? a] : null });
  if (placing.kind !== 'level' || !a || !b) return;
  const { file, site, apply } = document.getState();
  const underlay = chosenUnderlay(site, underlays.getState());
  const turned = underlay && turnedAbout(underlay, a, turnToAxis(a, b));
  if (turned) apply(changeUnderlay(file, underlays.getState().chosen, 'Turn underlay', underlay, turned));
  startPlacing(world, null);
}

/** A vertex of the underlay's drawing that is near a point of the site, else the point itself. */
function vertexNear({ document, underlays, view }: OnUnderlay, point: Point2): Point2 {
  const underlay = chosenUnderlay(document.getState().site, underlays.getState());
  const picture = chosenLayer(underlays.getState())?.picture;
  if (!underlay || !picture?.lines) return point;
  const [u, v] = inUnderlay(underlay, point);
  const { xy } = picture.lines;
  let best = -1;
  let least = (NEAR / view.getState().camera.scale / underlay.scale) ** 2;
  for (let i = 0; i < xy.length; i += 2) {
    const off = (xy[i]! - u) ** 2 + (xy[i + 1]! - v) ** 2;
    if (off < least) {
      least = off;
      best = i;
    }
  }
  return best < 0 ? point : onSite(underlay, [xy[best]!, xy[best + 1]!]);
}

/** Ends the placing when another action is taken up on the tool bar, and marks the element while it lasts. */
function followPlacing({ element, underlays, view, page }: Omit<PlacingWorld, 'document'>): () => void {
  const stopView = view.subscribe(({ tool }, before) => {
    if (tool !== before.tool && tool !== 'pan' && underlays.getState().placing) {
      underlays.setState({ placing: null });
      view.setState({ measured: null });
      tellHand({ view, page }, null);
    }
  });
  const stopPlacing = underlays.subscribe(({ placing }) => {
    if (placing) element.dataset.placing = placing.kind;
    else delete element.dataset.placing;
  });
  return () => {
    stopView();
    stopPlacing();
  };
}

/** Lets the hand move the underlay and pick points on it; returns the way to stop. */
export function attachPlacing(world: PlacingWorld): () => void {
  const { element, document, underlays, view } = world;
  let pressed: { readonly at: ScreenPoint; readonly id: number } | null = null;
  let moving: { readonly from: Point2; readonly id: number } | null = null;

  const at = (event: PointerEvent): ScreenPoint => {
    const box = element.getBoundingClientRect();
    return { px: event.clientX - box.left, py: event.clientY - box.top };
  };
  const inSite = (point: ScreenPoint): Point2 => placeOnSite(view.getState().camera, view.getState().viewport, point);

  const down = (event: PointerEvent): void => {
    const { placing } = underlays.getState();
    if (!placing || event.button !== 0) return;
    if (placing.kind === 'move') {
      if (moving) return;
      moving = { from: inSite(at(event)), id: event.pointerId };
      element.setPointerCapture(event.pointerId);
      event.stopImmediatePropagation();
    } else pressed = { at: at(event), id: event.pointerId };
  };
  const move = (event: PointerEvent): void => {
    const { placing } = underlays.getState();
    if (moving?.id === event.pointerId) {
      if (pushUnderlay(world, moving.from, inSite(at(event)))) event.stopImmediatePropagation();
    } else if (placing && placing.kind !== 'move' && placing.points.length === 1)
      view.setState({ measured: [placing.points[0]!, vertexNear(world, inSite(at(event)))] });
  };
  const up = (event: PointerEvent): void => {
    if (moving?.id === event.pointerId) {
      moving = null;
      document.getState().commitPreview();
      event.stopImmediatePropagation();
      return;
    }
    const { placing } = underlays.getState();
    const point = at(event);
    const still =
      pressed?.id === event.pointerId && Math.hypot(point.px - pressed.at.px, point.py - pressed.at.py) < TREMBLE * 2;
    pressed = null;
    if (still && placing && placing.kind !== 'move') pickPoint(world, placing, vertexNear(world, inSite(point)));
  };
  const cancel = (): void => {
    if (moving) document.getState().cancelPreview();
    moving = null;
    pressed = null;
  };
  const stopAtEscape = (event: KeyboardEvent): void => {
    if (event.key !== 'Escape' || !underlays.getState().placing) return;
    cancel();
    startPlacing(world, null);
  };

  const stop = new AbortController();
  const first = { signal: stop.signal, capture: true };
  element.addEventListener('pointerdown', down, first);
  element.addEventListener('pointermove', move, first);
  element.addEventListener('pointerup', up, first);
  element.addEventListener('pointercancel', cancel, first);
  window.addEventListener('keydown', stopAtEscape, first);
  const stopFollowing = followPlacing(world);
  return () => {
    stop.abort();
    stopFollowing();
  };
}
