import { useView, useViewStore } from '../../../board/view-store.ts';
import { useDocument } from '../../../document/use-document.tsx';
import { FieldGroup } from '../../../parts/field-group.tsx';
import { LengthField } from '../../../parts/fields.tsx';

/** For a selected drop: the height of the inlets whose reach the board shows, or none. */
export function ReachFields() {
  const view = useViewStore();
  const station = useDocument((state) => state.station);
  const { on, height } = useView((state) => state.reachPicture);
  if (station !== 'layout') return null;
  return (
    <FieldGroup name="Picture of its reach">
      <label className="tick">
        <input type="checkbox" checked={on} onChange={() => view.setState({ reachPicture: { on: !on, height } })} />
        <span>show where its cord reaches</span>
      </label>
      {on && (
        <LengthField
          label="an inlet at"
          value={height}
          least={0}
          onChange={(next) => view.setState({ reachPicture: { on, height: next } })}
        />
      )}
    </FieldGroup>
  );
}
