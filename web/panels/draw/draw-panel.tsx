import type { ReactNode } from 'react';
import { DRAW_WORDS, type DrawToolName } from '../../board/draw/tool-names.ts';
import { useView } from '../../board/view-store.ts';
import { useDocument } from '../../document/use-document.tsx';
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

/** The ledger while something is drawn: what it is to be like, and what it comes to. */
export function DrawPanel({ tool }: { readonly tool: DrawToolName }) {
  const words = useView((state) => state.draftWords);
  const fails = useDocument((state) => state.plan.findings.some(({ severity }) => severity === 'fail'));
  const Form = FORMS[tool];
  return (
    <div className="panel" data-testid="draw-panel">
      <header className="panel-head">
        <h2>{DRAW_WORDS[tool].name}</h2>
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
