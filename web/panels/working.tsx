import type { Step } from '../../calc/explain.ts';

/** The steps of a calculation for a person who checks it: what is found, how, from what, and by which rule. */
export function Working({ steps }: { readonly steps: readonly Step[] }) {
  return (
    <ol className="working">
      {steps.map((step) => (
        <li key={`${step.find} ${step.formula}`}>
          <p>
            <b>
              {step.find}: {step.result}
              {step.unit ? ` ${step.unit}` : ''}
            </b>
          </p>
          <p>{step.formula}</p>
          <p className="quiet small">
            {Object.entries(step.values)
              .map(([name, value]) => `${name} ${value}`)
              .join(', ')}
          </p>
          <p className="source">{step.source}</p>
        </li>
      ))}
    </ol>
  );
}
