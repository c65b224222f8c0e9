import { toSite } from '../../../routing/site/to-site.ts';
import type { Edit } from '../../document/change/edit.ts';
import { ifCounted } from '../../document/planning.ts';
import type { DocumentStore } from '../../document/store.ts';
import type { PageStore } from '../../page-state/page-store.ts';
import type { DrawToolName } from '../kinds/kinds.ts';
import type { ViewStore } from '../view-store.ts';
import { type BoardDraft, type DrawTool, EMPTY, type Ground } from './draft.ts';
import { draftMarks, isLarge } from './draft-marks.ts';
import { isDrawTool, toolOf } from './tool-names.ts';

/** What drawing works on: the document that it previews its edits in, the view that holds the draft, and the page that says aloud what was done. */
export interface Desk {
  readonly document: DocumentStore;
  readonly view: ViewStore;
  readonly page: PageStore;
}

/** A tool with its options, as they are at the moment. */
export interface InHand {
  readonly name: DrawToolName;
  readonly tool: DrawTool<unknown>;
  readonly options: unknown;
}

/** The drawing action in the hand; null where the hand selects, pans or measures, or the tools have not come. */
export function inHand({ view }: Desk): InHand | null {
  const { tool: name, drawOptions } = view.getState();
  if (!isDrawTool(name)) return null;
  const tool = toolOf(name);
  if (tool === null) return null;
  const options = drawOptions[name];
  return { name, tool: tool.instead?.(options) ?? tool, options };
}

/** The document without the draft. */
export function groundToDrawOn({ document }: Desk): Ground {
  const { file } = document.getState().committed();
  return { file, site: toSite(file) };
}

/** What beside the hand is said of the draft. */
export function wordsOf(desk: Desk): readonly string[] {
  const held = inHand(desk);
  const { draft } = desk.view.getState();
  return held && draft ? held.tool.words(groundToDrawOn(desk), draft, held.options) : [];
}

/**
 * Shows a draft as the edit that it would come to: in the document, with its plan; on a large site by itself, for its
 * plan could not keep up with the hand.
 */
export function show(desk: Desk, draft: BoardDraft): void {
  const held = inHand(desk);
  if (!held) return;
  const { document, view } = desk;
  const ground = groundToDrawOn(desk);
  const edit = held.tool.edit(ground, draft, held.options);
  if (isLarge(ground.site)) {
    document.getState().cancelPreview();
    view.setState({ draft: { ...draft }, draftMarks: edit && draftMarks(edit, ground.file, ground.site) });
  } else {
    const { previewed, plan } = document.getState();
    view.setState({
      draft: { ...draft },
      ...(previewed === undefined && { draftOver: ifCounted(plan)?.takeoff ?? null }),
    });
    document.getState().preview(edit);
  }
  view.setState({ draftWords: wordsOf(desk) });
}

export const editOf = (desk: Desk, { tool, options }: InHand, draft: BoardDraft): Edit | null =>
  tool.edit(groundToDrawOn(desk), draft, options);

export const draftOf = ({ view }: Desk): BoardDraft => view.getState().draft ?? EMPTY;
