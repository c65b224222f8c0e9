import { useState } from 'react';
import { whenAsked } from '../../page-state/when-asked.tsx';

const ProposeForm = whenAsked(async () => (await import('./propose-form.tsx')).ProposeForm);

/** Has what is missing proposed, once it is opened. */
export function ProposeSection() {
  const [opened, setOpened] = useState(false);
  return (
    <details className="arrange" onToggle={({ currentTarget }) => setOpened((was) => was || currentTarget.open)}>
      <summary>Propose what is missing</summary>
      {opened && <ProposeForm />}
    </details>
  );
}
