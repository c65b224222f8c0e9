import { useEffect, useRef, useState } from 'react';
import { isSolvable } from '../../../calc/day/charge.ts';
import type { DayInput } from '../../../calc/day/day-input.ts';
import { energyWords, STRATEGY_WORDS } from '../../../calc/day/day-words.ts';
import { STRATEGIES } from '../../../calc/day/rules/rules.ts';
import { changeElements } from '../../document/edits/change.ts';
import { useDocumentStore } from '../../document/use-document.tsx';
import type { Best, BestNews, BestRequest } from './best-request.ts';

interface BestProps {
  readonly input: DayInput;
  readonly limit: string | null;
  readonly unit: string;
  /** The panel whose managed amperes the limit is. */
  readonly managed: string | undefined;
}

type State =
  | { readonly kind: 'idle' }
  | { readonly kind: 'doing'; readonly says: string }
  | { readonly kind: 'done'; readonly best: Best; readonly input: DayInput }
  | { readonly kind: 'failed'; readonly says: string };

/** The best that any schedule could give, and the least limit that serves all: worked in a worker, when asked for. */
export function BestPossible({ input, limit, unit, managed }: BestProps) {
  const document = useDocumentStore();
  const worker = useRef<Worker | null>(null);
  const [state, setState] = useState<State>({ kind: 'idle' });
  const stop = (): void => {
    worker.current?.terminate();
    worker.current = null;
  };
  useEffect(() => stop, []);
  const begin = (): void => {
    stop();
    if (!isSolvable(input)) {
      setState({ kind: 'failed', says: 'Too many cars and steps for the best schedule; a longer step has fewer.' });
      return;
    }
    setState({ kind: 'doing', says: 'loading the solver' });
    const asked = new Worker(new URL('./best-worker.ts', import.meta.url), { type: 'module' });
    worker.current = asked;
    asked.onmessage = ({ data }: MessageEvent<BestNews>) => {
      if (data.kind === 'doing')
        setState({ kind: 'doing', says: `${data.what}, round ${data.round}, within ${(100 * data.gap).toFixed(3)}%` });
      else {
        stop();
        setState(data.kind === 'done' ? { kind: 'done', best: data.best, input } : data);
      }
    };
    asked.onerror = () => {
      stop();
      setState({ kind: 'failed', says: 'The solver could not be loaded.' });
    };
    const request: BestRequest = { input, limit };
    asked.postMessage(request);
  };
  const hold = (amps: number): void => {
    if (managed === undefined) return;
    const { file, apply } = document.getState();
    apply(changeElements(file, [{ list: 'equipment', id: managed }], { managedAmps: amps }));
  };
  return (
    <section className="day-best" aria-label="The best there could be" aria-live="polite">
      {state.kind === 'doing' ? (
        <>
          <span>Looking for the best schedule: {state.says}</span>
          <button
            type="button"
            onClick={() => {
              stop();
              setState({ kind: 'idle' });
            }}
          >
            Stop
          </button>
        </>
      ) : (
        <button type="button" onClick={begin}>
          Find the best there could be{limit === null ? '' : ', and the least limit that serves all'}
        </button>
      )}
      {state.kind === 'failed' && <p className="fault">{state.says}</p>}
      {state.kind === 'done' && (
        <>
          {state.input !== input && <p className="quiet">The day was changed since; these are the figures before.</p>}
          <p>
            No schedule gives more than {energyWords(state.best.energyBound)}
            {state.best.ceiling !== null &&
              `; the least limit with which one serves all is ${state.best.ceiling.toFixed(1)} ${unit}`}
            {state.best.relaxed.length > 0 && ' (a bound: it leaves out what is told in the findings)'}.
          </p>
          {limit !== null && (
            <ul>
              {STRATEGIES.filter((name) => name !== 'unmanaged').map((name) => {
                const least = state.best.ceilings[name] ?? null;
                return (
                  <li key={name}>
                    {STRATEGY_WORDS[name]}: {least === null ? 'no limit serves all' : `${least} ${unit} serves all`}{' '}
                    {least !== null && least > 0 && managed !== undefined && (
                      <button type="button" onClick={() => hold(least)}>
                        Hold {managed} to {least} A
                      </button>
                    )}
                  </li>
                );
              })}
            </ul>
          )}
        </>
      )}
    </section>
  );
}
