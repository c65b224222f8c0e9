import { useState } from 'react';
import type { Step } from '../../../calc/words/explain.ts';
import { Working } from './working.tsx';

interface WhyProps {
  /** What is asked, such as "Why #8?". */
  readonly ask: string;
  /** The steps from the code that found it. Called while they are shown, so that a fold that is shut costs nothing. */
  readonly steps: () => readonly Step[];
}

/** A fold under a figure that opens to how it was found. */
export function Why({ ask, steps }: WhyProps) {
  const [open, setOpen] = useState(false);
  return (
    <details className="why" open={open} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{ask}</summary>
      {open && <Working steps={steps()} />}
    </details>
  );
}
