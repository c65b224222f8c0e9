import { withAllowances, withExclusions } from '../../../calc/prices/edit-list.ts';
import { takePrices } from '../../document/files/price-store.ts';
import { TextField, TypedField } from '../../parts/fields.tsx';
import { readNumber } from '../../parts/read-number.ts';
import { type CostProps, inUse, MAX_ENTRIES, NewText, Remove, uniqueName } from './bid-terms-parts.tsx';

export function Allowances(_: CostProps) {
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
            check={uniqueName(allowances.filter((_, at) => at !== i).map(({ name }) => name))}
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
      {allowances.length < MAX_ENTRIES && (
        <NewText
          label="new allowance for"
          taken={allowances.map(({ name }) => name)}
          onTake={(name) => put([...allowances, { name, dollars: 0 }])}
        />
      )}
    </>
  );
}

export function Exclusions(_: CostProps) {
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
            check={uniqueName(exclusions.filter((_, at) => at !== i))}
            onChange={(next) => put(exclusions.map((one, at) => (at === i ? next : one)))}
          />
          <Remove words="Take this line away" onClick={() => put(exclusions.filter((_, at) => at !== i))} />
        </fieldset>
      ))}
      {exclusions.length < MAX_ENTRIES && (
        <NewText label="nor is" taken={exclusions} onTake={(words) => put([...exclusions, words])} />
      )}
    </>
  );
}
