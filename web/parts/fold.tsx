import type { ReactNode } from 'react';

interface FoldProps {
  readonly open: boolean;
  readonly onFold: (open: boolean) => void;
  readonly className?: string;
  readonly summary: ReactNode;
  readonly children: ReactNode;
}

/** A part under a heading that folds it away; the component around it holds whether it is open. */
export function Fold({ open, onFold, className, summary, children }: FoldProps) {
  return (
    <details
      className={className}
      open={open}
      // A search in the browser opens it without a press.
      onToggle={({ currentTarget }) => {
        if (currentTarget.open !== open) onFold(currentTarget.open);
      }}
    >
      {/* biome-ignore lint/a11y/noStaticElementInteractions: a summary is what one presses, with keys too */}
      <summary
        onClick={(event) => {
          // At once: `toggle` comes later, and not at all to a form that has given way to the next.
          event.preventDefault();
          onFold(!open);
        }}
      >
        {summary}
      </summary>
      {children}
    </details>
  );
}
