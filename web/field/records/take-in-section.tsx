import { useEffect, useRef, useState } from 'react';
import { MOST_BUNDLE_BYTES, type Photos, readRecordsBundle } from '../../../calc/field/records-bundle.ts';
import { isOfDrawing } from '../../../routing/site/records/brought-up.ts';
import { missingFrom } from '../../../routing/site/records/merge.ts';
import {
  marksIn,
  type RecordsFile,
  type RecordsRead,
  readRecords,
} from '../../../routing/site/records/records-file.ts';
import { mergeRecords } from '../../document/edits/records/records.ts';
import { textOf } from '../../document/files/files.ts';
import { useDocument, useDocumentStore } from '../../document/use-document.tsx';
import { failureWords } from '../../words/failure-words.ts';
import { keepPhotosOf, photosMatchHashes } from './kept-photos.ts';
import { recordsInLink } from './records-link.ts';

/** Records of others: out of files, a link that was opened, or one that is pasted. What they bring is told before it is taken in. */
export function TakeInSection() {
  const input = useRef<HTMLInputElement>(null);
  const [come, setCome] = useState<readonly CameIn[]>([]);
  const [faults, setFaults] = useState<readonly string[]>([]);
  const hear = (from: string, read: RecordsRead, photos: Photos = NO_PHOTOS): void => {
    if (read.ok) setCome((all) => [...all, { file: read.file, photos }]);
    else {
      const told = read.errors.slice(0, 3).map(({ place, says }) => `${from}: ${place ? `${place}: ` : ''}${says}`);
      setFaults((all) => [...all, ...told]);
    }
  };
  useEffect(() => {
    const read = recordsInLink(location.hash);
    if (!read) return;
    // Once: opened again, or reloaded, the page does not ask a second time.
    history.replaceState(null, '', location.pathname + location.search);
    if (read.ok) setCome([{ file: read.file, photos: NO_PHOTOS }]);
    else setFaults(['The link is not whole: ask for the file.']);
  }, []);
  const pick = async (files: readonly File[]): Promise<void> => {
    setFaults([]);
    for (const file of files) {
      try {
        const { read, photos } = await recordsInFile(file);
        hear(file.name, read, photos);
      } catch (error) {
        setFaults((all) => [...all, `${file.name}: ${failureWords(error)}`]);
      }
    }
  };
  return (
    <section aria-label="Take in">
      <h3>Take in what others wrote down</h3>
      <div className="records-acts">
        <button type="button" onClick={() => input.current?.click()}>
          Read records files…
        </button>
      </div>
      <input
        ref={input}
        type="file"
        multiple
        accept=".json,.zip,application/json,application/zip"
        hidden
        aria-label="records files"
        onChange={(event) => {
          const files = [...(event.target.files ?? [])];
          event.target.value = '';
          void pick(files);
        }}
      />
      <input
        type="text"
        aria-label="link with records, pasted"
        placeholder="or paste a link"
        value=""
        onChange={(event) => {
          const read = recordsInLink(event.target.value);
          if (read) hear('The link', read);
          else setFaults(['This is no link with records.']);
        }}
      />
      {faults.map((fault) => (
        <p key={fault} role="alert">
          {fault}
        </p>
      ))}
      {come.map((one, i) => (
        <Come key={i} {...one} done={() => setCome((all) => all.filter((other) => other !== one))} />
      ))}
    </section>
  );
}

/** Records that came, and the photos with them. */
interface CameIn {
  readonly file: RecordsFile;
  readonly photos: Photos;
}

const NO_PHOTOS: Photos = new Map();

/** What is in a file of somebody's: records, a copy of the site, or records with photos. */
async function recordsInFile(file: File): Promise<{ readonly read: RecordsRead; readonly photos: Photos }> {
  if (!/\.zip$/i.test(file.name)) return { read: readRecords(await textOf(file)), photos: NO_PHOTOS };
  if (file.size > 2 * MOST_BUNDLE_BYTES) throw new Error('the file is larger than this page writes them');
  const read = readRecordsBundle(new Uint8Array(await file.arrayBuffer()));
  if (!read.ok) return { read, photos: NO_PHOTOS };
  if (!(await photosMatchHashes(read.photos))) throw new Error('a photo in it is another than its name says');
  return { read: { ok: true, file: read.records }, photos: read.photos };
}

function Come({ file, photos, done }: CameIn & { readonly done: () => void }) {
  const [fault, setFault] = useState('');
  const document = useDocumentStore();
  const open = useDocument((state) => state.file);
  const others = marksIn(open.units, file);
  const fresh = missingFrom(others, open.records ?? []);
  const authors = [
    ...new Set(file.records.filter((mark) => !isOfDrawing(mark)).map(({ by }) => by || 'without initials')),
  ];
  const take = async (): Promise<void> => {
    try {
      await keepPhotosOf(photos);
    } catch (error) {
      setFault(failureWords(error));
      return;
    }
    const { file: now, apply } = document.getState();
    apply(mergeRecords(now, others, `Take in records of ${authors.join(', ') || 'the drawing'}`));
    done();
  };
  return (
    <section className="records-come" aria-label="What came">
      <p>
        {file.records.length} marks by {authors.join(', ') || 'nobody'}, {fresh.length} of them new here
        {photos.size > 0 && `, with ${photos.size === 1 ? 'a photo' : `${photos.size} photos`}`}.
        {file.site !== open.name && ` They were written on a site named ${file.site}, not ${open.name}.`}
      </p>
      {fault && <p role="alert">Nothing was taken in: {fault}</p>}
      <div className="records-acts">
        <button
          type="button"
          className="main-act"
          disabled={fresh.length === 0 && photos.size === 0}
          onClick={() => void take()}
        >
          Take them in
        </button>
        <button type="button" onClick={done}>
          Leave them
        </button>
      </div>
    </section>
  );
}
