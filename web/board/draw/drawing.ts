import { typedPlace } from '../typed/typed-place.ts';
import { type Desk, draftOf, editOf, groundToDrawOn, inHand, show } from './desk.ts';
import type { BoardDraft, Spot } from './draft.ts';
import { dropDraft, setDown } from './set-down.ts';

/** The hand moves to a place: what is being drawn follows it. */
export function hover(desk: Desk, spot: Spot): void {
  const draft = draftOf(desk);
  if (draft.whole || !inHand(desk)) return;
  show(desk, { ...draft, next: typedSpot(desk, draft, spot) });
}

/** A place as what is typed makes of it. */
function typedSpot({ view, document }: Desk, { spots }: BoardDraft, spot: Spot, typing = view.getState().typing): Spot {
  const at = typing && typedPlace(typing, spots.at(-1)?.at ?? null, spot.at, document.getState().site.units);
  return at ? { at, z: null, ref: null } : spot;
}

/** The hand presses at a place. */
export function press(desk: Desk, spot: Spot): void {
  const held = inHand(desk);
  // What was set last is still being worked out.
  if (!held || desk.document.getState().busy) return;
  const { typing } = desk.view.getState();
  if (draftOf(desk).whole) setDown(desk);
  const draft = draftOf(desk);
  const place = typedSpot(desk, draft, spot, typing);
  const { tool, options } = inHand(desk)!;
  const more = tool.added ? tool.added(groundToDrawOn(desk), draft, place, options) : [place];
  const last = draft.spots.at(-1);
  const same = last && Math.hypot(last.at[0] - place.at[0], last.at[1] - place.at[1]) < 0.02;
  // A second press on the spot ends a path; on a line it is no end.
  if (same && more.every((each) => !tool.added || each.z === last.z)) {
    if (tool.shape === 'path' || tool.shape === 'outline') finish(desk);
    return;
  }
  const spots = [...draft.spots, ...more];
  const whole = tool.shape === 'point' || (tool.shape === 'line' && spots.length >= 2);
  desk.view.setState({ typing: null });
  show(desk, { spots, next: whole ? null : place, whole });
  if (whole && tool.atOnce) setDown(desk);
}

/** The hand lets go after a drag: a line ends there, and so do the two corners of a rectangle. */
export function letGo(desk: Desk): void {
  const held = inHand(desk);
  const draft = draftOf(desk);
  if (!held || draft.whole || !draft.next || draft.spots.length !== 1) return;
  if (held.tool.shape === 'line') press(desk, draft.next);
  else if (held.tool.shape === 'outline') {
    show(desk, { spots: [...draft.spots, draft.next], next: null, whole: true });
  }
}

/** Ends what is being drawn where it has enough places, and sets it. */
export function finish(desk: Desk): void {
  const held = inHand(desk);
  const draft = draftOf(desk);
  if (!held) return;
  if (draft.whole) {
    setDown(desk);
    return;
  }
  if (held.tool.shape === 'line' && draft.spots.length === 1 && draft.next) {
    press(desk, draft.next);
    return;
  }
  if (held.tool.shape !== 'path' && held.tool.shape !== 'outline') return;
  show(desk, { spots: draft.spots, next: null, whole: true });
  if (editOf(desk, held, draftOf(desk))) {
    setDown(desk);
    return;
  }
  show(desk, { ...draft, next: draft.next, whole: false });
  if (held.tool.lacks) desk.document.getState().notify(held.tool.lacks(draft));
}

/** Takes back the last place that was set, or opens again what stands whole. False where nothing is being drawn. */
export function back(desk: Desk): boolean {
  const draft = draftOf(desk);
  if (draft.spots.length === 0) return false;
  const spots = draft.spots.slice(0, -1);
  if (spots.length === 0) dropDraft(desk);
  else show(desk, { spots, next: draft.next ?? draft.spots.at(-1)!, whole: false });
  return true;
}

/** Whether a drag would draw from where it begins: the first two places of a line or a rectangle are not set yet. */
export function drags(desk: Desk): boolean {
  const shape = inHand(desk)?.tool.shape;
  const { spots, whole } = draftOf(desk);
  return (shape === 'line' || shape === 'outline') && (spots.length === 0 || whole);
}

/** Takes the place under the hand out of the draft and, where it was `pressed`, the last place that was set. */
export function liftOff(desk: Desk, pressed: boolean): void {
  if (pressed) back(desk);
  const draft = draftOf(desk);
  if (draft.whole) return;
  if (draft.spots.length === 0) dropDraft(desk);
  else show(desk, { ...draft, next: null });
}

/** Throws the draft away; where there is none, goes back to selecting. */
export function stop(desk: Desk): void {
  const { draft } = desk.view.getState();
  const begun = draft !== null && (draft.spots.length > 0 || draft.whole);
  dropDraft(desk);
  if (!begun) desk.view.setState({ tool: 'select' });
}
