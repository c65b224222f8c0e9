import { stallCoverage } from '../../../calc/plan/stall-coverage.ts';
import { poundsByMember } from '../../../calc/steel/load-steps.ts';
import { boxesMeet } from '../../../routing/plane/box.ts';
import { positionsIn } from '../../../routing/plane/box-index.ts';
import { positionsOf } from '../../document/change/element-lists.ts';
import type { DocumentState } from '../../document/document-state.ts';
import { ifCounted, onCounted } from '../../document/planning.ts';
import type { DocumentStore } from '../../document/store.ts';
import { boxInView } from '../camera.ts';
import { type BoardPen, boardFrame, type Frame } from '../pictures/frame.ts';
import { SYMBOLS_FROM } from '../pictures/stalls/drops.ts';
import { MARGINS_FROM, sameBars } from '../pictures/stalls/margin-bars.ts';
import type { RaisedView } from '../raised-view.ts';
import { type MarksByList, marksNotIn } from '../scene/differ.ts';
import { dropsWithChangedResults } from '../scene/faring.ts';
import type { SceneMark } from '../scene/mark.ts';
import { marksOf, type Scene, type SceneList, sceneOf } from '../scene/scene.ts';
import { signOf } from '../scene/sign.ts';
import type { ViewState, ViewStore } from '../view-store.ts';
import type { BoardInk } from './ink.ts';

/** What a picture may ask of the board that it is drawn on: of the one on the screen, on paper, or in a test. */
export interface PictureBoard {
  /** The scene that the base draws; during a drag the one from before it. */
  readonly base: () => Scene;
  /** Marks that have left the base because the hand moves them, or what follows from it. */
  readonly hidden: () => ReadonlySet<SceneMark>;
  /** Whether the person has this kind shown; runs go with their raceways. */
  readonly shows: (list: SceneList) => boolean;
  readonly frame: (chosen?: boolean) => Frame;
  /** Of each stall that is to be shaded, its coverage; null where stalls are not shaded. */
  readonly shading: () => ReadonlyMap<string, number> | null;
  /** Of each member that is to be colored, the pounds that it carries; null where members are not colored. */
  readonly loads: () => ReadonlyMap<string, number> | null;
  /** What draws the heights over the plan; null where the board is not raised. */
  readonly raised: () => RaisedView | null;
  /** What lies under the drawing, and who draws it; null where nothing does. */
  readonly underlay: () => DrawUnder | null;
}

/**
 * What is on the board at the moment, outside React: the picture that stands still (base), what moves over it (live),
 * and who wants to hear when either must be drawn anew.
 */
export interface Painting extends PictureBoard {
  /** The scene of the document as shown, previewed edit included. */
  readonly scene: () => Scene;
  /** Marks of the shown scene that the base does not draw. */
  readonly moving: () => MarksByList;
  readonly setInk: (ink: BoardInk) => void;
  readonly setUnderlay: (draw: DrawUnder | null) => void;
  readonly onDraw: (draw: (what: 'base' | 'live') => void) => () => void;
  /** Asks for both layers to be drawn, as when the lettering has come. */
  readonly redraw: () => void;
  readonly close: () => void;
}

/** Draws what lies under everything else; returns how many pictures that took. */
export type DrawUnder = (pen: BoardPen, frame: Frame) => number;

const LIVE_VIEW = [
  'camera',
  'viewport',
  'hovered',
  'guides',
  'band',
  'measured',
  'draft',
  'draftWords',
  'draftMarks',
  'lasso',
  'hiddenKinds',
  'pin',
  'raisedView',
  'reachPicture',
  'marginBars',
  'charging',
] as const satisfies (keyof ViewState)[];
const NOTHING: ReadonlySet<SceneMark> = new Set();
const NO_MARKS: MarksByList = {};

export function createPainting(document: DocumentStore, view: ViewStore, ink: BoardInk): Painting {
  let inks = ink;
  let under: DrawUnder | null = null;
  let shown = sceneFor(document.getState());
  let base = shown;
  let hidden: ReadonlySet<SceneMark> = NOTHING;
  let moving: MarksByList = NO_MARKS;
  const listeners = new Set<(what: 'base' | 'live') => void>();
  const tell = (what: 'base' | 'live'): void => {
    for (const listener of listeners) listener(what);
  };

  const follow = (state: DocumentState, before: DocumentState): void => {
    const wasShown = shown;
    if (state.site !== before.site || state.plan !== before.plan) shown = sceneFor(state, shown);
    if (state.previewed) {
      moving = marksNotIn(shown, base);
      // What has left the base stays away until the hand lets go, so that the base is drawn once and not at each step.
      const leaving = Object.values(marksNotIn(base, shown)).flat();
      if (leaving.some((mark) => !hidden.has(mark))) {
        hidden = new Set([...hidden, ...leaving]);
        tell('base');
      }
      // What others are said to fare is written on the base: it is drawn anew where that changes in view.
      if (signsChanged(wasShown, shown, base, view.getState())) tell('base');
      // A mark that comes back to what it was is drawn by the live layer as long as the base leaves it out.
      moving = withHidden(moving, base, shown, hidden);
    } else if (base !== shown || hidden.size > 0) {
      base = shown;
      hidden = NOTHING;
      moving = NO_MARKS;
      tell('base');
    }
    if (
      state.site !== before.site ||
      state.plan !== before.plan ||
      state.previewed !== before.previewed ||
      state.selection !== before.selection ||
      state.station !== before.station
    )
      tell('live');
    if (state.station !== before.station) tell('base');
  };
  const stopCounted = onCounted(() => tell('base'));
  const stopDocument = document.subscribe(follow);
  const stopView = view.subscribe((state, before) => {
    if (state.camera !== before.camera || state.viewport !== before.viewport) tell('base');
    if (state.hiddenKinds !== before.hiddenKinds) tell('base');
    if ((state.underBox === null) !== (before.underBox === null)) tell('base');
    if (state.memberLoads !== before.memberLoads || state.raisedView !== before.raisedView) tell('base');
    if (state.charging !== before.charging) tell('base');
    if (state.coverage !== before.coverage || state.marginBars !== before.marginBars) tell('base');
    if (LIVE_VIEW.some((part) => state[part] !== before[part])) tell('live');
  });

  return {
    scene: () => shown,
    base: () => base,
    hidden: () => hidden,
    moving: () => moving,
    shows: (list) => !view.getState().hiddenKinds.has(list === 'runs' ? 'raceways' : list),
    frame: (chosen = false) => {
      const { camera, viewport, marginBars, charging, underBox } = view.getState();
      const { station } = document.getState();
      // A person who prices it has other words beside the drops.
      return boardFrame(
        camera,
        viewport,
        inks,
        {
          scene: shown,
          station,
          margins: marginBars && station !== 'price' && charging === null,
          charging,
          overPicture: underBox !== null,
        },
        chosen,
      );
    },
    shading: () =>
      view.getState().coverage && document.getState().station === 'layout' ? stallCoverage(base.plan.reach) : null,
    loads: () => {
      if (!view.getState().memberLoads || document.getState().station !== 'layout') return null;
      const plan = ifCounted(base.plan);
      return plan && poundsByMember(plan.hung);
    },
    raised: () => view.getState().raisedView,
    underlay: () => under,
    setUnderlay: (draw) => {
      under = draw;
      tell('base');
    },
    setInk: (next) => {
      inks = next;
      tell('base');
      tell('live');
    },
    onDraw: (draw) => {
      listeners.add(draw);
      return () => listeners.delete(draw);
    },
    redraw: () => {
      tell('base');
      tell('live');
    },
    close: () => {
      stopCounted();
      stopDocument();
      stopView();
    },
  };
}

/**
 * Whether a drop in view that the base draws fares otherwise than it did; from so far off that no signs are drawn,
 * none does.
 */
function signsChanged(was: Scene, now: Scene, base: Scene, { camera, viewport, marginBars }: ViewState): boolean {
  if (was === now || camera.scale < SYMBOLS_FROM) return false;
  const barsToo = marginBars && camera.scale >= MARGINS_FROM;
  const seen = boxInView(camera, viewport);
  const places = positionsOf(now.site.drops);
  for (const id of dropsWithChangedResults(was, now)) {
    const place = places.get(id);
    const mark = place === undefined ? undefined : now.drops.items[place];
    if (!mark || mark !== base.drops.items[place!] || !boxesMeet(mark, seen)) continue;
    const [a, b] = [signOf(was, id), signOf(now, id)];
    if (a.severity !== b.severity || a.short !== b.short || (barsToo && !sameBars(was, now, id))) return true;
  }
  return false;
}

const sceneFor = ({ site, plan }: DocumentState, last?: Scene): Scene => sceneOf(site, plan, last);

function withHidden(moving: MarksByList, base: Scene, shown: Scene, hidden: ReadonlySet<SceneMark>): MarksByList {
  const lists: { [L in SceneList]?: readonly SceneMark[] } = { ...moving };
  for (const mark of hidden) {
    const { list } = mark;
    const still: readonly SceneMark[] = shown[list].items;
    if (base[list].items === still || still.includes(mark)) lists[list] = [...(lists[list] ?? []), mark];
  }
  return lists;
}

/** The marks of a list that are in view and that the base draws. */
export function marksInView<L extends SceneList>(
  scene: Scene,
  list: L,
  box: Frame['box'],
  hidden: ReadonlySet<SceneMark>,
): Scene[L]['items'] {
  const index = marksOf(scene, list);
  const found: SceneMark[] = [];
  for (const i of positionsIn(index, box)) {
    const mark = index.items[i]!;
    if (!hidden.has(mark)) found.push(mark);
  }
  return found as unknown as Scene[L]['items'];
}
