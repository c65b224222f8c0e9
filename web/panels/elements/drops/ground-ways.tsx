import { usePrices } from '../../../document/files/price-store.ts';
import { useDocument, useDocumentStore } from '../../../document/use-document.tsx';
import { askProposal, stopProposal, useProposals } from '../../../proposal/proposal-store.ts';
import { waylessAt } from './wayless.ts';

/** The search for ways in the ground ends with the best that it has after so long. */
const MOST_SECONDS = 600;

/** Pedestals among some drops to which no branch comes: one press has their ways proposed in the ground. */
export function GroundWays({ drops }: { readonly drops: readonly string[] }) {
  const document = useDocumentStore();
  const site = useDocument((state) => state.site);
  const plan = useDocument((state) => state.plan);
  const prices = usePrices((state) => state.list);
  const doing = useProposals((state) => state.doing);
  const fault = useProposals((state) => state.fault);
  const chosen = new Set(drops);
  const pedestals = site.drops.filter(({ id, mount }) => mount === 'pedestal' && chosen.has(id)).map(({ id }) => id);
  const wayless = pedestals.length === 0 ? [] : waylessAt(plan, site, new Set(pedestals));
  if (wayless.length === 0) return null;
  if (doing)
    return (
      <p role="status">
        Looking for ways in the ground <progress max={doing.of} value={doing.done} aria-label="Looking for ways" />{' '}
        <button type="button" className="plain" onClick={() => stopProposal(document, false)}>
          Stop
        </button>
      </p>
    );
  const whom = wayless.length === 1 ? wayless[0] : `${wayless.length} chargers`;
  return (
    <div className="panel-act">
      <button
        type="button"
        className="act"
        onClick={() => askProposal(document, { what: 'raceways', cordsADrop: 1, prices }, MOST_SECONDS)}
      >
        Propose the way to {whom} in the ground
      </button>
      {fault && <p role="alert">{fault}</p>}
    </div>
  );
}
