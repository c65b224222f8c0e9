import type { Deviation, FieldCure } from '../../../calc/field/cures.ts';
import { tapeWords } from '../../../calc/field/set-out-words.ts';
import type { PriceList } from '../../../calc/prices/price-list.ts';
import type { Units } from '../../../routing/site/schema/vocabulary.ts';
import type { Drop } from '../../../routing/site/site.ts';
import { hasCome, usePrices } from '../../document/files/price-store.ts';
import { useDocument } from '../../document/use-document.tsx';
import { priceWords } from '../../words/dollars.ts';
import { nearestInch } from '../../words/lengths.ts';
import { useFieldAnswer } from '../ask-field.ts';

/** What it costs and takes that a drop was built elsewhere, and what would cure what fails by it. The drawing stays. */
export function DeviationFacts({ drop }: { readonly drop: Drop }) {
  const units = useDocument((state) => state.site.units);
  const found = useDocument((state) => state.site.asBuilt.get(drop.id));
  const prices = usePrices((state) => state.list);
  const measured = hasCome(prices) && (found?.box !== undefined || found?.retractor !== undefined);
  const { deviation, fault } = useFieldAnswer(
    measured ? { kind: 'deviation', drop: drop.id, prices } : null,
    measured ? `${drop.id} ${prices.name}` : '',
  );
  if (!measured) return null;
  if (fault) return <p role="alert">What it does could not be worked out: {fault}</p>;
  if (deviation === undefined)
    return (
      <p role="status" className="quiet">
        Planning with {drop.id} where it was built
      </p>
    );
  if (deviation === null) return null;
  return (
    <section className="deviation" aria-label={`What ${drop.id} takes where it was built`}>
      <p>{takesWords(deviation, prices, units)}</p>
      {deviation.faults.length > 0 && (
        <>
          <h3>What would cure it</h3>
          <ul>
            {deviation.cures.map((cure) => (
              <li key={cure.kind}>{cureWords(cure, units)}</li>
            ))}
          </ul>
        </>
      )}
    </section>
  );
}

function takesWords({ wire, price }: Deviation, prices: PriceList, units: Units): string {
  const less = wire < 0 ? 'less' : 'more';
  const wires = Math.abs(wire) < 1 / 24 ? 'The same wire' : `${nearestInch(Math.abs(wire), units)} ${less} wire`;
  const dollars = Math.abs(price.adds);
  const cost = dollars < 0.5 ? 'no other price' : `${priceWords(dollars, prices)} ${price.adds < 0 ? 'less' : 'more'}`;
  return `${wires}, ${cost} by ${prices.name}.`;
}

function cureWords(cure: FieldCure, units: Units): string {
  if (cure.kind === 'cord')
    return `A cord of ${nearestInch(cure.cord, units)} in place of ${nearestInch(cure.was, units)}.`;
  if (cure.kind === 'move') return `Move it ${tapeWords(cure.feet, units)} back toward where it is drawn.`;
  return `Extend ${cure.raceway} by ${tapeWords(cure.feet, units)} to the box.`;
}
