import { useEffect } from 'react';
import { endWork, useWorks, type Work } from './work-store.ts';

/** What came of a work is said for so long; why it failed, until it is put away. */
const STAYS_MS = 8000;

/** The one place where long work is told: what, how far, a way to stop it, and what came of it. */
export function LongWork() {
  const works = useWorks((all) => all);
  return (
    <>
      {works.map((work) =>
        work.state === 'waiting' || work.state === 'doing' ? (
          <UnderWay key={work.id} work={work} />
        ) : (
          <Ended key={work.id} work={work} />
        ),
      )}
    </>
  );
}

function UnderWay({ work: { id, what, state, says, done, of } }: { readonly work: Work }) {
  return (
    // Each step would be read out: the end is.
    <p className="notice work" aria-live="off" data-work={state}>
      <span>
        {what}: {state === 'waiting' ? 'waits for the others' : says}
      </span>
      <progress max={of} value={state === 'waiting' ? 0 : done} aria-label={what} />
      <button type="button" className="plain" onClick={() => endWork(id)}>
        Stop
      </button>
    </p>
  );
}

function Ended({ work: { id, what, state, says, wasNot } }: { readonly work: Work }) {
  useEffect(() => {
    if (state !== 'done') return;
    const gone = setTimeout(() => endWork(id), STAYS_MS);
    return () => clearTimeout(gone);
  }, [id, state]);
  return (
    <p className="notice work" data-work={state}>
      <span>{state === 'done' ? `${what}: done. ${says}` : `${what} was not ${wasNot}: ${says}`}</span>
      <button type="button" className="plain" onClick={() => endWork(id)}>
        Close
      </button>
    </p>
  );
}
