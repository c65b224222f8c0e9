import { type KeyboardEvent, useMemo, useRef, useState } from 'react';
import { circuitNames } from '../../calc/supply/panels/circuit-names.ts';
import { wordFor } from '../document/edits/in-words.ts';
import { useDocument, useDocumentStore } from '../document/use-document.tsx';
import { usePageActions } from '../page-state/page-actions.ts';
import { usePage, usePageStore } from '../page-state/page-store.ts';
import { Dialog } from '../parts/dialog.tsx';
import { keysToBoard } from '../parts/keys-to-board.ts';
import { type Found, findElements } from '../words/find-elements.ts';
import { refsOf } from '../words/refs.ts';

/** Matches that are listed: more are told by their number, and a longer name leaves fewer. */
const MOST = 30;

/** Type a name, go there: a drop, a stall by its label, a panel, whatever the site holds. */
export function FindDialog() {
  const page = usePageStore();
  const open = usePage((state) => state.find);
  if (!open) return null;
  return (
    <Dialog title="Find" onClose={() => page.setState({ find: false })}>
      <FindForm />
    </Dialog>
  );
}

function FindForm() {
  const page = usePageStore();
  const document = useDocumentStore();
  const { reveal } = usePageActions();
  const file = useDocument((state) => state.file);
  const site = useDocument((state) => state.site);
  const [text, setText] = useState('');
  const { found, more } = useMemo(() => findElements(file, text, MOST, circuitNames(site)), [file, site, text]);
  const box = useRef<HTMLDivElement>(null);

  const go = ({ list, id }: Found): void => {
    const { file: now, plan } = document.getState();
    page.setState({ find: false });
    // A load stands nowhere on the board, but has fields of its own.
    reveal(list === 'loads' ? [{ list, id }] : refsOf(now, plan, id));
    // Once the dialog has gone, which gives the keys back to the button that opened it.
    requestAnimationFrame(() => keysToBoard());
  };
  const step = (event: KeyboardEvent): void => {
    const by = event.key === 'ArrowDown' ? 1 : event.key === 'ArrowUp' ? -1 : 0;
    if (by === 0) return;
    const stops = [...(box.current?.querySelectorAll<HTMLElement>('input, li button') ?? [])];
    const at = stops.indexOf(window.document.activeElement as HTMLElement);
    event.preventDefault();
    stops[Math.max(0, Math.min(stops.length - 1, at + by))]?.focus();
  };

  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: the arrows go through the list within
    <div className="find" ref={box} onKeyDown={step}>
      <label>
        <span>Name or label</span>
        <input
          ref={(input) => input?.setAttribute('autofocus', '')}
          value={text}
          maxLength={60}
          placeholder="D05, stall 12, P1-1/3"
          autoComplete="off"
          autoCapitalize="none"
          autoCorrect="off"
          enterKeyHint="go"
          spellCheck={false}
          onChange={(event) => setText(event.target.value)}
          onKeyDown={(event) => {
            if (event.key === 'Enter' && found[0]) go(found[0]);
          }}
        />
      </label>
      <p className="quiet" role="status">
        {text.trim() === ''
          ? 'Enter goes to the first that is found.'
          : found.length === 0
            ? 'Nothing here goes by that.'
            : `${found.length + more} found${more > 0 ? `, the first ${MOST} shown: type more of the name` : ''}.`}
      </p>
      <ul className="find-list">
        {found.map((each) => (
          <li key={`${each.list} ${each.id}`}>
            <button type="button" onClick={() => go(each)}>
              <b>{each.id}</b> <span className="quiet">{wordFor(each.list)}</span>
              {each.also && <span>{each.also}</span>}
            </button>
          </li>
        ))}
      </ul>
    </div>
  );
}
