import { useState } from 'react';
import type { Drop } from '../../routing/site/site.ts';
import { Board } from '../board/board.tsx';
import type { Painting } from '../board/painting/painting.ts';
import { ToolBar } from '../board/round/tool-bar.tsx';
import type { DocumentState } from '../document/document-state.ts';
import { keepsDrawing } from '../document/field-work.ts';
import { findDrop } from '../document/find/finders.ts';
import { useDocument } from '../document/use-document.tsx';
import { whenAsked } from '../page-state/when-asked.tsx';
import { Ledger } from '../panels/ledger.tsx';
import { usePhone } from '../parts/phone.ts';
import { Drawer } from '../tables/drawer.tsx';

const BuildCard = whenAsked(async () => (await import('../field/cards/build-card.tsx')).BuildCard);
const BuildList = whenAsked(async () => (await import('../field/cards/build-list.tsx')).BuildList);
const FieldFacts = whenAsked(async () => (await import('../field/cards/field-facts.tsx')).FieldFacts);
const ThingCard = whenAsked(async () => (await import('../field/cards/thing-card.tsx')).ThingCard);
const Strip = whenAsked(async () => (await import('../strip/strip.tsx')).Strip);

/** The drawing with its tables, and the ledger. A person who builds with a phone in the hand sees the list and a card in their place. */
export function DeskStation({ painting }: { readonly painting: Painting }) {
  const phone = usePhone();
  const keeps = useDocument(keepsDrawing);
  const builds = keeps && phone;
  const first = useDocument((state) => state.selection[0]);
  // A run is unrolled once one was chosen.
  const [chose, setChose] = useState(false);
  if (first && !chose) setChose(true);
  const drop = useDocument(chosenDrop);
  return (
    <main className={builds ? 'desk desk-build' : 'desk'}>
      <div className="drawing">
        {!builds && <ToolBar />}
        <Board painting={painting} />
        {!builds && chose && <Strip />}
        {builds ? <BuildList /> : <Drawer />}
      </div>
      {builds && drop ? (
        <BuildCard key={drop.id} drop={drop} />
      ) : builds && first ? (
        <ThingCard key={`${first.list} ${first.id}`} list={first.list} id={first.id} />
      ) : (
        <Ledger
          below={keeps && first && <FieldFacts key={`${first.list} ${first.id}`} list={first.list} id={first.id} />}
        />
      )}
    </main>
  );
}

/** The drop that is selected, or that of the charger or the stall that is. */
function chosenDrop({ site, selection: [first] }: DocumentState): Drop | undefined {
  if (!first) return undefined;
  const { list, id } = first;
  const charger =
    list === 'chargers' || list === 'stalls'
      ? site.chargers.find((each) => each.id === id || (list === 'stalls' && each.stalls.includes(id)))
      : undefined;
  return findDrop(site.drops, list === 'drops' ? id : charger?.drop);
}
