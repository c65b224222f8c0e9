import type { Step } from '../../../calc/words/explain.ts';
import { stepFigure } from '../../../calc/words/step-words.ts';
import { useDocument } from '../../document/use-document.tsx';

/** The steps of a calculation for a person who checks it: what is found, how, from what, and by which rule. */
export function Working({ steps }: { readonly steps: readonly Step[] }) {
  const units = useDocument((state) => state.site.units);
  if (steps.length === 0) return <p className="quiet">No steps: the plan has no such figure.</p>;
  return (
    <ol className="working">
      {steps.map((step) => (
        <li key={`${step.find} ${step.formula} ${Object.values(step.values).join(' ')}`}>
          <p>
            <b>
              {step.find}: {stepFigure(step.result, units, step.unit)}
            </b>
          </p>
          <p>{step.formula}</p>
          <p className="quiet small">
            {Object.entries(step.values)
              .map(([name, value]) => `${name} ${stepFigure(value, units)}`)
              .join(', ')}
          </p>
          <p className="source">{step.source}</p>
        </li>
      ))}
    </ol>
  );
}
