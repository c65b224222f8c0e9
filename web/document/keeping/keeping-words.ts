/** What is said of the keeping of the site, in one place. */

const SAVE_TO_FILE = 'Save the site to a file now.';

export const WATCHING = 'This site is open for editing in another tab.';

export const FORKED = 'Another tab changed this site at the same time. What you see here is kept as a site of its own.';

export const MAY_CLEAR = 'The browser may clear it when it runs short of room: save to a file as well.';

const CLOSED = {
  newer: 'A newer version of this page is open in another tab, and this one no longer keeps anything.',
  lost: 'The browser took away its store of sites, and this page asks for it again.',
} as const;

// First what saves the work, then what would lose it.
const THEN_RELOAD = 'Save the site to a file now, then reload the page.';

export const closedSays = (why: keyof typeof CLOSED): string => `${CLOSED[why]} ${THEN_RELOAD}`;

const reasonOf = (error: unknown): string => (error instanceof Error ? error.message : String(error));

/** Why the site could not be kept, and what to do. */
export function failureSays(error: unknown): string {
  const name = error instanceof DOMException || error instanceof Error ? error.name : '';
  if (name === 'QuotaExceededError') return `The browser has no room left to keep this site. ${SAVE_TO_FILE}`;
  if (name === 'VersionError') {
    return `This browser keeps sites of a newer version of this page, which this one leaves alone. ${THEN_RELOAD}`;
  }
  return `This browser does not keep the site (${reasonOf(error)}). ${SAVE_TO_FILE}`;
}

export const UNREAD = 'The sites that this browser keeps could not be read';
/** What was kept could not be read; what the page shows instead is kept beside it. */
export const unreadSays = (error: unknown): string =>
  `${UNREAD} (${reasonOf(error)}). Nothing of them was changed. Reading them is ` +
  'tried again while this page is open.';

export const notReadSays = (name: string, error: unknown): string =>
  `“${name}” could not be read (${reasonOf(error)}). Nothing of it was changed; try again.`;

export const readAgainSays = (name: string): string =>
  `The sites that this browser keeps can be read again. “${name}” was the last.`;

export const brokenSays = (name: string): string =>
  `“${name}” could not be brought back. What is left of it can be downloaded as text.`;

export const lostSays = (name: string, lost: number): string =>
  `${lost === 1 ? 'The last change' : `The last ${lost} changes`} of “${name}” could not be brought back.`;

export const doubtfulSays = (name: string): string =>
  `“${name}” was damaged where it was kept, and no whole copy is left. Look it over before you rely on it.`;

export const nearlyFullSays = (left: number): string =>
  `The browser has room for about ${Math.max(0, Math.round(left / 1e6))} MB more. Save all kept sites in one file, then ` +
  'remove what you no longer need.';

export const bundleFailedSays = (error: unknown): string =>
  `The file of all kept sites could not be written: ${reasonOf(error)}.`;
