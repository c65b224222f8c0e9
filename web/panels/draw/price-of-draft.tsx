import { stallsServed } from '../../../calc/comparison.ts';
import { costOf } from '../../../calc/takeoff/cost.ts';
import { useView } from '../../board/view-store.ts';
import { usePrices } from '../../document/price-store.ts';
import { useDocument } from '../../document/use-document.ts';
import { dollars } from '../../words/dollars.ts';

/** What the drawn thing adds to the price of the lot, by the price list in use. */
export function PriceOfDraft() {
  const before = useView((state) => state.draftOver);
  const takeoff = useDocument((state) => state.plan.takeoff);
  const site = useDocument((state) => state.site);
  const list = usePrices((state) => state.list);
  if (!before || before === takeoff) return null;
  const served = stallsServed(site);
  const adds = costOf(takeoff, list, served).price - costOf(before, list, served).price;
  if (Math.abs(adds) < 0.01) return null;
  return (
    <p className="quiet" data-testid="price-of-draft">
      {adds > 0 ? 'Adds' : 'Saves'} {dollars(Math.abs(adds))} by {list.name}.
    </p>
  );
}
