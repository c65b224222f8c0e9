import { Board } from '../board/board.tsx';
import type { Painting } from '../board/painting.ts';
import { ToolBar } from '../board/tool-bar.tsx';
import { keepsDrawing } from '../document/field-work.ts';
import { useDocument } from '../document/use-document.tsx';
import { BuildCard } from '../field/build-card.tsx';
import { BuildList } from '../field/build-list.tsx';
import { Ledger } from '../panels/ledger.tsx';
import { usePhone } from '../parts/phone.ts';
import { Strip } from '../strip/strip.tsx';
import { Drawer } from '../tables/drawer.tsx';

/** The drawing with its tables, and the ledger. Who builds with a phone in the hand has the list and a card in their place. */
export function Desk({ painting }: { readonly painting: Painting }) {
  const phone = usePhone();
  const builds = useDocument(keepsDrawing) && phone;
  const first = useDocument((state) => state.selection[0]);
  const drop = useDocument(({ site, selection: [chosen] }) =>
    chosen?.list === 'drops' ? site.drops.find(({ id }) => id === chosen.id) : undefined,
  );
  return (
    <main className={builds ? 'desk desk-build' : 'desk'}>
      <div className="drawing">
        {!builds && <ToolBar />}
        <Board painting={painting} />
        {!builds && <Strip />}
        {builds ? <BuildList /> : <Drawer />}
      </div>
      {builds && drop && first?.list === 'drops' ? <BuildCard key={drop.id} drop={drop} /> : <Ledger />}
    </main>
  );
}
