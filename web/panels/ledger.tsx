import { useDocument } from '../document/use-document.ts';
import { Cautions } from './cautions.tsx';
import { LotPanel } from './lot-panel.tsx';
import { BarPatterns } from './margin-bar.tsx';
import { SelectionPanel } from './selection-panel.tsx';

/** One column of facts: of the lot, or of what is selected; the cautions at its foot. */
export function Ledger() {
  const first = useDocument((state) => state.selection[0]);
  return (
    <aside className="ledger" aria-label="Ledger">
      <BarPatterns />
      {/* A new subject is read from its top. */}
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a part that scrolls must be reached by keys */}
      <div key={first ? `${first.list} ${first.id}` : 'lot'} className="ledger-scroll" tabIndex={0} role="region" aria-label="Facts">
        {first ? <SelectionPanel /> : <LotPanel />}
      </div>
      <Cautions />
    </aside>
  );
}
