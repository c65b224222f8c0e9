import { useState } from 'react';
import { useDocument } from '../../document/use-document.tsx';
import { whenAsked } from '../../page-state/when-asked.tsx';

const AnewForm = whenAsked(async () => (await import('./anew-form.tsx')).AnewForm);

/** Has what is selected, its row or what a panel feeds proposed anew, once it is opened. */
export function AnewSection() {
  const [open, setOpen] = useState(false);
  const isOf = useDocument(({ selection }) =>
    selection.some(({ list }) => list === 'drops' || list === 'chargers' || list === 'stalls' || list === 'equipment'),
  );
  if (!isOf) return null;
  return (
    <details className="arrange" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>Propose anew</summary>
      {open && <AnewForm />}
    </details>
  );
}
