import type { Edit } from '../../document/change/edit.ts';
import { insertedBy } from '../../document/change/selection.ts';
import { type Desk, editOf, groundToDrawOn, type InHand, inHand } from './desk.ts';
import { isLarge } from './draft-marks.ts';
import { setOptions } from './drawing-options.ts';

const NO_DRAFT = { draft: null, typing: null, draftOver: null, draftMarks: null, draftWords: [], guides: [] } as const;

/** Throws the draft away, with what is typed of it. */
export function dropDraft({ document, view }: Desk): void {
  if (view.getState().draft || view.getState().typing) view.setState(NO_DRAFT);
  document.getState().cancelPreview();
}

/** Sets what stands: one entry in the history. What it put in is selected. */
export function setDown(desk: Desk): void {
  const held = inHand(desk);
  const { draft } = desk.view.getState();
  if (!held || !draft) return;
  const { apply, applyLarge, previewed } = desk.document.getState();
  const edit = previewed ?? editOf(desk, held, draft);
  const large = isLarge(groundToDrawOn(desk).site);
  desk.view.setState(NO_DRAFT);
  if (edit && large) void applyLarge(edit).then((done) => done && isSet(desk, held, edit));
  else if (edit && apply(edit)) isSet(desk, held, edit);
  else desk.document.getState().cancelPreview();
}

function isSet(desk: Desk, { name, tool, options }: InHand, edit: Edit): void {
  desk.document.getState().select(insertedBy(edit).filter(({ list }) => list === tool.list));
  if (tool.after) setOptions(desk, name, tool.after(options, groundToDrawOn(desk)));
  desk.page.setState({ spoken: `${edit.name}: done` });
}
