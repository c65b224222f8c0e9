import type { ChargingDay } from '../../../routing/site/site.ts';
import { NumberField, TypedField } from '../../parts/fields.tsx';
import { readNumber } from '../../parts/read-number.ts';
import { ClockField } from './cars/clock-field.tsx';

type Tariff = NonNullable<ChargingDay['tariff']>;
type Priced = Tariff['energy'][number];

/** As the site file has it. */
const MOST_SPANS = 200;
const DAYS = 21;
const INTERVAL = 15;
const ALWAYS: Priced = { from: '00:00', to: '00:00', price: 0 };

interface TariffProps {
  readonly tariff: Tariff | undefined;
  readonly onChange: (tariff: Tariff | undefined) => void;
}

/** Prices of energy by the hour and of demand by the month; undefined is no tariff. */
export function TariffForm({ tariff, onChange }: TariffProps) {
  if (tariff === undefined)
    return (
      <button type="button" onClick={() => onChange({ energy: [ALWAYS] })}>
        Give a tariff
      </button>
    );
  const { energy, demand = [], interval = INTERVAL, days = DAYS } = tariff;
  return (
    <>
      <SpanList
        name="energy"
        says="Money a kWh; of hours that two prices hold the first counts. Every hour needs one."
        spans={energy}
        least={1}
        onChange={(spans) => onChange({ ...tariff, energy: spans })}
      />
      <SpanList
        name="demand"
        says="Money a kW of the highest interval that begins in these hours, once a billing period."
        spans={demand}
        least={0}
        onChange={(spans) => onChange({ ...tariff, demand: spans })}
      />
      <NumberField
        label="demand is averaged over"
        unit="min"
        whole
        most={1440}
        value={interval}
        onChange={(value) => onChange({ ...tariff, interval: value })}
      />
      <NumberField
        label="such days a billing period"
        unit=""
        whole
        most={366}
        value={days}
        onChange={(value) => onChange({ ...tariff, days: value })}
      />
      <button type="button" onClick={() => onChange(undefined)}>
        No tariff
      </button>
    </>
  );
}

interface SpansProps {
  readonly name: 'energy' | 'demand';
  readonly says: string;
  readonly spans: readonly Priced[];
  /** So many stay. */
  readonly least: number;
  readonly onChange: (spans: Priced[]) => void;
}

function SpanList({ name, says, spans, least, onChange }: SpansProps) {
  const set = (place: number, patch: Partial<Priced>): void =>
    onChange(spans.map((span, i) => (i === place ? { ...span, ...patch } : span)));
  return (
    <fieldset className="day-spans">
      <legend>price of {name}</legend>
      <p className="quiet small">{says}</p>
      {spans.map((span, i) => (
        // Prices keep their places: the first that holds an hour counts.
        <div key={i} className="day-span">
          <ClockField label={`${name} ${i + 1} from`} value={span.from} onChange={(from) => set(i, { from })} />
          <ClockField label={`${name} ${i + 1} to`} value={span.to} onChange={(to) => set(i, { to })} />
          <TypedField
            label={`${name} ${i + 1} price`}
            value={span.price}
            print={String}
            read={(text) => readNumber(text, { unit: '', least: 0 })}
            onChange={(price) => set(i, { price })}
          />
          {spans.length > least && (
            <button type="button" onClick={() => onChange(spans.filter((_, place) => place !== i))}>
              Remove<span className="heard"> {`${name} price ${i + 1}`}</span>
            </button>
          )}
        </div>
      ))}
      {spans.length < MOST_SPANS && (
        // A new price goes before the others, which hold for the rest of the day.
        <button type="button" onClick={() => onChange([ALWAYS, ...spans].slice(0, MOST_SPANS))}>
          Add a price of {name}
        </button>
      )}
    </fieldset>
  );
}
