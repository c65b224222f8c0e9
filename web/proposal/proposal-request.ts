import type { Outlook } from '../../calc/propose/outlook.ts';
import type { ProposalPart } from '../../calc/propose/part.ts';
import type { Doing, ProposalWish } from '../../calc/propose/propose.ts';
import { ELEMENT_LISTS, type ElementList } from '../../routing/site/kinds/kinds.ts';
import type { SiteFile } from '../../routing/site/site.ts';

export interface ProposalRequest {
  readonly file: SiteFile;
  readonly wish: ProposalWish;
  /** The best that is found in about so long. */
  readonly seconds: number;
}

/** What a proposal adds, in the file's units. */
export type Added = { readonly [L in ElementList]?: NonNullable<SiteFile[L]> };

export interface ProposalSoFar {
  readonly added: Added;
  readonly parts: readonly ProposalPart[];
  /** What the best whole one so far fails and costs; null before there is one. */
  readonly best: { readonly fails: number; readonly dollars: number } | null;
  /** Price and days of charging with it; null where the site has no day. */
  readonly outlook: Outlook | null;
}

export type ProposalNews =
  | { readonly kind: 'doing'; readonly doing: Doing }
  | { readonly kind: 'ready' | 'done'; readonly soFar: ProposalSoFar };

/** What stands at the end of the lists of one file and not in another: proposals only add. */
export function addedIn(next: SiteFile, before: SiteFile): Added {
  const added: Record<string, readonly unknown[]> = {};
  for (const list of ELEMENT_LISTS) {
    const own = (next[list] ?? []).slice(before[list]?.length ?? 0);
    if (own.length > 0) added[list] = own;
  }
  return added as Added;
}
