import { useEffect, useRef, useState } from 'react';
import type { DayInput } from '../../../../calc/day/day-input.ts';
import { energyWords, STRATEGY_WORDS } from '../../../../calc/day/figures/day-words.ts';
import { STRATEGIES } from '../../../../calc/day/rules/rules.ts';
import { isSolvable } from '../../../../calc/day/simulated/charge.ts';
import type { Best, BestNews, BestRequest } from './best-request.ts';

interface BestProps {
  readonly input: DayInput;
  readonly limit: string | null;
  readonly unit: string;
  /** The panel whose managed amperes the limit is. */
  readonly managed: string | undefined;
  readonly onHold: (amps: number) => void;
  /** What was found, and for which day: the pictures draw it. */
  readonly found: FoundBest | null;
  readonly onFound: (found: FoundBest) => void;
}

export interface FoundBest {
  readonly best: Best;
  readonly input: DayInput;
}

type State =
  | { readonly kind: 'idle' }
  | { readonly kind: 'doing'; readonly says: string }
  | { readonly kind: 'failed'; readonly says: string };

/** The best that any schedule could give, and the least limit that serves all: worked in a worker, when asked for. */
export function BestPossible({ input, limit, unit, managed, onHold, found, onFound }: BestProps) {
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
        setState(data.kind === 'done' ? { kind: 'idle' } : data);
        if (data.kind === 'done') onFound({ best: data.best, input });
      }
    };
    asked.onerror = () => {
      stop();
      setState({ kind: 'failed', says: 'The solver could not be loaded.' });
    };
    const request: BestRequest = { input, limit };
    asked.postMessage(request);
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
      {state.kind !== 'doing' && found !== null && (
        <>
          {found.input !== input && <p className="quiet">The day was changed since; these are the figures before.</p>}
          <p>
            No schedule gives more than {energyWords(found.best.energyBound)}
            {found.best.ceiling !== null &&
              `; the least limit with which one serves all is ${found.best.ceiling.toFixed(1)} ${unit}`}
            {found.best.relaxed.length > 0 && ' (a bound: it leaves out what is told in the findings)'}.
          </p>
          {limit !== null && (
            <ul>
              {STRATEGIES.filter((name) => name !== 'unmanaged').map((name) => {
                const least = found.best.ceilings[name] ?? null;
                return (
                  <li key={name}>
                    {STRATEGY_WORDS[name]}: {least === null ? 'no limit serves all' : `${least} ${unit} serves all`}{' '}
                    {least !== null && least > 0 && managed !== undefined && (
                      <button type="button" onClick={() => onHold(least)}>
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
