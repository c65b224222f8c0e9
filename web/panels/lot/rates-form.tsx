import { withCrew, withRate } from '../../../calc/prices/edit-list.ts';
import type { PriceList } from '../../../calc/prices/price-list.ts';
import { RATE_FACTS, type RateFact } from '../../../calc/prices/rate-facts.ts';
import { RATES, type Rate, ratesOf } from '../../../calc/prices/rates.ts';
import { takePrices } from '../../document/files/price-store.ts';
import { FieldGroup } from '../../parts/field-group.tsx';
import { TypedField } from '../../parts/fields.tsx';
import { readNumber } from '../../parts/read-number.ts';

const GROUPS: Readonly<Record<RateFact['group'], string>> = {
  labor: 'Labor',
  material: 'On material',
  job: 'On the job',
  sum: 'On the sums',
};

/** Every rate of the estimate, each with what it is by; kept with the prices. */
export function RatesForm({ list }: { readonly list: PriceList }) {
  const rates = ratesOf(list.rates);
  return (
    <>
      {Object.entries(GROUPS).map(([group, heading]) => (
        <FieldGroup key={group} name={`rates: ${heading}`} heading={`Rates: ${heading.toLowerCase()}`}>
          {RATES.filter((rate) => RATE_FACTS[rate].group === group).map((rate) => (
            <RateField key={rate} rate={rate} list={list} value={rates[rate]} />
          ))}
          {group === 'labor' && <Crew list={list} />}
        </FieldGroup>
      ))}
    </>
  );
}

function RateField({ rate, list, value }: { readonly rate: Rate; readonly list: PriceList; readonly value: number }) {
  const { words, kind, basis }: RateFact = RATE_FACTS[rate];
  const isShare = kind === 'share';
  const unit = isShare ? '%' : '';
  const most = isShare ? 1000 : 1e9;
  return (
    <div title={basis}>
      <TypedField
        label={words.replace(', share of', ' on').replace(', dollars', ', $')}
        value={isShare ? Number((value * 100).toPrecision(10)) : value}
        print={(shown) => `${shown}${unit && ` ${unit}`}`}
        read={(text) => readNumber(text, { unit, least: 0, most })}
        onChange={(typed) => void takePrices(withRate(list, rate, isShare ? typed / 100 : typed))}
      />
    </div>
  );
}

/** The trades of the crew, each with its wage and how many hands; absent where the list gives the labor rate itself. */
function Crew({ list }: { readonly list: PriceList }) {
  const crew = list.crew ?? [];
  return crew.map((member, i) => {
    const change = (field: 'wage' | 'count') => (value: number) =>
      void takePrices(
        withCrew(
          list,
          crew.map((one, place) => (place === i ? { ...one, [field]: value } : one)),
        ),
      );
    return (
      <div key={member.trade}>
        <TypedField
          label={`${member.trade}, $ an hour`}
          value={member.wage}
          print={String}
          read={(text) => readNumber(text, { unit: '', least: 0 })}
          onChange={change('wage')}
        />
        <TypedField
          label={`${member.trade}, hands`}
          value={member.count}
          print={String}
          read={(text) => readNumber(text, { unit: '', least: 0 })}
          onChange={change('count')}
        />
      </div>
    );
  });
}
