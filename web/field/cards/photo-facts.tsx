import { useEffect, useRef, useState } from 'react';
import type { Mark } from '../../../routing/site/site.ts';
import { failureWords } from '../../words/failure-words.ts';
import { keepPhoto, keptPhoto } from '../records/kept-photos.ts';
import { useMarks } from '../records/use-marks.ts';

/** Photos of a thing: those taken here, and who has the others. Another is taken, or picked, and shrunk before it is kept. */
export function PhotoFacts({ id }: { readonly id: string }) {
  const { registers, write } = useMarks();
  const input = useRef<HTMLInputElement>(null);
  const [fault, setFault] = useState('');
  const [busy, setBusy] = useState(false);
  const own = [...registers.values()].flatMap(({ of, what, now }) =>
    of === id && what === 'photo' && now ? [now] : [],
  );
  const take = async (file: File): Promise<void> => {
    setBusy(true);
    setFault('');
    try {
      const photo = await keepPhoto(file);
      write(`Photo of ${id}`, { of: id, part: photo.hash, what: 'photo', photo });
    } catch (error) {
      setFault(failureWords(error));
    } finally {
      setBusy(false);
    }
  };
  return (
    <section className="photos" aria-label={`Photos of ${id}`}>
      {own.map((mark) => (
        <Photo
          key={mark.id}
          mark={mark}
          takeBack={() => write(`Take back a photo of ${id}`, { of: id, part: mark.part!, what: 'photo', gone: true })}
        />
      ))}
      <button type="button" disabled={busy} onClick={() => input.current?.click()}>
        {busy ? 'Shrinking it' : 'Take a photo'}
      </button>
      <input
        ref={input}
        type="file"
        accept="image/*"
        capture="environment"
        hidden
        aria-label={`Photo of ${id}`}
        onChange={(event) => {
          const file = event.target.files?.[0];
          event.target.value = '';
          if (file) void take(file);
        }}
      />
      {fault && <p role="alert">The photo was not kept: {fault}</p>}
    </section>
  );
}

function Photo({ mark, takeBack }: { readonly mark: Mark; readonly takeBack: () => void }) {
  const hash = mark.photo!.hash;
  const [url, setUrl] = useState<string | null | undefined>(undefined);
  useEffect(() => {
    let made: string | null = null;
    let gone = false;
    keptPhoto(hash).then(
      (blob) => {
        if (gone) return;
        made = blob && URL.createObjectURL(blob);
        setUrl(made);
      },
      () => !gone && setUrl(null),
    );
    return () => {
      gone = true;
      if (made) URL.revokeObjectURL(made);
    };
  }, [hash]);
  const by = [mark.by || 'without initials', mark.on].filter(Boolean).join(', ');
  return (
    <figure>
      {url && <img src={url} alt={`${mark.of}, ${by}`} />}
      <figcaption>
        {by}
        {url === null && ': kept on the device that took it'}
        <button type="button" className="plain" onClick={takeBack}>
          Take back
        </button>
      </figcaption>
    </figure>
  );
}
