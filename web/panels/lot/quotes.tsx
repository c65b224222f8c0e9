import { withQuotes } from '../../../calc/prices/edit-list.ts';
import type { Quote } from '../../../calc/prices/price-list.ts';
import { dayIn } from '../../../calc/prices/read-cells.ts';
import { quoteWords } from '../../../calc/sheets/cost/cost-sheet.ts';
import { type CostSheet, quotedRows } from '../../../calc/takeoff/bid/cost.ts';
import { counted } from '../../../routing/words/counted.ts';
import { takePrices } from '../../document/files/price-store.ts';
import type { QuoteDraft } from '../../page-state/page-store.ts';
import { usePage, usePageStore } from '../../page-state/page-store.ts';
import { ChoiceField, TextField, TypedField } from '../../parts/fields.tsx';
import { readNumber } from '../../parts/read-number.ts';
import { type CostProps, dayCheck, inUse, MAX_ENTRIES, Remove, uniqueName } from './bid-terms-parts.tsx';

const EMPTY = { name: '', material: null, covers: [], validUntil: undefined } as const;

export function Quotes({ cost }: CostProps) {
  const quotes = inUse().quotes ?? [];
  // It stands while someone looks something up on the board, which takes this form away.
  const page = usePageStore();
  const draft = usePage(({ quote }) => quote);
  const setDraft = (quote: QuoteDraft | null): void => page.setState({ quote });
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
      {draft === null && quotes.length < MAX_ENTRIES && <Remove words="Add a quote" onClick={() => setDraft(EMPTY)} />}
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
  return `It covers ${counted(many, 'row', 'rows')} of this bill. ${quoteWords(standing, cost.bidDay)}`;
}

function QuoteFields({
  quote,
  others,
  cost,
  onChange,
}: CostProps & {
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
        check={uniqueName(others.map((other) => other.name))}
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
