import { stallsInReach } from '../../../../routing/reach/stalls-in-reach.ts';
import { useView } from '../../../board/view-store.ts';
import { addElements } from '../../../document/edits/add.ts';
import { chargerFor } from '../../../document/edits/charging/charger-for.ts';
import { useDocument, useDocumentStore } from '../../../document/use-document.tsx';

/** A drop that has no charger yet, and the way to hang one there for the stall that its cord covers best. */
export function HangCharger({ drop }: { readonly drop: string }) {
  const document = useDocumentStore();
  const options = useView((state) => state.drawOptions.drops);
  const some = useDocument((state) => state.site.equipment.length > 0);
  const hang = (): void => {
    const { file, site, apply } = document.getState();
    const own = site.drops.find(({ id }) => id === drop);
    if (!own) return;
    const served = new Set(site.chargers.flatMap(({ stalls }) => stalls));
    const best = stallsInReach(site, own).find(({ stall }) => !served.has(stall));
    const charger = chargerFor(file, site, own, best ? [best.stall] : [], options);
    if (charger) apply(addElements(file, 'chargers', [charger]));
  };
  return (
    <p className="quiet">
      No charger hangs here.{' '}
      {some ? (
        <button type="button" className="plain" onClick={hang}>
          Hang one
        </button>
      ) : (
        'Place the equipment that feeds it first.'
      )}
    </p>
  );
}
