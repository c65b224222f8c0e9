import { addressOf } from '../../../routing/site/records/registers.ts';
import type { Mark } from '../../../routing/site/site.ts';
import { useMarks } from '../records/use-marks.ts';

/** Steps of the work that are marked done. */
export const STEPS = { set: 'Set', pulled: 'Pulled', terminated: 'Terminated', tested: 'Tested' } as const;
type Step = keyof typeof STEPS;

/** What is done of a thing, by whom and when; each step is marked, and taken back, by one press. */
export function StepsFacts({ id, steps }: { readonly id: string; readonly steps: readonly Step[] }) {
  const { registers, write } = useMarks();
  return (
    <fieldset className="steps">
      <legend>{id}</legend>
      {steps.map((step) => {
        const register = registers.get(addressOf({ of: id, what: step }));
        const done = register?.now ?? null;
        return (
          <button
            key={step}
            type="button"
            aria-pressed={done !== null}
            onClick={() =>
              done
                ? write(`Take back ${id} ${step}`, { of: id, what: step, gone: true })
                : write(`${STEPS[step]} ${id}`, { of: id, what: step })
            }
          >
            {STEPS[step]}
            <span>{done ? whoSays(done) : 'not yet'}</span>
            {register?.conflict && <span className="build-off">two say otherwise</span>}
          </button>
        );
      })}
    </fieldset>
  );
}

/** "JB, 2026-05-31". */
export const whoSays = ({ by, on }: Pick<Mark, 'by' | 'on'>): string =>
  [by || 'without initials', on].filter(Boolean).join(', ');
