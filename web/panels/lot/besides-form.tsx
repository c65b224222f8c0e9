import { type ReactNode, useState } from 'react';
import { withAllowances, withBidDay, withExclusions, withQuotes } from '../../../calc/prices/edit-list.ts';
import type { Quote } from '../../../calc/prices/price-list.ts';
import { dayIn } from '../../../calc/prices/read-cells.ts';
import { quoteWords } from '../../../calc/sheets/cost-sheet.ts';
import { dayOf } from '../../../calc/sheets/day.ts';
import { type CostSheet, quotedRows } from '../../../calc/takeoff/cost.ts';
import { priceStore, takePrices } from '../../document/files/price-store.ts';
import { FieldGroup } from '../../parts/field-group.tsx';
import { ChoiceField, TextField, TypedField } from '../../parts/fields.tsx';
import { readNumber } from '../../parts/read-number.ts';

/** So many of each may stand in a list. */
const MOST = 200;

/** What a list has besides prices and rates, entered and changed in place: day of the bid, quotes, allowances, exclusions. */
export function BesidesForm({ cost }: { readonly cost: CostSheet }) {
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

interface Of {
  readonly cost: CostSheet;
}

/** The list in use, for an edit that comes after others. */
const inUse = () => priceStore.getState().list;

const dayCheck = (text: string): string | null =>
  text === '' || dayIn(text) !== null ? null : 'a day such as 2026-12-31';

function BidDay({ cost }: Of) {
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

const EMPTY = { name: '', material: null, covers: [], validUntil: undefined } as const;
type QuoteDraft = Omit<Quote, 'material' | 'validUntil'> & {
  readonly material: number | null;
  readonly validUntil?: string | undefined;
};

function Quotes({ cost }: Of) {
  const quotes = inUse().quotes ?? [];
  const [draft, setDraft] = useState<QuoteDraft | null>(null);
  const put = (next: readonly Quote[]): void => void takePrices(withQuotes(inUse(), next));
  const isWhole = draft !== null && draft.name !== '' && draft.material !== null && draft.covers.length > 0;
  return (
    <>
      {quotes.map((quote, i) => (
        <fieldset key={`${i} of ${quotes.length}`} className="fields issue" aria-label={`Quote ${quote.name}`}>
          <QuoteFields
            quote={quote}
            others={quotes.filter((_, at) => at !== i)}
            cost={cost}
            onChange={(next) => put(quotes.map((one, at) => (at === i ? asQuote(next) : one)))}
          />
          <p className="quiet">{standingOf(quote, cost)}</p>
          <Remove words="Take this quote away" onClick={() => put(quotes.filter((_, at) => at !== i))} />
        </fieldset>
      ))}
      {draft !== null && (
        <fieldset className="fields issue" aria-label="New quote">
          <QuoteFields quote={draft} others={quotes} cost={cost} onChange={setDraft} />
          <button
            type="button"
            disabled={!isWhole}
            onClick={() => {
              put([...quotes, asQuote(draft)]);
              setDraft(null);
            }}
          >
            Take the quote in
          </button>
          <Remove words="Leave it" onClick={() => setDraft(null)} />
        </fieldset>
      )}
      {draft === null && quotes.length < MOST && <Remove words="Add a quote" onClick={() => setDraft(EMPTY)} />}
    </>
  );
}

/** A quote whose fields are filled in. */
const asQuote = ({ name, material, covers, validUntil }: QuoteDraft): Quote => ({
  name,
  material: material ?? 0,
  covers,
  ...(validUntil !== undefined && { validUntil }),
});

/** What a quote covers of this bill, and how it stands on the day of the bid. */
function standingOf(quote: Quote, cost: CostSheet): string {
  const many = quotedRows(cost, quote);
  const standing = cost.quotes.find(({ name }) => name === quote.name);
  if (many === 0 || standing === undefined) return 'It covers no row of this bill, and is not in the price.';
  return `It covers ${many} ${many === 1 ? 'row' : 'rows'} of this bill. ${quoteWords(standing, cost.bidDay)}`;
}

function QuoteFields({
  quote,
  others,
  cost,
  onChange,
}: Of & {
  readonly quote: QuoteDraft;
  readonly others: readonly Quote[];
  readonly onChange: (next: QuoteDraft) => void;
}) {
  const { name, material, covers, validUntil } = quote;
  const items = [...new Set([...cost.rows, ...cost.missing].map(({ item }) => item))].filter(
    (item) => !covers.includes(item),
  );
  return (
    <>
      <TextField
        label="quote of"
        value={name}
        check={named(others.map((other) => other.name))}
        onChange={(next) => onChange({ ...quote, name: next })}
      />
      <TypedField
        label="all its material, $"
        value={material}
        print={(dollars) => (dollars === null ? '' : String(dollars))}
        read={(text) => readNumber(text, { unit: '', least: 0 })}
        onChange={(next) => onChange({ ...quote, material: next })}
      />
      <TextField
        label="covers, with ; between"
        long
        value={covers.join('; ')}
        check={(text) => (itemsIn(text).length === 0 ? 'the items that it covers' : null)}
        onChange={(text) => onChange({ ...quote, covers: itemsIn(text) })}
      />
      {items.length > 0 && (
        <ChoiceField
          label="cover another item"
          value=""
          choices={['', ...items]}
          onChange={(item) => item !== '' && onChange({ ...quote, covers: [...covers, item] })}
        />
      )}
      <TextField
        label="valid until"
        value={validUntil ?? ''}
        check={dayCheck}
        onChange={(text) => onChange({ ...quote, validUntil: dayIn(text) ?? undefined })}
      />
    </>
  );
}

const itemsIn = (text: string): readonly string[] => text.split(';').flatMap((words) => words.trim() || []);

function Allowances(_: Of) {
  const allowances = inUse().allowances ?? [];
  const put = (next: typeof allowances): void => void takePrices(withAllowances(inUse(), next));
  return (
    <>
      {allowances.map((allowance, i) => (
        <fieldset
          key={`${i} of ${allowances.length}`}
          className="fields issue"
          aria-label={`Allowance for ${allowance.name}`}
        >
          <TextField
            label="allowance for"
            value={allowance.name}
            check={named(allowances.filter((_, at) => at !== i).map(({ name }) => name))}
            onChange={(name) => put(allowances.map((one, at) => (at === i ? { ...one, name } : one)))}
          />
          <TypedField
            label={`allowance for ${allowance.name}, $`}
            value={allowance.dollars}
            print={String}
            read={(text) => readNumber(text, { unit: '', least: 0 })}
            onChange={(dollars) => put(allowances.map((one, at) => (at === i ? { ...one, dollars } : one)))}
          />
          <Remove words="Take this allowance away" onClick={() => put(allowances.filter((_, at) => at !== i))} />
        </fieldset>
      ))}
      {allowances.length < MOST && (
        <NewText
          label="new allowance for"
          taken={allowances.map(({ name }) => name)}
          onTake={(name) => put([...allowances, { name, dollars: 0 }])}
        />
      )}
    </>
  );
}

function Exclusions(_: Of) {
  const exclusions = inUse().exclusions ?? [];
  const put = (next: readonly string[]): void => void takePrices(withExclusions(inUse(), next));
  return (
    <>
      {exclusions.map((words, i) => (
        <fieldset key={`${i} of ${exclusions.length}`} className="fields issue" aria-label={`Exclusion ${i + 1}`}>
          <TextField
            label={`not in the price, ${i + 1}`}
            long
            value={words}
            check={named(exclusions.filter((_, at) => at !== i))}
            onChange={(next) => put(exclusions.map((one, at) => (at === i ? next : one)))}
          />
          <Remove words="Take this line away" onClick={() => put(exclusions.filter((_, at) => at !== i))} />
        </fieldset>
      ))}
      {exclusions.length < MOST && (
        <NewText label="nor is" taken={exclusions} onTake={(words) => put([...exclusions, words])} />
      )}
    </>
  );
}

/** A name that no other of its kind has. */
const named =
  (others: readonly string[]) =>
  (text: string): string | null =>
    text === ''
      ? 'fill this in'
      : text.length > 200
        ? '200 letters or fewer'
        : others.includes(text)
          ? 'there is one of this name'
          : null;

/** Where the name of another is typed: taken in with Enter or when it is left. */
const NewText = ({
  label,
  taken,
  onTake,
}: {
  readonly label: string;
  readonly taken: readonly string[];
  readonly onTake: (text: string) => void;
}): ReactNode => (
  <TextField
    label={label}
    value=""
    check={(text) => (text === '' ? null : named(taken)(text))}
    onChange={(text) => text !== '' && onTake(text)}
  />
);

const Remove = ({ words, onClick }: { readonly words: string; readonly onClick: () => void }) => (
  <button type="button" className="plain" onClick={onClick}>
    {words}
  </button>
);
