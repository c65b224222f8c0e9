import { useState } from 'react';
import { Board } from '../board/board.tsx';
import type { Painting } from '../board/painting.ts';
import { ToolBar } from '../board/tool-bar.tsx';
import { keepsDrawing } from '../document/field-work.ts';
import { useDocument } from '../document/use-document.tsx';
import { whenAsked } from '../page-state/when-asked.tsx';
import { Ledger } from '../panels/ledger.tsx';
import { usePhone } from '../parts/phone.ts';
import { Drawer } from '../tables/drawer.tsx';

const BuildCard = whenAsked(async () => (await import('../field/build-card.tsx')).BuildCard);
const BuildList = whenAsked(async () => (await import('../field/build-list.tsx')).BuildList);
const Strip = whenAsked(async () => (await import('../strip/strip.tsx')).Strip);

/** The drawing with its tables, and the ledger. Who builds with a phone in the hand has the list and a card in their place. */
export function Desk({ painting }: { readonly painting: Painting }) {
  const phone = usePhone();
  const builds = useDocument(keepsDrawing) && phone;
  const first = useDocument((state) => state.selection[0]);
  // A run is unrolled once one was chosen.
  const [chose, setChose] = useState(false);
  if (first && !chose) setChose(true);
  const drop = useDocument(({ site, selection: [chosen] }) =>
    chosen?.list === 'drops' ? site.drops.find(({ id }) => id === chosen.id) : undefined,
  );
  return (
    <main className={builds ? 'desk desk-build' : 'desk'}>
      <div className="drawing">
        {!builds && <ToolBar />}
        <Board painting={painting} />
        {!builds && chose && <Strip />}
        {builds ? <BuildList /> : <Drawer />}
      </div>
      {builds && drop && first?.list === 'drops' ? <BuildCard key={drop.id} drop={drop} /> : <Ledger />}
    </main>
  );
}
