import { writeSite } from '../../routing/site/file/write.ts';
import type { DocumentActions } from './document-state.ts';
import { fileNameOf } from './files/files.ts';
import { changedSays, fileAfter, savedSays } from './files/own-file.ts';
import { type OpenDocument, savedNow } from './open-document.ts';

/** The action that saves the document to the person's own file. */
export function saving(document: OpenDocument): DocumentActions['save'] {
  const { set, get, emit, files } = document;
  const save: DocumentActions['save'] = async (options = {}) => {
    const { own, history, opening: turn } = document;
    const { file } = history;
    const edit = history.done.at(-1);
    const name = own.fileName ?? fileNameOf(file.name);
    const place = options.as === true ? null : (own.place ?? null);
    const saved = await files.save(writeSite(file), name, place, options.over === true ? undefined : own.stamp);
    if (saved.kind === 'failed') set({ notice: `The file was not saved: ${saved.says}` });
    if (saved.kind === 'changed') {
      const acts = [
        { name: 'Overwrite it', act: () => void save({ over: true }) },
        { name: 'Save under another name…', act: () => void save({ as: true }) },
      ];
      get().warn({ says: changedSays(saved.fileName), acts });
    }
    if (saved.kind !== 'saved' && saved.kind !== 'sent') return false;
    // Another document may have been opened while the dialog stood.
    if (turn !== document.opening) return true;
    const written = fileAfter(saved);
    document.own = { ...written, savedAt: { edit } };
    set({ saved: savedNow(document), notice: savedSays(saved) });
    emit({ what: 'saved', ...written, history: document.history });
    return true;
  };
  return save;
}
