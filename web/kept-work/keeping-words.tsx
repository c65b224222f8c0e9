import type { Keeping, Saved } from '../document/document-state.ts';
import { useDocument } from '../document/use-document.tsx';

/** Where the work stands: in the person's file, in this browser, or nowhere. */
export function KeepingWords() {
  const keeping = useDocument((state) => state.keeping);
  const saved = useDocument((state) => state.saved);
  const { kind, says, takeOver } = keeping;
  if (kind === 'failed' || kind === 'watching') {
    return (
      <p className="keeping keeping-failed" role={kind === 'failed' ? 'alert' : 'status'}>
        {says}{' '}
        {takeOver && (
          <button type="button" className="link" onClick={takeOver}>
            Take over
          </button>
        )}
      </p>
    );
  }
  return (
    <p className="keeping" title={says}>
      {keepingWords(keeping, saved)}
    </p>
  );
}

/** What is said of a site that is being kept: that it is, only once it is written. */
export function keepingWords({ kind }: Pick<Keeping, 'kind'>, saved: Saved): string {
  const inFile = fileWords(saved);
  if (kind === 'loading') return 'looking for your work';
  if (kind === 'writing') return `keeping …, ${inFile}`;
  return kind === 'kept' ? `kept in this browser, ${inFile}` : inFile;
}

function fileWords({ inFile, fileName, sent }: Saved): string {
  if (!inFile || fileName === undefined) return 'not in a file yet';
  return sent ? `sent to your downloads as ${fileName}` : `saved in ${fileName}`;
}
