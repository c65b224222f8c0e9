import { useState } from 'react';
import type { KeptSite } from '../document/keeping/kept-list/kept-work.ts';
import { whenWords } from '../words/site-labels.ts';

interface BinProps {
  readonly sites: readonly KeptSite[];
  readonly onTakeBack: (site: KeptSite) => void;
  readonly onErase: (sites: readonly KeptSite[]) => void;
}

const LONG_MS = 30 * 86_400_000;

/** What was removed. It stays until it is deleted by hand; what has been here for long is offered together. */
export function BinList({ sites, onTakeBack, onErase }: BinProps) {
  const [sure, setSure] = useState<string | null>(null);
  if (sites.length === 0) return null;
  const now = Date.now();
  const old = sites.filter(({ binned }) => binned !== undefined && now - binned > LONG_MS);
  const erase = (key: string, which: readonly KeptSite[]): void => {
    if (sure === key) onErase(which);
    setSure(sure === key ? null : key);
  };
  const oldWords = `the ${old.length} that ${old.length === 1 ? 'has' : 'have'} been here for more than 30 days`;
  return (
    <details className="kept-bin">
      <summary>Bin, {sites.length}</summary>
      <ul>
        {sites.map((site) => (
          <li key={site.doc} aria-label={site.name}>
            <span>
              {site.name} <span className="quiet">removed {whenWords(site.binned ?? 0, now)}</span>
            </span>
            <span className="kept-acts">
              <button type="button" onClick={() => onTakeBack(site)} aria-label={`Take back ${site.name}`}>
                Take back
              </button>
              <button type="button" onClick={() => erase(site.doc, [site])}>
                {sure === site.doc ? 'Yes, delete it for good' : 'Delete…'}
              </button>
            </span>
          </li>
        ))}
      </ul>
      {old.length > 0 && (
        <button type="button" className="outlined" onClick={() => erase('old', old)}>
          {sure === 'old' ? `Yes, delete ${oldWords} for good` : `Delete ${oldWords}…`}
        </button>
      )}
    </details>
  );
}
