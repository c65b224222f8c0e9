import { type CardName, cardLink } from '../../../calc/field/cards/card-link.ts';
import { useDocument } from '../../document/use-document.tsx';
import { usePageStore } from '../../page-state/page-store.ts';

/** Opens the pull card of a circuit, by its charger, of a feeder or of a conduit. */
export function PullCardButton({ kind, id }: CardName) {
  const page = usePageStore();
  const site = useDocument((state) => state.name);
  return (
    <button
      type="button"
      className="card-open"
      onClick={() => page.setState({ card: { link: cardLink('', { kind, id, site }) } })}
    >
      Pull card of {id}
    </button>
  );
}
