import { useDocument, useDocumentStore } from '../../document/use-document.tsx';
import { afterPress } from '../../parts/keys-to-board.ts';

/** Undo and redo, each with the name of what it takes back or does again. */
export function PastButtons() {
  const document = useDocumentStore();
  const undoName = useDocument((state) => state.undoName);
  const redoName = useDocument((state) => state.redoName);
  const { undo, redo } = document.getState();
  return (
    <>
      <Past word="Undo" name={undoName} keys="Ctrl+Z" act={undo} />
      <Past word="Redo" name={redoName} keys="Ctrl+Shift+Z" act={redo} />
    </>
  );
}

interface PastProps {
  readonly word: string;
  readonly name: string | undefined;
  readonly keys: string;
  readonly act: () => void;
}

const Past = ({ word, name, keys, act }: PastProps) => (
  <button
    type="button"
    className="past"
    disabled={!name}
    title={`${word}${name ? ` ${lower(name)}` : ''} (${keys})`}
    onClick={(event) => {
      act();
      afterPress(event);
    }}
  >
    <span className="past-name">
      {word}
      {name && `: ${lower(name)}`}
    </span>
  </button>
);

const lower = (name: string): string => name.charAt(0).toLowerCase() + name.slice(1);
