import { createContext, useContext } from 'react';
import type { Alternative } from '../../calc/comparison.ts';
import type { Ref } from '../document/element-lists.ts';
import type { KeptSite } from '../document/storage.ts';

/** What panels and tables can ask of the page. */
export interface PageActions {
  /** Selects elements and brings them into view on the board. */
  readonly reveal: (refs: readonly Ref[]) => void;
  readonly openSample: (name: string) => Promise<void>;
  /** The sites that this browser keeps, the newest first. */
  readonly kept: () => Promise<readonly KeptSite[]>;
  readonly reopen: (doc: string) => Promise<boolean>;
  /** The text of a kept site as it stands; undefined where it cannot be read. */
  readonly textOf: (doc: string) => Promise<string | undefined>;
  /** Writes down everything that the browser keeps, now. */
  readonly settle: () => Promise<void>;
  /** Opens a copy of the open site under a name of its own; both are kept. */
  readonly branch: () => Promise<boolean>;
  /** Writes the open plan's drawing set as a revision of another version. */
  readonly saveRevised: (before: Alternative) => Promise<void>;
}

const ActionsContext = createContext<PageActions | null>(null);
export const ActionsProvider = ActionsContext.Provider;

export function usePageActions(): PageActions {
  const actions = useContext(ActionsContext);
  if (!actions) throw new RangeError('a component that asks something of the page stands outside ActionsProvider');
  return actions;
}
