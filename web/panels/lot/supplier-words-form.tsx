import { type NearLine, nearLines } from '../../../calc/prices/near-lines.ts';
import type { PriceList, UnknownLine } from '../../../calc/prices/price-list.ts';
import { meansOf } from '../../../calc/prices/price-sheet.ts';
import { withMeaning, withoutWord } from '../../../calc/prices/supplier-words.ts';
import type { CostSheet } from '../../../calc/takeoff/bid/cost.ts';
import { type WantedLine, wantedLines } from '../../../calc/takeoff/bid/wanted-lines.ts';
import { priceStore, takePrices } from '../../document/files/price-store.ts';
import { FieldGroup } from '../../parts/field-group.tsx';
import { ChoiceField } from '../../parts/fields.tsx';
import { dollars } from '../../words/dollars.ts';

/** So many are asked, and shown as known, at a time. */
const SHOWN = 20;
/** So many are looked through for those that come near to what this job needs. */
const LOOKED = 1000;
/** What a line is said to be that nothing here is. */
const NOTHING = 'nothing that is needed here';

interface Asked {
  readonly line: UnknownLine;
  readonly near: readonly NearLine<WantedLine>[];
}

/** Words of a supplier's list that are not known: each is asked once, near matches first, and none is taken unasked. */
export function SupplierWordsForm({ list, cost }: { readonly list: PriceList; readonly cost: CostSheet }) {
  const { unknown = [], words = [] } = list;
  if (unknown.length + words.length === 0) return null;
  const wanted = wantedLines(
    [...cost.missing, ...cost.rows].map(({ taken }) => taken),
    null,
  );
  const asked = unknown
    .slice(0, LOOKED)
    .map((line): Asked => ({ line, near: nearLines(`${line.theirs} ${line.part ?? ''}`, line.unit, wanted) }))
    .sort((a, b) => (b.near[0]?.score ?? 0) - (a.near[0]?.score ?? 0));
  return (
    <FieldGroup name="rates: suppliers' words" heading="Suppliers' words">
      {unknown.length > 0 && (
        <p>
          <strong>
            {unknown.length} {unknown.length === 1 ? 'line is' : 'lines are'} in words that are not known here
          </strong>{' '}
          and price nothing until you say what they mean. It is asked once.
        </p>
      )}
      {asked.slice(0, SHOWN).map((one) => (
        <Meaning key={`${one.line.part ?? ''} ${one.line.theirs}`} asked={one} wanted={wanted} />
      ))}
      {unknown.length > SHOWN && <p className="quiet">And {unknown.length - SHOWN} more, once these are answered.</p>}
      {words.slice(-SHOWN).map((word) => (
        <p key={word.theirs} className="source">
          {word.theirs}: {meansOf(word)}.{' '}
          <button
            type="button"
            className="plain"
            aria-label={`Forget ${word.theirs}`}
            onClick={() => void takePrices(withoutWord(priceStore.getState().list, word.theirs))}
          >
            Forget
          </button>
        </p>
      ))}
      {words.length > SHOWN && <p className="quiet">And {words.length - SHOWN} more that are known.</p>}
    </FieldGroup>
  );
}

const nameOf = ({ item, spec }: WantedLine): string => `${item}, ${spec}`;

/** One line of a supplier, with what it may be: what is near, then all else that is counted alike. */
function Meaning({ asked: { line, near }, wanted }: { readonly asked: Asked; readonly wanted: readonly WantedLine[] }) {
  const { theirs, part, unit, material } = line;
  const first = near.map((one) => nameOf(one.line));
  const others = wanted.filter((one) => unit === null || one.unit === unit).map(nameOf);
  const choose = (chosen: string): void => {
    const one = wanted.find((each) => nameOf(each) === chosen);
    if (chosen === '') return;
    void takePrices(withMeaning(priceStore.getState().list, line, one?.item ?? '', one?.spec ?? ''));
  };
  return (
    <>
      <ChoiceField
        label={theirs}
        value=""
        choices={['', ...new Set([...first, ...others]), NOTHING]}
        words={(choice) => (choice === '' ? 'what is it?' : first.includes(choice) ? `near: ${choice}` : choice)}
        onChange={choose}
      />
      <p className="source">
        {material < 1 ? `$${material.toPrecision(3)}` : dollars(material)}{' '}
        {unit === null ? 'a unit' : unit === 'ft' ? 'a ft' : 'each'}
        {part !== undefined && `, part ${part}`}.{first.length > 0 && ` Near: ${first.join('; ')}.`}
      </p>
    </>
  );
}
