import { FIELD_ONLY, keepsDrawing } from '../../document/field-work.ts';
import type { Tool } from '../view-store.ts';
import type { Desk } from './desk.ts';
import { dropDraft, setDown } from './set-down.ts';
import { isDrawTool } from './tool-names.ts';

/** Begins an action, or goes back to selecting; what stands whole is set first. Where nothing is drawn, none begins. */
export function chooseTool(desk: Desk, tool: Tool): void {
  const { notify } = desk.document.getState();
  if (isDrawTool(tool) && keepsDrawing(desk.document.getState())) {
    notify(FIELD_ONLY);
    return;
  }
  if (desk.view.getState().draft?.whole) setDown(desk);
  dropDraft(desk);
  desk.view.setState({ tool, hovered: null, guides: [] });
  // What was measured stays until the next measurement, or Escape; half a measurement does not.
  if (desk.view.getState().measureFrom) desk.view.setState({ measured: null, measureFrom: null });
}
