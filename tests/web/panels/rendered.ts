import { type ComponentType, createElement, type ReactNode } from 'react';
import { renderToStaticMarkup } from 'react-dom/server';
import type { SiteFile } from '../../../routing/site/site.ts';
import { createViewStore, ViewProvider } from '../../../web/board/view-store.ts';
import type { Ref } from '../../../web/document/change/element-lists.ts';
import type { Station } from '../../../web/document/document-state.ts';
import { DocumentProvider } from '../../../web/document/use-document.tsx';
import { ActionsProvider, type PageActions } from '../../../web/page-state/page-actions.ts';
import { createPageStore, PageProvider } from '../../../web/page-state/page-store.ts';
import { opened } from '../document/keeping/opened-store.ts';

export interface Shown {
  readonly selection?: readonly Ref[];
  readonly station?: Station;
}

/** What a part of the ledger is in HTML with a site open, as it is first drawn: no browser, no effects. */
export async function rendered(part: ReactNode, file: SiteFile, { selection = [], station }: Shown): Promise<string> {
  const store = await opened(file);
  if (store.getState().file !== file) throw new RangeError(JSON.stringify(store.getState().problems));
  if (station) store.getState().setStation(station);
  store.getState().select(selection);
  // Outside a browser React asks a store for what it began with.
  const document = { ...store, getInitialState: store.getState };
  const within = <V>(Provider: ComponentType<{ value: V; children: ReactNode }>, value: V, inner: ReactNode) =>
    createElement(Provider, { value, children: inner });
  return renderToStaticMarkup(
    within(
      DocumentProvider,
      document,
      within(
        PageProvider,
        createPageStore({ theme: 'light', drawer: null }),
        within(ViewProvider, createViewStore(), within(ActionsProvider, {} as PageActions, part)),
      ),
    ),
  );
}

/** What stands in the controls of a form, in their order: typed text, what is ticked, what is chosen. */
export function controlsOf(html: string): readonly string[] {
  const controls =
    /<input\b[^>]*>|<textarea\b[^>]*>[^<]*<\/textarea>|<option\b[^>]*selected=""[^>]*>|<button\b[^>]*aria-pressed="[^>]*>/g;
  return [...html.matchAll(controls)].map(([control]) => control.replace(/ (id|aria-describedby)="[^"]*"/g, ''));
}
