import { useEffect, useRef, useState } from 'react';
import { isOfDrawing } from '../../routing/site/records/brought-up.ts';
import { missingFrom } from '../../routing/site/records/merge.ts';
import { marksIn, type RecordsFile, type RecordsRead, readRecords } from '../../routing/site/records/records-file.ts';
import { mergeRecords } from '../document/edits/records.ts';
import { textOf } from '../document/files/files.ts';
import { useDocument, useDocumentStore } from '../document/use-document.tsx';
import { failureWords } from '../words/failure-words.ts';
import { recordsInLink } from './records-link.ts';

/** Records of others: out of files, a link that was opened, or one that is pasted. What they bring is told before it is taken in. */
export function TakeInSection() {
  const input = useRef<HTMLInputElement>(null);
  const [come, setCome] = useState<readonly RecordsFile[]>([]);
  const [faults, setFaults] = useState<readonly string[]>([]);
  const hear = (from: string, read: RecordsRead): void => {
    if (read.ok) setCome((all) => [...all, read.file]);
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
    if (read.ok) setCome([read.file]);
    else setFaults(['The link is not whole: ask for the file.']);
  }, []);
  const pick = async (files: readonly File[]): Promise<void> => {
    setFaults([]);
    for (const file of files) {
      try {
        hear(file.name, readRecords(await textOf(file)));
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
        accept=".json,application/json"
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
      {come.map((file, i) => (
        <Come key={i} file={file} done={() => setCome((all) => all.filter((one) => one !== file))} />
      ))}
    </section>
  );
}

function Come({ file, done }: { readonly file: RecordsFile; readonly done: () => void }) {
  const document = useDocumentStore();
  const open = useDocument((state) => state.file);
  const others = marksIn(open.units, file);
  const fresh = missingFrom(others, open.records ?? []);
  const authors = [
    ...new Set(file.records.filter((mark) => !isOfDrawing(mark)).map(({ by }) => by || 'without initials')),
  ];
  const take = (): void => {
    const { file: now, apply } = document.getState();
    apply(mergeRecords(now, others, `Take in records of ${authors.join(', ') || 'the drawing'}`));
    done();
  };
  return (
    <section className="records-come" aria-label="What came">
      <p>
        {file.records.length} marks by {authors.join(', ') || 'nobody'}, {fresh.length} of them new here.
        {file.site !== open.name && ` They were written on a site named ${file.site}, not ${open.name}.`}
      </p>
      <div className="records-acts">
        <button type="button" className="main-act" disabled={fresh.length === 0} onClick={take}>
          Take them in
        </button>
        <button type="button" onClick={done}>
          Leave them
        </button>
      </div>
    </section>
  );
}
