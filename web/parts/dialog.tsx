import { type ReactNode, useEffect, useId, useRef } from 'react';

interface DialogProps {
  readonly title: string;
  readonly onClose: () => void;
  readonly children: ReactNode;
}

/** A dialog over the page; Escape and its button close it. */
export function Dialog({ title, onClose, children }: DialogProps) {
  const id = useId();
  const box = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    const dialog = box.current;
    if (dialog && !dialog.open) dialog.showModal();
    // At each rendering: it may be asked for again before the word that it closed has come, which is then too late.
  });
  return (
    <dialog ref={box} aria-labelledby={id} onClose={() => !box.current?.open && onClose()}>
      <header>
        <h2 id={id}>{title}</h2>
        <button type="button" onClick={() => box.current?.close()}>
          Close
        </button>
      </header>
      {children}
    </dialog>
  );
}
