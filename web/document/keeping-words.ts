/** What is said of the keeping of the site, in one place. */

const SAVE_TO_FILE = 'Save the site to a file now.';

export const WATCHING = 'This site is open for editing in another tab.';

export const FORKED = 'Another tab changed this site at the same time. What you see here is kept as a site of its own.';

export const MAY_CLEAR = 'The browser may clear it when it runs short of room: save to a file as well.';

const CLOSED = {
  newer: 'A newer version of this page is open in another tab, and this one no longer keeps anything: reload it.',
  lost: 'The browser took away its store of sites: reload the page.',
} as const;

export const closedSays = (why: keyof typeof CLOSED): string => `${CLOSED[why]} ${SAVE_TO_FILE}`;

/** Why the site could not be kept, and what to do. */
export function failureSays(error: unknown): string {
  const name = error instanceof DOMException || error instanceof Error ? error.name : '';
  if (name === 'QuotaExceededError') return `The browser has no room left to keep this site. ${SAVE_TO_FILE}`;
  if (name === 'VersionError') {
    return `This browser keeps sites of a newer version of this page: reload it. ${SAVE_TO_FILE}`;
  }
  return `This browser does not keep the site (${error instanceof Error ? error.message : String(error)}). ${SAVE_TO_FILE}`;
}

export const brokenSays = (name: string): string =>
  `“${name}” could not be brought back. What is left of it can be downloaded as text.`;

export const lostSays = (name: string, lost: number): string =>
  `${lost === 1 ? 'The last change' : `The last ${lost} changes`} of “${name}” could not be brought back.`;
