import type { ReactNode } from 'react';
import { isDrawTool } from '../board/draw/tool-names.ts';
import { useView } from '../board/view-store.ts';
import { useDocument } from '../document/use-document.tsx';
import { whenAsked } from '../page-state/when-asked.tsx';
import { Scroller } from '../parts/scroller.tsx';
import { Cautions } from './cautions.tsx';
import { BarPatterns } from './facts/margin-bar.tsx';
import { LotPanel } from './lot/lot-panel.tsx';

const DrawPanel = whenAsked(async () => (await import('./draw/draw-panel.tsx')).DrawPanel);
const SelectionPanel = whenAsked(async () => (await import('./selection/selection-panel.tsx')).SelectionPanel);

/** One column of facts: of the lot, or of what is selected, with what stands below it; the cautions at its foot. */
export function Ledger({ below }: { readonly below?: ReactNode }) {
  const first = useDocument((state) => state.selection[0]);
  const opened = useDocument((state) => state.opened);
  const tool = useView((state) => state.tool);
  const drawing = isDrawTool(tool) ? tool : null;
  return (
    <aside className="ledger" aria-label="Ledger">
      <BarPatterns />
      {/* A new subject is read from its top. */}
      <Scroller
        key={drawing ?? (first ? `${first.list} ${first.id}` : `lot ${opened}`)}
        className="ledger-scroll"
        aria-label="Facts"
      >
        {drawing ? <DrawPanel tool={drawing} /> : first ? <SelectionPanel /> : <LotPanel />}
        {below}
      </Scroller>
      <Cautions />
    </aside>
  );
}
