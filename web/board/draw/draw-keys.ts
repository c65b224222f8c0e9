import { keyOf } from '../hand/key-of.ts';
import { ACTIONS, type DrawToolName } from '../kinds/kinds.ts';
import { SNAP_KINDS, SNAP_WORDS } from '../snap/kinds.ts';
import { longStepOf, stepOf } from '../snap/step.ts';
import { FIGURE, startTyping } from '../typed/typing.ts';
import { chooseTool } from './choose-tool.ts';
import { type Desk, inHand } from './desk.ts';
import type { DrawHand } from './draw-hand.ts';
import { back, finish, stop } from './drawing.ts';
import { turnOver } from './drawing-options.ts';
import { type } from './typed-in.ts';

const TOOL_OF_KEY: ReadonlyMap<string, DrawToolName> = new Map(
  (Object.keys(ACTIONS) as DrawToolName[]).map((name) => [ACTIONS[name].key.toLowerCase(), name]),
);

const ARROWS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};

/**
 * The keys of the drawing actions, while the board has the focus: letters begin one, figures type a length, arrows move
 * the drawing point and Space presses there, so that all of it goes without a pointer.
 */
export function attachDrawKeys(element: HTMLElement, desk: Desk, hand: DrawHand): () => void {
  const down = (event: KeyboardEvent): void => {
    if (event.target !== element) return;
    const done = event.altKey && !event.ctrlKey ? switchSnap(desk, event) : plainKey(desk, hand, event);
    if (!done) return;
    event.preventDefault();
    event.stopImmediatePropagation();
  };
  // From a field of the form too, where Enter alone takes over what is typed.
  const set = (event: KeyboardEvent): void => {
    if (event.key === 'Enter' && (event.ctrlKey || event.metaKey) && inHand(desk)) finish(desk);
  };
  element.addEventListener('keydown', down);
  window.addEventListener('keydown', set);
  return () => {
    element.removeEventListener('keydown', down);
    window.removeEventListener('keydown', set);
  };
}

/** Alt and a figure switches a kind of snapping off and on. */
function switchSnap({ view, page }: Desk, { code }: KeyboardEvent): boolean {
  const kind = SNAP_KINDS[Number(/^Digit([1-9])$/.exec(code)?.[1] ?? 0) - 1];
  if (!kind) return false;
  const off = new Set(view.getState().snapsOff);
  if (!off.delete(kind)) off.add(kind);
  view.setState({ snapsOff: off });
  page.setState({ spoken: `Snapping to ${SNAP_WORDS[kind]} ${off.has(kind) ? 'off' : 'on'}` });
  return true;
}

function plainKey(desk: Desk, hand: DrawHand, event: KeyboardEvent): boolean {
  const key = keyOf(event);
  const { draft } = desk.view.getState();
  const begun = (draft?.spots.length ?? 0) > 0;
  if (event.ctrlKey || event.metaKey) return key === 'z' && !event.shiftKey && begun && back(desk);
  const held = inHand(desk);
  if (!held) return begin(desk, key);
  const way = ARROWS[key];
  if (way) return walk(desk, hand, way, event.shiftKey);
  if (key === 'Escape') stop(desk);
  else if (key === 'Enter') finish(desk);
  else if (key === ' ') hand.press(pointOf(desk), KEYED);
  else if (key === 'Backspace' || key === 'Delete') return back(desk);
  else if (key === 'x' && held.tool.turned) turnOver(desk);
  else if (key === 'z' && held.tool.raised) type(desk, startTyping('elevation'));
  else if (key === 't') type(desk, startTyping('x'));
  else if (FIGURE.test(key)) type(desk, startTyping(begun && !draft?.whole ? 'length' : 'x', key));
  else return begin(desk, key);
  return true;
}

/** A point given by keys lies where it is: on nothing but what is at that very place. */
const KEYED = { near: 0.02, free: false } as const;

const pointOf = ({ view }: Desk): readonly [number, number] => {
  const { pointer, camera } = view.getState();
  return pointer ?? [Math.round(camera.x), Math.round(camera.y)];
};

function walk(desk: Desk, hand: DrawHand, [x, y]: readonly [number, number], far: boolean): boolean {
  const { units } = desk.document.getState().site;
  const step = far ? longStepOf(units) * 9 : stepOf(units) * 4;
  const [px, py] = pointOf(desk);
  hand.hover([px + x * step, py + y * step], KEYED);
  return true;
}

function begin(desk: Desk, key: string): boolean {
  const name = TOOL_OF_KEY.get(key);
  if (name) chooseTool(desk, name);
  return name !== undefined;
}
