import { useState } from 'react';
import { photoHashes, writeRecordsBundle } from '../../../calc/field/records-bundle.ts';
import { safeFileName } from '../../../calc/sheets/file-name.ts';
import { recordsOf, writeRecords } from '../../../routing/site/records/records-file.ts';
import { download } from '../../document/files/files.ts';
import { useDocument, useDocumentStore } from '../../document/use-document.tsx';
import { failureWords } from '../../words/failure-words.ts';
import { photosHere } from './kept-photos.ts';
import { linkOf } from './records-link.ts';

/** The records as a file, or, where they are few, as a link that can be sent as text. */
export function SendSection() {
  const document = useDocumentStore();
  const count = useDocument((state) => state.file.records?.length ?? 0);
  const [link, setLink] = useState<string | null>(null);
  const [says, setSays] = useState('');
  const save = (): void => {
    const { file } = document.getState();
    download(`${safeFileName(file.name)}.records.json`, 'application/json', writeRecords(recordsOf(file)));
    setSays('Handed to the browser as a download.');
  };
  const saveWithPhotos = async (): Promise<void> => {
    const { file, site } = document.getState();
    const hashes = photoHashes(site.records);
    try {
      const photos = await photosHere(hashes);
      const name = `${safeFileName(file.name)}.records.zip`;
      download(name, 'application/zip', writeRecordsBundle({ records: recordsOf(file), photos }));
      setSays(
        `Handed to the browser as a download, ${photos.size} of ${hashes.length} photos in it${photos.size < hashes.length ? '; the others are on the devices that took them' : ''}.`,
      );
    } catch (error) {
      setSays(`It was not written: ${failureWords(error)}`);
    }
  };
  const make = (): void => {
    const made = linkOf(recordsOf(document.getState().file), location.href);
    setLink(made);
    setSays(
      made
        ? 'Whoever opens it on this site is asked whether to take them in.'
        : 'They are too many for a link: send the file.',
    );
  };
  return (
    <section aria-label="Send">
      <h3>Send what is written down</h3>
      <div className="records-acts">
        <button type="button" disabled={count === 0} onClick={save}>
          Save the records
        </button>
        <button type="button" disabled={count === 0} onClick={() => void saveWithPhotos()}>
          With photos
        </button>
        <button type="button" disabled={count === 0} onClick={make}>
          As a link
        </button>
      </div>
      {link && (
        <input
          type="text"
          readOnly
          aria-label="link with the records"
          value={link}
          onFocus={(event) => event.target.select()}
        />
      )}
      {says && <p role="status">{says}</p>}
    </section>
  );
}
