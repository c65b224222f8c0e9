let opened = 0;

/** Another document is open: what is typed in fields that it takes away was of the last one, and is let go. */
export function letDraftsGo(): void {
  opened++;
}

/** The same number for as long as one document is open. */
export const draftsOf = (): number => opened;
