import { createContext, useContext } from 'react';
import type { SiteFile } from '../../routing/site/site.ts';
import type { Ref } from '../document/change/element-lists.ts';
import type { KeptSite } from '../document/keeping/kept-list/kept-work.ts';
import type { SiteKeeping } from '../document/keeping/site-keeping.ts';

/** What panels and tables can ask of the page. */
export interface PageActions {
  /** Selects elements and brings them into view on the board. */
  readonly reveal: (refs: readonly Ref[]) => void;
  readonly openSample: (name: string) => Promise<void>;
  /** The keeping of sites, once what was kept has been looked for. */
  readonly keeping: () => Promise<SiteKeeping>;
  /** The sites that this browser keeps, the newest first. */
  readonly kept: () => Promise<readonly KeptSite[]>;
  readonly reopen: (doc: string) => Promise<boolean>;
  /** A kept site as it is now, the open one with all that is written of it; undefined where it cannot be read. */
  readonly siteOf: (doc: string) => Promise<SiteFile | undefined>;
  /** Writes down everything that the browser keeps, now. */
  readonly settle: () => Promise<void>;
  /** Opens a copy of the open site under a name of its own; both are kept. */
  readonly branch: () => Promise<boolean>;
  /** Opens a site under a name of its own beside the open one; both are kept. */
  readonly openBeside: (file: SiteFile) => Promise<boolean>;
}

const ActionsContext = createContext<PageActions | null>(null);
export const ActionsProvider = ActionsContext.Provider;

export function usePageActions(): PageActions {
  const actions = useContext(ActionsContext);
  if (!actions) throw new RangeError('a component that asks something of the page stands outside ActionsProvider');
  return actions;
}
