import { ACTIONS, type DrawToolName } from '../../board/kinds/kinds.ts';
import { useView } from '../../board/view-store.ts';
import { useDocument } from '../../document/use-document.tsx';
import { DRAW_FORMS } from '../elements/kinds.tsx';
import { FindingList } from '../facts/finding-list.tsx';
import { KindSwitches } from '../kind-switches.tsx';
import { PriceOfDraft } from './price-of-draft.tsx';
import { SnapSwitches } from './snap-switches.tsx';

/** The ledger while something is drawn: what it is to be like, and what it comes to. */
export function DrawPanel({ tool }: { readonly tool: DrawToolName }) {
  const words = useView((state) => state.draftWords);
  const fails = useDocument((state) => state.plan.findings.some(({ severity }) => severity === 'fail'));
  const Form = DRAW_FORMS[tool];
  return (
    <div className="panel" data-testid="draw-panel">
      <header className="panel-head">
        <h2>{ACTIONS[tool].name}</h2>
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
