import { download } from '../document/files/files.ts';
import { keptWork } from '../document/keeping/kept-list/kept-work.ts';
import { inTime } from '../document/keeping/roles/in-time.ts';
import { openSites } from '../document/keeping/store/database.ts';
import { browserTabs } from '../document/keeping/tabs.ts';

const READING_MS = 10_000;

/**
 * What stands in place of a page that could not start, or broke: the reason, and a way to the work that this browser
 * keeps. It is made without the parts that may have failed.
 */
export function showFailure(root: HTMLElement, error: unknown): void {
  // The first error is the cause; what follows from it says less.
  if (root.dataset.failed) return;
  const reason = error instanceof Error ? error.message : String(error);
  const said = part('p', '', 'failure-said');
  said.setAttribute('role', 'status');
  const main = part('main', '', 'failure');
  main.append(
    part('h1', 'This page stopped'),
    part('p', `It ran into an error and shows nothing rather than something wrong: ${reason}`),
    part('p', 'What this browser keeps of your sites is not touched. Download it first, then reload the page.'),
    button('Download what this browser keeps', () => {
      void handOut().then(
        (words) => {
          said.textContent = words;
        },
        (failed: unknown) => {
          said.textContent = `It could not be read: ${failed instanceof Error ? failed.message : String(failed)}`;
        },
      );
    }),
    button('Reload the page', () => location.reload()),
    said,
  );
  root.style.display = 'none';
  root.dataset.failed = 'yes';
  document.body.append(main);
}

/** One file with all sites that can be read; of each that cannot, a file with what is left of it. */
async function handOut(): Promise<string> {
  const database = await inTime(READING_MS, () => openSites(() => {}));
  try {
    const work = keptWork({
      database: () => database,
      openDoc: () => null,
      tabs: browserTabs(undefined, null),
      now: Date.now,
      newDocument: () => '',
      changed: () => {},
    });
    const sites = await inTime(READING_MS, work.list);
    if (sites.length === 0) return 'This browser keeps no site.';
    download('kept-sites.json', 'application/json', await work.bundle());
    for (const { doc, name } of sites) {
      if (!(await work.siteOf(doc))) download(`${name} as kept.json`, 'application/json', await work.leftOf(doc));
    }
    return `${sites.length === 1 ? 'One site' : `${sites.length} sites`} sent to your downloads.`;
  } finally {
    database.close();
  }
}

function part(kind: string, words: string, name = ''): HTMLElement {
  const element = document.createElement(kind);
  element.textContent = words;
  element.className = name;
  return element;
}

function button(words: string, act: () => void): HTMLElement {
  const element = part('button', words, 'failure-act');
  element.setAttribute('type', 'button');
  element.addEventListener('click', act);
  return element;
}
