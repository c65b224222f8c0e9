import type { Step } from '../../calc/explain.ts';

/** A figure as the steps name it: six significant digits, a word as it is. */
const figure = (value: string | number): string =>
  typeof value === 'number' ? String(Number(value.toPrecision(6))) : value;

/** The steps of a calculation for a person who checks it: what is found, how, from what, and by which rule. */
export function Working({ steps }: { readonly steps: readonly Step[] }) {
  if (steps.length === 0) return <p className="quiet">No steps: the plan has no such figure.</p>;
  return (
    <ol className="working">
      {steps.map((step) => (
        <li key={`${step.find} ${step.formula} ${Object.values(step.values).join(' ')}`}>
          <p>
            <b>
              {step.find}: {figure(step.result)}
              {step.unit ? ` ${step.unit}` : ''}
            </b>
          </p>
          <p>{step.formula}</p>
          <p className="quiet small">
            {Object.entries(step.values)
              .map(([name, value]) => `${name} ${figure(value)}`)
              .join(', ')}
          </p>
          <p className="source">{step.source}</p>
        </li>
      ))}
    </ol>
  );
}
