import { readTyped, typedPlace } from '../typed/typed-place.ts';
import type { Typing } from '../typed/typing.ts';
import { type Desk, draftOf, inHand, show } from './desk.ts';
import { hover, press } from './drawing.ts';
import { setOptions } from './drawing-options.ts';

/** Takes over what is typed; the place that it gives is set. */
export function takeTyped(desk: Desk): void {
  const { typing, pointer } = desk.view.getState();
  const held = inHand(desk);
  const draft = draftOf(desk);
  if (!typing) return;
  if (!held) {
    // What is moved by hand comes to lie where it is shown.
    desk.document.getState().commitPreview();
    desk.view.setState({ typing: null });
    return;
  }
  const { units } = desk.document.getState().site;
  if (typing.field === 'elevation') {
    const z = readTyped(typing, 'elevation', units);
    desk.view.setState({ typing: null });
    if (!z?.ok || !held.tool.raised) return;
    const raised = held.tool.raised(draft, z.value, held.options);
    setOptions(desk, held.name, raised.options);
    if (desk.view.getState().draft) show(desk, raised.draft);
    return;
  }
  const last = draft.whole ? undefined : draft.spots.at(-1);
  const hand = draft.next ?? { at: pointer ?? last?.at ?? [0, 0], z: null, ref: null };
  if (typedPlace(typing, last?.at ?? null, hand.at, units)) press(desk, hand);
  desk.view.setState({ typing: null });
}

/** Changes what is typed; what is drawn, or moved by hand, follows. Null stops typing, and puts back what was moved. */
export function type(desk: Desk, typing: Typing | null): void {
  if (!typing && !inHand(desk)) desk.document.getState().cancelPreview();
  desk.view.setState({ typing });
  const { pointer } = desk.view.getState();
  const draft = draftOf(desk);
  if (!inHand(desk) || draft.whole) return;
  if (draft.spots.length === 0 && typing?.field !== 'x' && typing?.field !== 'y') return;
  const hand = pointer ?? draft.next?.at ?? (typing ? ([0, 0] as const) : null);
  if (hand) hover(desk, { at: hand, z: null, ref: null });
}
