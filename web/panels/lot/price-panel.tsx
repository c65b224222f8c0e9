import { useRef, useState } from 'react';
import { pricedOf } from '../../../calc/plan/compared/alternative.ts';
import { unitFigures } from '../../../calc/plan/compared/unit-figures.ts';
import { priceSheet } from '../../../calc/prices/price-sheet.ts';
import { csv } from '../../../calc/sheets/csv.ts';
import { bidLines } from '../../../calc/takeoff/bid/bid-lines.ts';
import { SYSTEMS } from '../../../calc/takeoff/bid/cost.ts';
import { usedPrice } from '../../../calc/takeoff/bid/price-change.ts';
import { withCounts } from '../../document/counted-plan.ts';
import { download } from '../../document/files/files.ts';
import { dismissPriceErrors, dropPrices, hasCome, openPrices, usePrices } from '../../document/files/price-store.ts';
import { useDocument, useDocumentStore } from '../../document/use-document.tsx';
import { dollars, priceWords } from '../../words/dollars.ts';
import { failureWords } from '../../words/failure-words.ts';
import { BidTermsForm } from './bid-terms-form.tsx';
import { RatesForm } from './rates-form.tsx';
import { SupplierWordsForm } from './supplier-words-form.tsx';
import { WhatIfPicture } from './what-if-picture.tsx';

/** What the lot costs, by system, with overhead and margin; and the price list behind it. */
export function PricePanel() {
  const plan = useDocument((state) => state.plan);
  const site = useDocument((state) => state.site);
  const list = usePrices((state) => state.list);
  const [cents, setCents] = useState(false);
  if (!hasCome(list)) return null;
  const cost = pricedOf(withCounts(plan).takeoff, site, list);
  const used = usedPrice(cost);
  const { rates } = list;
  const words = (amount: number): string => (cents ? dollars(amount) : priceWords(amount, list));
  return (
    <section aria-label="Price">
      <h3>Price</h3>
      <dl className="facts sums">
        {SYSTEMS.map((system) => (
          <Fact key={system} name={system} value={words(cost.bySystem[system])} />
        ))}
        <Fact name={`labor in it, at ${dollars(rates.labor)} an hour`} value={`${cost.hours.toFixed(1)} hours`} />
        {bidLines(cost).map(({ name, dollars: amount }) => (
          <Fact key={name} name={name} sum={name === 'price'} value={words(amount)} />
        ))}
        <Fact name="price by lengths alone" value={words(used)} />
        <Fact name="of the price, for what is left of sticks and reels" value={words(cost.price - used)} />
        {unitFigures({ cost, site, plan: withCounts(plan) }).map(
          ({ name, unit, value }) =>
            value !== null && (
              <Fact key={name} name={name} value={unit === 'dollars' ? words(value) : `${value.toFixed(1)} hours`} />
            ),
        )}
      </dl>
      <label className="tick">
        <input type="checkbox" checked={cents} onChange={(event) => setCents(event.currentTarget.checked)} /> cents
      </label>
      {cost.missing.length > 0 && (
        <p>
          <strong>{cost.missing.length} items have no price</strong> and are in no sum: the cost table lists them first.
        </p>
      )}
      {cost.guesses > 0 && (
        <p>
          <strong>{cost.guesses} rows stand on a line for any size</strong> or beyond a curve.
        </p>
      )}
      {cost.expired > 0 && (
        <p>
          <strong>
            {cost.expired} {cost.expired === 1 ? 'row stands' : 'rows stand'} on a quote that ran out
          </strong>{' '}
          before the day of the bid, {cost.bidDay}: the cost table lists them first.
        </p>
      )}
      <WhatIfPicture cost={cost} words={words} />
      <SupplierWordsForm list={list} cost={cost} />
      <RatesForm list={list} />
      <BidTermsForm cost={cost} />
      <PriceListDoor />
    </section>
  );
}

const Fact = ({
  name,
  value,
  sum = false,
}: {
  readonly name: string;
  readonly value: string;
  readonly sum?: boolean;
}) => (
  <div className={sum ? 'sum' : undefined}>
    <dt>{name}</dt>
    <dd>{value}</dd>
  </div>
);

/** Opens a price file, saves the one in use, or goes back to the invented one. */
function PriceListDoor() {
  const document = useDocumentStore();
  const list = usePrices((state) => state.list);
  const faults = usePrices((state) => state.errors);
  const file = useRef<HTMLInputElement>(null);
  const open = async (chosen: File): Promise<void> => {
    try {
      await openPrices(await chosen.text(), chosen.name);
    } catch (error) {
      document.getState().notify(`${chosen.name} was not opened: ${failureWords(error)}`);
    }
  };
  return (
    <>
      <p className="quiet">
        Prices: {list.name}. {list.name.endsWith('invented prices') && 'What is not your own in them is invented.'}
      </p>
      <p className="price-door">
        <button type="button" onClick={() => file.current?.click()}>
          Open a price file…
        </button>
        <button type="button" onClick={() => download('prices.csv', 'text/csv;charset=utf-8', csv(priceSheet(list)))}>
          Save the prices
        </button>
        {list.name !== 'invented prices' && (
          <button type="button" onClick={() => void dropPrices()}>
            Back to invented
          </button>
        )}
      </p>
      <input
        ref={file}
        type="file"
        accept=".csv,text/csv"
        hidden
        aria-label="Price file"
        onChange={(event) => {
          const [chosen] = event.currentTarget.files ?? [];
          if (chosen) void open(chosen);
          event.currentTarget.value = '';
        }}
      />
      {faults && (
        <div role="alert">
          <p>
            <strong>{faults.file} was not opened.</strong> The prices in use stand.
          </p>
          <ul>
            {faults.errors.slice(0, 20).map(({ place, says }) => (
              <li key={`${place} ${says}`}>{place ? `${place}: ${says}` : says}</li>
            ))}
          </ul>
          {faults.errors.length > 20 && <p>And {faults.errors.length - 20} more.</p>}
          <button type="button" onClick={dismissPriceErrors}>
            Dismiss
          </button>
        </div>
      )}
    </>
  );
}
