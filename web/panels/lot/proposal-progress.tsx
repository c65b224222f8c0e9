import { useEffect, useState } from 'react';
import type { Doing } from '../../../calc/propose/propose.ts';
import { counted } from '../../../routing/words/counted.ts';
import { usePrices } from '../../document/files/price-store.ts';
import { useDocumentStore } from '../../document/use-document.tsx';
import { stopProposal, useProposals } from '../../proposal/proposal-store.ts';
import { priceWords } from '../../words/dollars.ts';
import { secondsLeft } from '../../words/time-left.ts';

const DOING: Readonly<Record<Doing['what'], string>> = {
  drops: 'Looking for places for drops',
  equipment: 'Looking for places for panels',
  raceways: 'Looking for routes',
};

/** How far a proposal is, its best so far, and stopping it. */
export function ProposalProgress({ doing }: { readonly doing: Doing }) {
  const document = useDocumentStore();
  const since = useProposals((state) => state.since);
  const stretch = useProposals((state) => state.stretch);
  const ready = useProposals((state) => state.ready);
  const list = usePrices((state) => state.list);
  const [now, setNow] = useState(() => performance.now());
  useEffect(() => {
    const ticking = setInterval(() => setNow(performance.now()), 500);
    return () => clearInterval(ticking);
  }, []);
  const { what, done, of } = doing;
  const left = stretch && secondsLeft(stretch, done, now);
  const said = [
    `${DOING[what]}${of > 1 ? `, ${done} of ${of} done` : ''}`,
    `${Math.max(0, (now - since) / 1000).toFixed(0)} s so far`,
    ...(left === null ? [] : [`about ${left} s left of this part`]),
  ];
  return (
    <>
      <p role="status">
        {said.join('; ')} <progress max={of} value={done} aria-label={DOING[what]} />
      </p>
      {ready?.best && (
        <p>
          Best so far: a bid of {priceWords(ready.best.dollars, list)},{' '}
          {ready.best.fails === 0 ? 'nothing fails' : counted(ready.best.fails, 'finding fails', 'findings fail')}.
        </p>
      )}
      <p>
        <button type="button" className="small-act" onClick={() => stopProposal(document, false)}>
          Stop
        </button>{' '}
        {ready && (
          <button type="button" className="small-act" onClick={() => stopProposal(document, true)}>
            {ready.best ? 'Stop, and draw in the best so far' : 'Stop, and draw in what is ready'}
          </button>
        )}
      </p>
    </>
  );
}
