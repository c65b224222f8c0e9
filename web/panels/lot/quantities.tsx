import { itemTotals } from '../../../calc/takeoff/totals.ts';
import { withCounts } from '../../document/counted-plan.ts';
import { useDocument } from '../../document/use-document.tsx';
import { quantityWords } from '../../words/quantities.ts';

/** The takeoff in short: what there is of each item. The table under the board has every row with its basis. */
export function QuantitiesInShort() {
  const takeoff = useDocument((state) => withCounts(state.plan).takeoff);
  const units = useDocument((state) => state.site.units);
  return (
    <section aria-label="Quantities">
      <h3>Quantities</h3>
      <dl className="facts">
        {itemTotals(takeoff).map(({ item, quantity, unit }) => (
          <div key={`${item} ${unit}`}>
            <dt>{item}</dt>
            <dd>{quantityWords(quantity, unit, units)}</dd>
          </div>
        ))}
      </dl>
    </section>
  );
}
