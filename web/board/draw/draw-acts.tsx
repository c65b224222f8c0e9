import { afterPress } from '../../parts/keys-to-board.ts';
import { useView } from '../view-store.ts';
import { finish, stop } from './drawing.ts';
import { isDrawTool } from './tool-names.ts';
import { useDesk } from './use-desk.ts';

/** What ends a drawing, on the board where the hand is: the main act filled, the other with an edge. */
export function DrawActs() {
  const desk = useDesk();
  const draws = useView((state) => isDrawTool(state.tool));
  const begun = useView((state) => (state.draft?.spots.length ?? 0) > 0);
  if (!draws) return null;
  return (
    <div className="draw-acts over-board">
      {begun && (
        <button
          type="button"
          className="act"
          title="Enter; from a field Ctrl+Enter"
          onClick={(event) => {
            finish(desk);
            afterPress(event);
          }}
        >
          Set
        </button>
      )}
      <button
        type="button"
        className="other-act"
        title="Escape"
        onClick={(event) => {
          stop(desk);
          afterPress(event);
        }}
      >
        {begun ? 'Throw away' : 'Done'}
      </button>
    </div>
  );
}
