import { keysToBoard } from '../../parts/keys-to-board.ts';
import { Menu } from '../../parts/menu.tsx';
import { ACTIONS, type DrawToolName } from '../kinds/kinds.ts';
import { useView } from '../view-store.ts';
import { chooseTool } from './choose-tool.ts';
import { isDrawTool, LAYOUT_TOOLS, OTHER_TOOLS } from './tool-names.ts';
import { useDesk } from './use-desk.ts';

const MARKS: Readonly<Record<(typeof LAYOUT_TOOLS)[number], string>> = {
  stalls: 'M1 14 V3 H2.2 V12.8 H5.4 V3 H6.6 V12.8 H9.8 V3 H11 V12.8 H14 V3 H15.2 V14 Z',
  canopy: 'M1 3 H15 V4.6 H12.8 V14 H11.4 V4.6 H4.6 V14 H3.2 V4.6 H1 Z',
  equipment: 'M3 2 H13 V14 H3 Z M4.4 3.4 V12.6 H11.6 V3.4 Z M6 5 H10 V6.2 H6 Z M6 7.4 H10 V8.6 H6 Z',
  raceway: 'M1 11 H8 V4 H15 V5.6 H9.6 V12.6 H1 Z',
  drops: 'M7.3 1 H8.7 V5.2 A4.4 4.4 0 1 1 7.3 5.2 Z M8 7 A2.4 2.4 0 1 0 8.01 7 Z',
};

/** The actions that draw, in the order in which a lot is laid out. */
export function ActionButtons() {
  const desk = useDesk();
  const tool = useView((state) => state.tool);
  const choose = (name: DrawToolName): void => {
    chooseTool(desk, tool === name ? 'select' : name);
    keysToBoard();
  };
  const other = isDrawTool(tool) && (OTHER_TOOLS as readonly string[]).includes(tool) ? tool : null;
  return (
    <>
      {LAYOUT_TOOLS.map((name) => (
        <button
          key={name}
          type="button"
          className={`tool-${name} draw-action`}
          aria-pressed={tool === name}
          title={`Draw ${ACTIONS[name].name.toLowerCase()} (${ACTIONS[name].key})`}
          onClick={() => choose(name)}
        >
          <svg viewBox="0 0 16 16" width="16" height="16" aria-hidden="true">
            <path d={MARKS[name]} fillRule="evenodd" />
          </svg>
          {ACTIONS[name].name}
        </button>
      ))}
      <Menu
        name="Other"
        className={other ? 'draw-other draw-other-on' : 'draw-other'}
        entries={OTHER_TOOLS.map((name) => ({
          name: ACTIONS[name].name,
          keys: ACTIONS[name].key,
          act: () => choose(name),
        }))}
      />
    </>
  );
}
