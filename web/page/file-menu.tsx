import { useState } from 'react';
import { SAMPLES } from '../document/files/samples.ts';
import type { KeptSite } from '../document/keeping/kept-list/kept-work.ts';
import { useDocumentStore } from '../document/use-document.tsx';
import { usePageActions } from '../page-state/page-actions.ts';
import { usePageStore } from '../page-state/page-store.ts';
import { Menu } from '../parts/menu.tsx';
import { siteLabels } from '../words/site-labels.ts';
import { sampleWords } from './sample-words.ts';

/** So many of the newest stand in the menu; the list has them all. */
const MOST_KEPT = 5;

/** Ways to a site: a file of one's own, one that this browser keeps, an empty one. */
export function FileMenu() {
  const document = useDocumentStore();
  const { kept, reopen, openSample, branch } = usePageActions();
  const page = usePageStore();
  const [sites, setSites] = useState<readonly KeptSite[]>([]);
  const labels = siteLabels(sites, Date.now());
  const { pick, newSite, save } = document.getState();
  return (
    <Menu
      name="Open"
      onOpen={() => void kept().then(setSites, () => {})}
      entries={[
        { name: 'A site file…', act: () => void pick(), keys: 'Ctrl+O' },
        { name: 'Kept work…', act: () => page.setState({ keptWork: true }) },
        { name: 'An empty site', act: () => void newSite() },
        { name: 'An alternative of this site', act: () => void branch() },
        { name: 'Records of the field…', act: () => page.setState({ records: true }) },
        { name: 'Open items and handover…', act: () => page.setState({ handover: true }) },
        { name: 'Save under another name…', act: () => void save({ as: true }), keys: 'Ctrl+Shift+S' },
        ...SAMPLES.map((each) => ({
          name: sampleWords(each),
          act: () => void openSample(each),
          under: 'Samples',
        })),
        ...sites.slice(0, MOST_KEPT).map(({ doc, name, fileName }) => ({
          key: doc,
          name: `${labels.get(doc) ?? name}${fileName ? ` (${fileName})` : ''}`,
          act: () => void reopen(doc),
          under: 'Kept in this browser',
        })),
        ...(sites.length > MOST_KEPT
          ? [
              {
                name: `All ${sites.length}…`,
                act: () => page.setState({ keptWork: true }),
                under: 'Kept in this browser',
              },
            ]
          : []),
      ]}
    />
  );
}
