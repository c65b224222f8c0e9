import { useMemo, useState } from 'react';
import { writeSite } from '../../routing/site/file/write.ts';
import { counted } from '../../routing/words/counted.ts';
import { nameSite } from '../document/edits/set.ts';
import { download, fileDoor, fileNameOf } from '../document/files/files.ts';
import type { Restored } from '../document/keeping/kept-list/kept-copies.ts';
import type { KeptSite } from '../document/keeping/kept-list/kept-work.ts';
import type { Refusal } from '../document/keeping/kept-list/work-world.ts';
import { useDocumentStore } from '../document/use-document.tsx';
import { usePageActions } from '../page-state/page-actions.ts';
import { Dialog } from '../parts/dialog.tsx';
import { Scroller } from '../parts/scroller.tsx';
import { BinList } from './bin-list.tsx';
import { SiteCard } from './site-card.tsx';
import { useCards, useKeptWork } from './use-kept-work.ts';
import { WherePanel } from './where-panel.tsx';

const NONE: readonly KeptSite[] = [];

/** The list of all that this browser keeps. */
export function KeptWorkDialog({ close }: { readonly close: () => void }) {
  const document = useDocumentStore();
  const { keeping, reopen, siteOf } = usePageActions();
  const work = useKeptWork();
  const [wanted, setWanted] = useState('');
  const [says, setSays] = useState<{ readonly words: string; readonly back?: KeptSite } | null>(null);
  const sites = work?.sites ?? NONE;
  const cards = useCards(sites);
  const found = useMemo(() => sites.filter((site) => isFound(site, wanted)), [sites, wanted]);

  const told = (refusal: Refusal, words: string | null, back?: KeptSite): void =>
    setSays(refusal !== null ? { words: refusal } : words === null ? null : { words, ...(back && { back }) });
  const openIt = async ({ doc, name }: KeptSite): Promise<void> => {
    if (await reopen(doc)) close();
    else setSays({ words: `“${name}” was not opened: see the words at the foot of the page.` });
  };
  const rename = async ({ doc, open, name }: KeptSite, next: string): Promise<void> => {
    const { apply, committed } = document.getState();
    if (!open) told(await (await keeping()).rename(doc, next), null);
    else if (!apply(nameSite(committed().file, next))) setSays({ words: `“${name}” was not renamed.` });
  };
  const copy = async ({ doc, name }: KeptSite, as: string): Promise<void> => {
    const kept = await keeping();
    await kept.flush();
    told(await kept.copy(doc, as), `A copy of “${name}” is kept as “${as}”.`);
  };
  const putInBin = async (site: KeptSite): Promise<void> =>
    told(await (await keeping()).putInBin(site.doc), `“${site.name}” is in the bin.`, site);
  const takeBack = async (site: KeptSite): Promise<void> =>
    told(await (await keeping()).takeFromBin(site.doc), `“${site.name}” is back.`);
  const erase = async (which: readonly KeptSite[]): Promise<void> => {
    const kept = await keeping();
    for (const { doc, name } of which) told(await kept.erase(doc), `“${name}” is deleted.`);
  };
  const save = async ({ doc, name }: KeptSite): Promise<void> => {
    const file = await siteOf(doc);
    if (file) download(fileNameOf(name), 'application/json', writeSite(file));
    else download(`${name} as kept.json`, 'application/json', await (await keeping()).leftOf(doc));
    setSays({ words: `Sent to your downloads: ${name}${file ? '' : ', which is damaged, as it is kept'}.` });
  };
  const readBack = async (): Promise<void> => {
    const picked = await fileDoor().pick();
    if (picked.kind === 'none') return;
    if (picked.kind === 'failed') setSays({ words: `The file was not read: ${picked.says}` });
    else setSays({ words: restoredWords(picked.fileName, await (await keeping()).restore(picked.text)) });
  };

  return (
    <Dialog title="Kept work" onClose={close}>
      <div className="kept-find">
        <label>
          Find by name{' '}
          <input type="search" value={wanted} autoComplete="off" onChange={(event) => setWanted(event.target.value)} />
        </label>
        <span role="status">{countWords(work?.failed, work === null, found.length, sites.length)}</span>
      </div>
      {says && (
        <p className="kept-says" role="status">
          {says.words}{' '}
          {says.back && (
            <button type="button" className="link" onClick={() => void takeBack(says.back!)}>
              Take it back
            </button>
          )}
        </p>
      )}
      <Scroller className="dialog-scroll kept-work" aria-label="Kept sites">
        <ul className="kept-cards">
          {found.map((site) => (
            <SiteCard
              key={site.doc}
              site={site}
              card={cards.get(site.doc)}
              onOpen={() => void openIt(site)}
              onRename={(next) => void rename(site, next)}
              onCopy={(as) => void copy(site, as)}
              onBin={() => void putInBin(site)}
              onSave={() => void save(site)}
            />
          ))}
        </ul>
        <BinList
          sites={work?.bin ?? NONE}
          onTakeBack={(site) => void takeBack(site)}
          onErase={(which) => void erase(which)}
        />
        <WherePanel
          health={work?.health ?? null}
          count={sites.length}
          onSaveAll={() => void keeping().then((kept) => kept.saveAll())}
          onReadBack={() => void readBack()}
        />
      </Scroller>
    </Dialog>
  );
}

/** Whether every word that is typed stands in the name of the site or of its file. */
function isFound({ name, fileName = '' }: KeptSite, wanted: string): boolean {
  const text = `${name} ${fileName}`.toLowerCase();
  return wanted
    .toLowerCase()
    .split(/\s+/)
    .every((word) => text.includes(word));
}

function countWords(failed: string | undefined, reading: boolean, found: number, all: number): string {
  if (failed !== undefined) return `The list could not be read: ${failed}`;
  if (reading) return 'looking …';
  if (found < all) return `${found} of ${all}`;
  return all === 1 ? 'one site' : `${all} sites`;
}

function restoredWords(fileName: string, restored: Restored): string {
  if (!restored.ok) return `${fileName} was not read back: ${restored.says}.`;
  const { restored: count, same, faults } = restored;
  const parts = [`${count === 1 ? 'One site' : `${count} sites`} brought back from ${fileName}`];
  if (same > 0) parts.push(`${counted(same, 'was', 'were')} here already`);
  if (faults.length > 0) parts.push(`${faults.length} could not be read (${faults.slice(0, 3).join('; ')})`);
  return `${parts.join(', ')}.`;
}
