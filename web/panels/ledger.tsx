import { useDocument } from '../document/use-document.ts';
import { Cautions } from './cautions.tsx';
import { LotPanel } from './lot-panel.tsx';
import { BarPatterns } from './margin-bar.tsx';
import { SelectionPanel } from './selection-panel.tsx';

/** One column of facts: of the lot, or of what is selected; the cautions at its foot. */
export function Ledger() {
  const some = useDocument((state) => state.selection.length > 0);
  return (
    <aside className="ledger" aria-label="Ledger">
      <BarPatterns />
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a part that scrolls must be reached by keys */}
      <div className="ledger-scroll" tabIndex={0} role="region" aria-label="Facts">
        {some ? <SelectionPanel /> : <LotPanel />}
      </div>
      <Cautions />
    </aside>
  );
}
