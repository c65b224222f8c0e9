import type { ReactNode } from 'react';
import { finish, stop } from '../../board/draw/drawing.ts';
import { DRAW_WORDS, type DrawToolName } from '../../board/draw/tool-names.ts';
import { useView } from '../../board/view-store.ts';
import { useDocument } from '../../document/use-document.ts';
import { FindingList } from '../finding-list.tsx';
import { KindSwitches } from '../kind-switches.tsx';
import { CanopyForm } from './canopy-form.tsx';
import { DropsForm } from './drops-form.tsx';
import { EquipmentForm } from './equipment-form.tsx';
import { AisleForm, ColumnForm, ElevationForm, KeepoutForm } from './plain-forms.tsx';
import { PriceOfDraft } from './price-of-draft.tsx';
import { RacewayForm } from './raceway-form.tsx';
import { SnapSwitches } from './snap-switches.tsx';
import { StallsForm } from './stalls-form.tsx';
import { useDesk } from './use-options.ts';

const FORMS: Readonly<Record<DrawToolName, () => ReactNode>> = {
  stalls: StallsForm,
  canopy: CanopyForm,
  equipment: EquipmentForm,
  raceway: RacewayForm,
  drops: DropsForm,
  keepout: KeepoutForm,
  aisle: AisleForm,
  pullpoint: () => <ElevationForm tool="pullpoint" />,
  member: () => <ElevationForm tool="member" />,
  column: ColumnForm,
};

/** The ledger while something is drawn: what it is to be like, what it comes to, and the way to set it. */
export function DrawPanel({ tool }: { readonly tool: DrawToolName }) {
  const desk = useDesk();
  const draft = useView((state) => state.draft);
  const words = useView((state) => state.draftWords);
  const fails = useDocument((state) => state.plan.findings.some(({ severity }) => severity === 'fail'));
  const Form = FORMS[tool];
  const begun = (draft?.spots.length ?? 0) > 0;
  return (
    <div className="panel" data-testid="draw-panel">
      <header className="panel-head">
        <h2>{DRAW_WORDS[tool].name}</h2>
        <span className="panel-acts">
          <button
            type="button"
            className="act"
            title="Enter on the board, Ctrl+Enter here"
            disabled={!begun}
            onClick={() => finish(desk)}
          >
            Set
          </button>
          <button type="button" className="other-act" onClick={() => stop(desk)}>
            {begun ? 'Throw away' : 'Done'}
          </button>
        </span>
      </header>
      {words.length > 0 && (
        <p className="draw-words" data-testid="draw-words">
          {words.join('; ')}
        </p>
      )}
      <PriceOfDraft />
      <Form />
      <SnapSwitches />
      <KindSwitches />
      {fails && (
        <>
          <h3>Findings</h3>
          <FindingList />
        </>
      )}
    </div>
  );
}
