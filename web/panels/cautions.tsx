import { useEffect, useState } from 'react';
import { editionWords } from '../../calc/tables/editions.ts';
import { CAUTIONS } from '../../calc/words/cautions.ts';
import { useDocument } from '../document/use-document.tsx';
import { Fold } from '../parts/fold.tsx';

const KEY = 'overrow.cautions-read';

/** Whether they were read in full in this browser; where it keeps nothing they stand in full each time. */
function wereRead(): boolean {
  try {
    return localStorage.getItem(KEY) === 'yes';
  } catch {
    return false;
  }
}

function noteRead(): void {
  try {
    localStorage.setItem(KEY, 'yes');
  } catch {
    // As above.
  }
}

/**
 * At the foot of the ledger, where results are read: in full at first and until they are folded, then as one line that
 * opens. Every sheet carries them in full.
 */
export function Cautions() {
  const code = useDocument((state) => editionWords(state.site.rules));
  const [open, setOpen] = useState(() => !wereRead());
  // A page that is left with them open has shown them once.
  useEffect(() => {
    window.addEventListener('pagehide', noteRead);
    return () => window.removeEventListener('pagehide', noteRead);
  }, []);
  return (
    <Fold
      className="cautions"
      open={open}
      onFold={(now) => {
        setOpen(now);
        if (!now) noteRead();
      }}
      summary={open ? 'Cautions' : 'For planning by qualified persons: verify before work'}
    >
      <p>
        {CAUTIONS} Checked against the rules of the site and {code}.
      </p>
    </Fold>
  );
}
