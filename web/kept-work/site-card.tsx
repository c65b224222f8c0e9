import { useState } from 'react';
import type { KeptSite } from '../document/keeping/kept-list/kept-work.ts';
import type { CardRecord, Thumbnail } from '../document/keeping/store/storage-records.ts';
import { priceWords } from '../words/dollars.ts';
import { dayWords, whenWords } from '../words/site-labels.ts';

interface CardProps {
  readonly site: KeptSite;
  readonly card: CardRecord | undefined;
  readonly onOpen: () => void;
  readonly onRename: (name: string) => void;
  readonly onCopy: (name: string) => void;
  readonly onBin: () => void;
  readonly onSave: () => void;
}

/** One kept site: its plan, what it is, where it is kept, and what can be done with it. */
export function SiteCard({ site, card, onOpen, onRename, onCopy, onBin, onSave }: CardProps) {
  const { name, at, open } = site;
  const [naming, setNaming] = useState<'name' | 'copy' | null>(null);
  return (
    <li className="kept-card" aria-label={name} data-open={open || undefined}>
      <PlanPicture picture={card?.picture} />
      <div className="kept-words">
        {naming ? (
          <NameField
            label={naming === 'name' ? `New name of ${name}` : `Name of the copy of ${name}`}
            name={naming === 'name' ? name : `${name}, ${dayWords(Date.now())}`}
            onDone={(next) => {
              setNaming(null);
              if (next === null) return;
              if (naming === 'copy') onCopy(next);
              else if (next !== name) onRename(next);
            }}
          />
        ) : (
          <h3 title={name}>{name}</h3>
        )}
        <p>
          {whenWords(at, Date.now())}
          {open && ', open here'}
        </p>
        <p>{card ? cardWords(card) : '…'}</p>
        <p className="quiet">{whereWords(site)}</p>
        <div className="kept-acts">
          <button type="button" className="main-act" disabled={open} onClick={onOpen} aria-label={`Open ${name}`}>
            Open
          </button>
          <button type="button" onClick={() => setNaming('name')} aria-label={`Rename ${name}`}>
            Rename
          </button>
          <button
            type="button"
            onClick={() => setNaming('copy')}
            aria-label={`Keep a copy of ${name}`}
            title="The site as it is now, under a name and with its date, to go back to"
          >
            Keep a copy
          </button>
          <button type="button" onClick={onSave} aria-label={`Save as a file: ${name}`}>
            Save as a file
          </button>
          <button
            type="button"
            disabled={open}
            onClick={onBin}
            aria-label={`Remove ${name}`}
            title={open ? 'It is open here: open another site first' : 'Into the bin, from which it can be taken back'}
          >
            Remove
          </button>
        </div>
      </div>
    </li>
  );
}

const count = (number: number, one: string): string =>
  `${number.toLocaleString('en-US')} ${one}${number === 1 ? '' : 's'}`;

const cardWords = ({ stalls, drops, price, prices }: CardRecord): string =>
  `${count(stalls, 'stall')}, ${count(drops, 'drop')}, ${priceWords(price, { name: prices })} by ${prices}`;

function whereWords({ fileName, sent, inFile }: KeptSite): string {
  if (fileName === undefined) return 'in this browser; in no file yet';
  if (!inFile) return `in this browser; changed since it was in ${fileName}`;
  return `in this browser; ${sent ? 'sent to your downloads as' : 'saved in'} ${fileName}`;
}

interface NameProps {
  readonly label: string;
  readonly name: string;
  readonly onDone: (next: string | null) => void;
}

function NameField({ label, name, onDone }: NameProps) {
  const [text, setText] = useState(name);
  const take = (): void => onDone(text.trim() === '' ? null : text.trim());
  return (
    <input
      className="kept-name"
      aria-label={label}
      // biome-ignore lint/a11y/noAutofocus: the field comes where its button was pressed
      autoFocus
      value={text}
      maxLength={200}
      autoComplete="off"
      onFocus={(event) => event.target.select()}
      onChange={(event) => setText(event.target.value)}
      onBlur={take}
      onKeyDown={(event) => {
        if (event.key === 'Enter') take();
        else if (event.key === 'Escape') {
          // The dialog stays.
          event.preventDefault();
          event.stopPropagation();
          onDone(null);
        }
      }}
    />
  );
}

/** A site's plan in a few lines; an empty sheet until it is worked out. */
export function PlanPicture({ picture }: { readonly picture: Thumbnail | undefined }) {
  if (!picture) return <div className="kept-plan" aria-hidden="true" />;
  const { width, height, stalls, steel, raceways, drops } = picture;
  return (
    <svg className="kept-plan" viewBox={`0 0 ${width} ${height}`} aria-hidden="true">
      <path className="kept-stalls" d={stalls} />
      <path className="kept-steel" d={steel} />
      <path className="kept-raceways" d={raceways} />
      <path className="kept-drops" d={drops} />
    </svg>
  );
}
