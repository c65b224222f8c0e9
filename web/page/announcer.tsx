import { marginsOf } from '../../calc/plan/margins.ts';
import { chargersByDrop } from '../board/scene/chargers-by-drop.ts';
import { inWords } from '../document/edits/in-words.ts';
import { useDocument } from '../document/use-document.tsx';
import { usePage } from '../page-state/page-store.ts';
import { spareOrShort } from '../words/lengths.ts';

/** Says to those who listen what the eye sees: what is selected, how it fares, and what was just done. */
export function Announcer() {
  const selection = useDocument((state) => state.selection);
  const dragging = useDocument((state) => state.previewed !== undefined);
  const change = useDocument((state) => state.lastChange);
  const site = useDocument((state) => state.site);
  const plan = useDocument((state) => state.plan);
  const spoken = usePage((state) => state.spoken);
  const [first] = selection;
  const done = change
    ? `${change.how === 'done' ? '' : `${change.how === 'undone' ? 'Undone' : 'Redone'}: `}${change.name}. `
    : '';
  const chosen = selection.length > 0 ? `Selected: ${inWords(selection)}. ` : '';
  const charger = first?.list === 'drops' ? chargersByDrop(site.chargers).get(first.id)?.[0] : undefined;
  const cord = charger === undefined ? null : marginsOf(plan, site).get(charger)?.cord;
  const fares = cord ? `Cord ${spareOrShort(cord.left, site.units)}.` : '';
  return (
    <>
      <p className="heard" aria-live="polite">
        {dragging ? '' : `${done}${chosen}${fares}`}
      </p>
      <p className="heard" aria-live="polite">
        {spoken}
      </p>
    </>
  );
}
