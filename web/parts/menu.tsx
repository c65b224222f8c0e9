import { Fragment, type KeyboardEvent as Keys, useEffect, useId, useRef, useState } from 'react';

export interface MenuEntry {
  readonly name: string;
  /** What tells it from others of the same name. */
  readonly key?: string;
  readonly act: () => void;
  readonly keys?: string;
  /** A heading under which it stands with those that follow under the same. */
  readonly under?: string;
}

interface MenuProps {
  readonly name: string;
  readonly entries: readonly MenuEntry[];
  readonly onOpen?: () => void;
  readonly className?: string;
}

/** A button that opens a short list of things to do. Arrows, Home and End go through it, Escape shuts it. */
export function Menu({ name, entries, onOpen, className }: MenuProps) {
  const id = useId();
  const [open, setOpen] = useState(false);
  const box = useRef<HTMLDivElement>(null);
  const button = useRef<HTMLButtonElement>(null);

  useEffect(() => {
    if (!open) return;
    box.current?.querySelector<HTMLElement>('[role=menuitem]')?.focus();
    const outside = (event: Event): void => {
      if (!box.current?.contains(event.target as Node)) setOpen(false);
    };
    window.addEventListener('pointerdown', outside);
    return () => window.removeEventListener('pointerdown', outside);
  }, [open]);

  const keys = (event: Keys): void => {
    if (event.key === 'Escape') {
      setOpen(false);
      button.current?.focus();
    }
    const items = [...(box.current?.querySelectorAll<HTMLElement>('[role=menuitem]') ?? [])];
    const at = items.indexOf(window.document.activeElement as HTMLElement);
    const next = { ArrowDown: at + 1, ArrowUp: at - 1, Home: 0, End: -1 }[event.key];
    if (next === undefined) return;
    event.preventDefault();
    items[(next + items.length) % items.length]?.focus();
  };

  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: the keys are those of the list within
    <div className={`menu ${className ?? ''}`} ref={box} onKeyDown={open ? keys : undefined}>
      <button
        ref={button}
        type="button"
        aria-haspopup="menu"
        aria-expanded={open}
        aria-controls={open ? id : undefined}
        onClick={() => {
          if (!open) onOpen?.();
          setOpen(!open);
        }}
      >
        {name}
        <svg viewBox="0 0 8 5" width="8" height="5" aria-hidden="true" className="menu-mark">
          <path d="M0 0 L4 5 L8 0 Z" />
        </svg>
      </button>
      {open && (
        <div className="menu-list" id={id} role="menu" aria-label={name}>
          {entries.map((entry, i) => (
            <Fragment key={entry.key ?? `${entry.under ?? ''} ${entry.name}`}>
              {entry.under && entries[i - 1]?.under !== entry.under && <p className="menu-under">{entry.under}</p>}
              <button
                type="button"
                role="menuitem"
                tabIndex={-1}
                onClick={() => {
                  setOpen(false);
                  button.current?.focus();
                  entry.act();
                }}
              >
                {entry.name}
                {entry.keys && <kbd>{entry.keys}</kbd>}
              </button>
            </Fragment>
          ))}
        </div>
      )}
    </div>
  );
}
