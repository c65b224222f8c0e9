import { withBidDay } from '../../../calc/prices/edit-list.ts';
import { dayIn } from '../../../calc/prices/read-cells.ts';
import { dayOf } from '../../../calc/sheets/days/day.ts';
import type { CostSheet } from '../../../calc/takeoff/bid/cost.ts';
import { takePrices } from '../../document/files/price-store.ts';
import { FieldGroup } from '../../parts/field-group.tsx';
import { TextField } from '../../parts/fields.tsx';
import { Allowances, Exclusions } from './allowances.tsx';
import { type CostProps, dayCheck, inUse } from './bid-terms-parts.tsx';
import { Quotes } from './quotes.tsx';

/** What a list has besides prices and rates, entered and changed in place: day of the bid, quotes, allowances, exclusions. */
export function BidTermsForm({ cost }: { readonly cost: CostSheet }) {
  return (
    <>
      <FieldGroup name="rates: quotes" heading="Quotes">
        <BidDay cost={cost} />
        <Quotes cost={cost} />
      </FieldGroup>
      <FieldGroup name="rates: allowances" heading="Allowances">
        <Allowances cost={cost} />
      </FieldGroup>
      <FieldGroup name="rates: exclusions" heading="Not in the price">
        <Exclusions cost={cost} />
      </FieldGroup>
    </>
  );
}

function BidDay({ cost }: CostProps) {
  const own = inUse().bidDay ?? '';
  const set = (day: string): void => void takePrices(withBidDay(inUse(), dayIn(day) ?? undefined));
  return (
    <>
      <TextField label="day of the bid" value={own} check={dayCheck} onChange={set} />
      <p className="source">
        {own === '' &&
          (cost.bidDay === null
            ? 'Quotes are held against no day. '
            : `${cost.bidDay}, of the latest issue of the project. `)}
        <button type="button" className="plain" onClick={() => set(dayOf(new Date()))}>
          Bid of today
        </button>
      </p>
    </>
  );
}
