import { keepsDrawing } from '../../document/field-work.ts';
import { useDocument } from '../../document/use-document.tsx';
import { afterPress } from '../../parts/keys-to-board.ts';
import { ActionButtons } from '../draw/action-buttons.tsx';
import { chooseTool } from '../draw/choose-tool.ts';
import { useDesk } from '../draw/use-desk.ts';
import { type TOOLS, useView } from '../view-store.ts';
import { PastButtons } from './past-buttons.tsx';

const WORDS: Readonly<
  Record<(typeof TOOLS)[number], { readonly name: string; readonly key: string; readonly mark: string }>
> = {
  select: { name: 'Select', key: 'J', mark: 'M3 2 L13 8 L8.5 9.2 L11 14 L9 15 L6.6 10.2 L3 13 Z' },
  pan: {
    name: 'Pan',
    key: 'N',
    mark: 'M8 1 L10.5 4 H5.5 Z M8 15 L5.5 12 H10.5 Z M1 8 L4 5.5 V10.5 Z M15 8 L12 10.5 V5.5 Z M7 5 H9 V11 H7 Z M5 7 H11 V9 H5 Z',
  },
  measure: { name: 'Measure', key: 'M', mark: 'M1 5 H2.2 V7.4 H13.8 V5 H15 V11 H13.8 V8.6 H2.2 V11 H1 Z' },
};

const BEFORE = ['select', 'pan'] as const;

/** What the hand does, named in words beside its mark, in the order in which a lot is laid out; and its past. */
export function ToolBar() {
  const draws = !useDocument(keepsDrawing);
  return (
    <div className="tool-bar" role="toolbar" aria-label="The board">
      {BEFORE.map((each) => (
        <ToolButton key={each} tool={each} />
      ))}
      {draws && <ActionButtons />}
      <ToolButton tool="measure" />
      <span className="tool-rule" />
      <PastButtons />
    </div>
  );
}

function ToolButton({ tool: name }: { readonly tool: (typeof TOOLS)[number] }) {
  const desk = useDesk();
  const tool = useView((state) => state.tool);
  return (
    <button
      type="button"
      aria-pressed={tool === name}
      title={`${WORDS[name].name} (${WORDS[name].key})`}
      className={`tool-${name}`}
      onClick={(event) => {
        chooseTool(desk, tool === name ? 'select' : name);
        afterPress(event);
      }}
    >
      <svg viewBox="0 0 16 16" width="16" height="16" aria-hidden="true">
        <path d={WORDS[name].mark} />
      </svg>
      {WORDS[name].name}
    </button>
  );
}
