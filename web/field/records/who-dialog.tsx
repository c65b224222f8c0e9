import '../field.css';
import { useRef, useState } from 'react';
import { noteInitialsAsked, setInitialsHere } from '../../document/pen.ts';
import { Dialog } from '../../parts/dialog.tsx';

const MOST = 12;

/** Asks once who writes, before the first record of this device; what was to be written is written whatever the answer. */
export function WhoDialog({ write, close }: { readonly write: () => void; readonly close: () => void }) {
  const [by, setBy] = useState('');
  const written = useRef(false);
  const answer = (initials: string): void => {
    if (written.current) return;
    written.current = true;
    noteInitialsAsked();
    if (initials !== '') setInitialsHere(initials);
    close();
    write();
  };
  return (
    <Dialog title="Who writes?" onClose={() => answer('')}>
      <form
        className="who"
        onSubmit={(event) => {
          event.preventDefault();
          answer(by.trim());
        }}
      >
        <p>
          Your initials stand beside all that is recorded on this device. They are asked once; Records changes them.
        </p>
        <label>
          <span>your initials</span>
          <input
            ref={(input) => input?.setAttribute('autofocus', '')}
            type="text"
            value={by}
            maxLength={MOST}
            autoComplete="off"
            autoCapitalize="characters"
            autoCorrect="off"
            enterKeyHint="done"
            spellCheck={false}
            onChange={(event) => setBy(event.target.value)}
          />
        </label>
        <div className="records-acts">
          <button type="button" onClick={() => answer('')}>
            Without initials
          </button>
          <button type="submit" className="main-act" disabled={by.trim() === ''}>
            Go on
          </button>
        </div>
      </form>
    </Dialog>
  );
}
