/** How browsers say that a module, or what it imports, could not be fetched. */
const NOT_FETCHED =
  /dynamically imported module|Importing a module script failed|module script failed|Failed to fetch/i;

const NO_PART =
  'a part of the page could not be loaded. Nothing is lost: try again with a network. Where the page was updated on its host meanwhile, save the site to a file and load the page anew.';

/** Why something failed, in words that say what to do where a part of the page did not come. */
export function failureWords(error: unknown): string {
  const says = error instanceof Error ? error.message : String(error);
  return NOT_FETCHED.test(says) ? NO_PART : says;
}
