import { type ReactNode, useState } from 'react';
import { Fold } from './fold.tsx';

const KEY = 'overrow.folded';

/** The names of the groups that a person has folded. */
function folded(): ReadonlySet<string> {
  try {
    return new Set((localStorage.getItem(KEY) ?? '').split('\n').filter(Boolean));
  } catch {
    // A browser set to keep nothing throws at the first touch: a fold then lasts as long as its form.
    return new Set();
  }
}

function remember(name: string, open: boolean): void {
  const names = new Set(folded());
  if (open === !names.has(name)) return;
  if (open) names.delete(name);
  else names.add(name);
  try {
    localStorage.setItem(KEY, [...names].join('\n'));
  } catch {
    // As above.
  }
}

interface GroupProps {
  /** As it is remembered, and headed where no `heading` is given: a group that is folded in one form is so in the next of its kind. */
  readonly name: string;
  readonly heading?: string;
  /** As it is called among others of its name; its heading where absent. */
  readonly label?: string;
  readonly children: ReactNode;
}

/** Fields that belong together, under a heading that folds them away and stays as it was left. */
export function FieldGroup({ name, heading = name, label = heading, children }: GroupProps) {
  const [open, setOpen] = useState(() => !folded().has(name));
  const fold = (now: boolean) => {
    setOpen(now);
    remember(name, now);
  };
  return (
    <Fold className="group" open={open} onFold={fold} summary={heading}>
      <section className="fields" aria-label={label}>
        {children}
      </section>
    </Fold>
  );
}
