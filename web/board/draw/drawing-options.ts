import type { DrawOptions, DrawToolName } from '../kinds/kinds.ts';
import { type Desk, inHand, show } from './desk.ts';

export function setOptions(desk: Desk, name: DrawToolName, options: unknown): void {
  const { drawOptions } = desk.view.getState();
  desk.view.setState({ drawOptions: { ...drawOptions, [name]: options } });
}

/** Changes options of an action; what is being drawn follows. */
export function changeOptions<T extends DrawToolName>(desk: Desk, name: T, patch: Partial<DrawOptions[T]>): void {
  setOptions(desk, name, { ...(desk.view.getState().drawOptions[name] as object), ...patch });
  const { draft, tool } = desk.view.getState();
  if (draft && tool === name) show(desk, draft);
}

/** Turns what is being drawn the other way round. */
export function turnOver(desk: Desk): void {
  const held = inHand(desk);
  if (!held?.tool.turned) return;
  setOptions(desk, held.name, held.tool.turned(held.options));
  const { draft } = desk.view.getState();
  if (draft) show(desk, draft);
}
