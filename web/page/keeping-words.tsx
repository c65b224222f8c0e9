import { useDocument } from '../document/use-document.ts';

/** Where the work stands: in the person's file, in this browser, or nowhere. */
export function KeepingWords() {
  const keeping = useDocument((state) => state.keeping);
  const saved = useDocument((state) => state.saved);
  const inFile = saved.inFile && saved.fileName ? `saved in ${saved.fileName}` : 'not in a file yet';
  switch (keeping.kind) {
    case 'failed':
      return (
        <p className="keeping keeping-failed" role="alert">
          {keeping.says}
        </p>
      );
    case 'watching':
      return (
        <p className="keeping keeping-failed" role="status">
          {keeping.says}{' '}
          {keeping.takeOver && (
            <button type="button" className="link" onClick={keeping.takeOver}>
              Take over
            </button>
          )}
        </p>
      );
    case 'loading':
      return <p className="keeping">looking for your work</p>;
    case 'writing':
    case 'kept':
      return (
        <p className="keeping" title={keeping.says}>
          kept in this browser, {inFile}
        </p>
      );
    case 'off':
      return <p className="keeping">{inFile}</p>;
  }
}
