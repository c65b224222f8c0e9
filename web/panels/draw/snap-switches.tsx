import { SNAP_KINDS, SNAP_WORDS, type SnapKind } from '../../board/snap/kinds.ts';
import { useView, useViewStore } from '../../board/view-store.ts';

/** What the hand is drawn to, each with its key. */
export function SnapSwitches() {
  const view = useViewStore();
  const off = useView((state) => state.snapsOff);
  const change = (kind: SnapKind, on: boolean): void => {
    const next = new Set(off);
    if (on) next.delete(kind);
    else next.add(kind);
    view.setState({ snapsOff: next });
  };
  return (
    <details className="snaps">
      <summary>Snapping{off.size > 0 ? `, ${SNAP_KINDS.length - off.size} of ${SNAP_KINDS.length} on` : ''}</summary>
      {SNAP_KINDS.map((kind, i) => (
        <label key={kind}>
          <input type="checkbox" checked={!off.has(kind)} onChange={(event) => change(kind, event.target.checked)} />
          {SNAP_WORDS[kind]} <kbd>Alt+{i + 1}</kbd>
        </label>
      ))}
      <p className="quiet">Alt held down: no snapping at all.</p>
    </details>
  );
}
