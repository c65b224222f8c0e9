import { useState } from 'react';
import { SAMPLES } from '../document/samples.ts';
import type { KeptSite } from '../document/storage.ts';
import { useDocumentStore } from '../document/use-document.ts';
import { Menu } from './menu.tsx';
import { usePageActions } from './page-actions.ts';
import { sampleWords } from './sample-words.ts';

const MOST_KEPT = 8;

/** Ways to a site: a file of one's own, one that this browser keeps, an empty one. */
export function FileMenu() {
  const document = useDocumentStore();
  const { kept, reopen, openSample, branch } = usePageActions();
  const [sites, setSites] = useState<readonly KeptSite[]>([]);
  const { pick, newSite, save } = document.getState();
  return (
    <Menu
      name="Open"
      onOpen={() => void kept().then((found) => setSites(found.slice(0, MOST_KEPT)))}
      entries={[
        { name: 'A site file…', act: () => void pick(), keys: 'Ctrl+O' },
        { name: 'An empty site', act: () => void newSite() },
        { name: 'An alternative of this site', act: () => void branch() },
        { name: 'Save under another name…', act: () => void save({ as: true }), keys: 'Ctrl+Shift+S' },
        ...SAMPLES.map((each) => ({
          name: sampleWords(each),
          act: () => void openSample(each),
          under: 'Samples',
        })),
        ...sites.map(({ doc, name, fileName }) => ({
          name: fileName ? `${name} (${fileName})` : name,
          act: () => void reopen(doc),
          under: 'Kept in this browser',
        })),
      ]}
    />
  );
}
