import { createContext, useContext } from 'react';
import { useStore } from 'zustand';
import { createStore, type StoreApi } from 'zustand/vanilla';
import type { Plan } from '../../calc/plan/plan-shape.ts';
import type { Box } from '../../routing/plane/box.ts';
import type { Point2 } from '../../routing/site/site.ts';
import type { ListName, Ref } from '../document/change/element-lists.ts';
import type { Camera, Viewport } from './camera.ts';
import type { DropCharging } from './charging.ts';
import type { BoardDraft } from './draw/draft.ts';
import { FIRST_DRAW_OPTIONS } from './draw/tool-names.ts';
import type { DrawOptions, DrawToolName } from './kinds/kinds.ts';
import type { RaisedView } from './raised-view.ts';
import type { MarksByList } from './scene/differ.ts';
import type { Guide } from './snap/guide.ts';
import type { SnapKind } from './snap/kinds.ts';
import type { Typing } from './typed/typing.ts';

export const TOOLS = ['select', 'pan', 'measure'] as const;
/** What the hand does on the board. */
export type Tool = (typeof TOOLS)[number] | DrawToolName;

/** What the board shows of the site beyond the site itself. Never part of the saved file. */
export interface ViewState {
  readonly camera: Camera;
  readonly viewport: Viewport;
  readonly tool: Tool;
  /** Where the pointer is, feet, after snapping where it moves something. */
  readonly pointer: Point2 | null;
  readonly hovered: Ref | null;
  /** What the hand is doing, in a word for the foot line. */
  readonly doing: 'nothing' | 'pressing' | 'panning' | 'boxing' | 'dragging' | 'measuring' | 'drawing';
  readonly guides: readonly Guide[];
  /** Kinds of places that the hand is not drawn to. */
  readonly snapsOff: ReadonlySet<SnapKind>;
  /** Lists whose elements are not shown, and those that the hand leaves alone. */
  readonly hiddenKinds: ReadonlySet<ListName>;
  readonly lockedKinds: ReadonlySet<ListName>;
  /** The box of what lies under the drawing, where that is shown. */
  readonly underBox: Box | null;
  readonly band: Box | null;
  /** The path that is drawn round what is to be selected; empty where none is. */
  readonly lasso: readonly Point2[];
  /** What is being drawn, what is said of it beside the hand, and what is being typed. */
  readonly draft: BoardDraft | null;
  readonly draftWords: readonly string[];
  readonly typing: Typing | null;
  /** What is being drawn on a site so large that its plan is made only when it is set. */
  readonly draftMarks: MarksByList | null;
  /** The takeoff without what is being drawn, to tell what that adds. */
  readonly draftOver: Plan['takeoff'] | null;
  /** What the forms of the drawing actions hold. */
  readonly drawOptions: DrawOptions;
  readonly measured: readonly [Point2, Point2] | null;
  /** Where a measurement began whose other end is not given yet. */
  readonly measureFrom: Point2 | null;
  /** What a panel asks the hand to do next, for the foot line; null where it is the tool's own advice. */
  readonly asks: string | null;
  /** Whether the stalls are shaded by how much of them is in reach. */
  readonly coverage: boolean;
  /** Whether beams and purlins are colored by what they carry. */
  readonly memberLoads: boolean;
  /** Whether heights are to be drawn, straight up over the plan; and by whom, once that has come. */
  readonly raised: boolean;
  readonly raisedView: RaisedView | null;
  /** What each drop gives at a time of a charging day that is looked at, by drop; null where none is. */
  readonly charging: ReadonlyMap<string, DropCharging> | null;
  /** Whether every drop carries the bars of its margins. */
  readonly marginBars: boolean;
  /** Where the cord of a selected drop reaches an inlet at a height, feet. */
  readonly reachPicture: { readonly on: boolean; readonly height: number };
  /** A place that a panel points at. */
  readonly pin: Point2 | null;
}

export type ViewStore = StoreApi<ViewState>;

/** The view of one page. The camera lives here and not in React: the board follows it without a render. */
export const createViewStore = (from: Partial<ViewState> = {}): ViewStore =>
  createStore<ViewState>(() => ({
    camera: { x: 0, y: 0, scale: 8 },
    viewport: { width: 0, height: 0 },
    tool: 'select',
    pointer: null,
    hovered: null,
    doing: 'nothing',
    guides: [],
    snapsOff: new Set(),
    hiddenKinds: new Set(),
    lockedKinds: new Set(),
    underBox: null,
    band: null,
    lasso: [],
    draft: null,
    draftWords: [],
    typing: null,
    draftMarks: null,
    draftOver: null,
    drawOptions: FIRST_DRAW_OPTIONS,
    measured: null,
    measureFrom: null,
    asks: null,
    coverage: false,
    memberLoads: false,
    raised: false,
    raisedView: null,
    charging: null,
    marginBars: true,
    reachPicture: { on: true, height: 3 },
    pin: null,
    ...from,
  }));

const ViewContext = createContext<ViewStore | null>(null);

export const ViewProvider = ViewContext.Provider;

export function useViewStore(): ViewStore {
  const store = useContext(ViewContext);
  if (!store) throw new RangeError('a component that reads the view stands outside ViewProvider');
  return store;
}

export function useView<T>(part: (state: ViewState) => T): T {
  return useStore(useViewStore(), part);
}
