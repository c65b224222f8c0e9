import '../field.css';
import './handover.css';
import { useMemo, useState } from 'react';
import { OPEN_KINDS, type OpenItem, type OpenKind, openItems } from '../../../calc/field/open/open-items.ts';
import { writeRecordsBundle } from '../../../calc/field/records-bundle.ts';
import { pricedOf } from '../../../calc/plan/compared/alternative.ts';
import { writeSite } from '../../../routing/site/file/write.ts';
import { recordsOf } from '../../../routing/site/records/records-file.ts';
import { MAX_SAID } from '../../../routing/site/schema/mark-schema.ts';
import { isUsed } from '../../document/change/used-name.ts';
import { withCounts } from '../../document/counted-plan.ts';
import type { DocumentState } from '../../document/document-state.ts';
import { hasCome, usePrices } from '../../document/files/price-store.ts';
import { useDocument, useDocumentStore } from '../../document/use-document.tsx';
import { usePageActions } from '../../page-state/page-actions.ts';
import { useUnsent } from '../../page-state/use-unsent.ts';
import { Dialog } from '../../parts/dialog.tsx';
import { saveHandover } from '../../sheets/ask-sheets.ts';
import { failureWords } from '../../words/failure-words.ts';
import { refsOf } from '../../words/refs.ts';
import { photosForHandover } from './kept-photos.ts';
import { useMarks } from './use-marks.ts';

/** Rows that are drawn before the rest is asked for. */
const MOST = 60;

/** Everything that is still open, kind by kind, the way to each, and the handing over of it all. */
export function HandoverDialog({ close }: { readonly close: () => void }) {
  const document = useDocumentStore();
  const items = useOpenItems();
  const [kind, setKind] = useState<OpenKind | null>(null);
  const [most, setMost] = useState(MOST);
  const kinds = (Object.keys(OPEN_KINDS) as OpenKind[]).filter((each) => items.some((item) => item.kind === each));
  const shown = kind === null ? items : items.filter((item) => item.kind === kind);
  return (
    <Dialog title="Open items and handover" onClose={close}>
      <div className="handover">
        <p role="status">
          {items.length === 0
            ? 'Nothing is open that the plan and the records know of.'
            : `${items.length} still open. None of this says that the work complies.`}
        </p>
        <div className="handover-kinds">
          {kinds.map((each) => (
            <button
              key={each}
              type="button"
              aria-pressed={each === kind}
              onClick={() => {
                setKind(each === kind ? null : each);
                setMost(MOST);
              }}
            >
              {OPEN_KINDS[each]} {items.filter((item) => item.kind === each).length}
            </button>
          ))}
        </div>
        <ul className="handover-items" aria-label="Open items">
          {shown.slice(0, most).map((item) => (
            <Item key={item.key} item={item} close={close} />
          ))}
        </ul>
        {shown.length > most && (
          <button type="button" className="handover-more" onClick={() => setMost(most + 5 * MOST)}>
            Show more of {shown.length}
          </button>
        )}
      </div>
      <footer className="handover-acts">
        <button type="button" className="main-act" onClick={() => void handOver(document.getState())}>
          Hand over: set as built, checklist, open items
        </button>
      </footer>
    </Dialog>
  );
}

/** What goes beside the sheets is put together here, away from the first screen: the site, its records and their photos. */
async function handOver(state: DocumentState): Promise<void> {
  const { file, site } = state;
  try {
    const photos = await photosForHandover(site.records);
    const beside = {
      '.site.json': writeSite(file),
      '.records.zip': writeRecordsBundle({ records: recordsOf(file), photos }),
    };
    saveHandover(state, { kind: 'handover', photos, beside });
  } catch (error) {
    state.notify(`The handover is not written: ${failureWords(error)}`);
  }
}

function useOpenItems(): readonly OpenItem[] {
  const site = useDocument((state) => state.site);
  const plan = useDocument((state) => state.plan);
  const prices = usePrices((state) => state.list);
  return useMemo(
    () => openItems(site, plan, hasCome(prices) ? pricedOf(withCounts(plan).takeoff, site, prices) : null),
    [site, plan, prices],
  );
}

interface ItemProps {
  readonly item: OpenItem;
  readonly close: () => void;
}

/** One thing that is open: what it is of leads there; where words close it, they are written here. */
function Item({ item: { kind, of, says, by, on, answer }, close }: ItemProps) {
  const document = useDocumentStore();
  const { reveal } = usePageActions();
  const { write } = useMarks();
  const site = useDocument((state) => state.site);
  const [open, setOpen] = useState(false);
  const verb = kind === 'assumption' ? 'Confirm' : 'Answer';
  const [text, setText] = useUnsent(`${verb} ${kind} ${of}`);
  const isDrawn = isUsed(site, of);
  const go = (): void => {
    const { file, plan } = document.getState();
    close();
    reveal(refsOf(file, plan, of));
  };
  return (
    <li>
      <div className="handover-item">
        {isDrawn ? (
          <button type="button" className="handover-of" onClick={go}>
            {of}
          </button>
        ) : (
          <b className="handover-of">{of}</b>
        )}
        <p>
          {says}
          {(by || on) && <span className="quiet"> {[by, on].filter(Boolean).join(', ')}</span>}
        </p>
        {answer && (
          <button type="button" aria-expanded={open} aria-label={`${verb} ${of}`} onClick={() => setOpen(!open)}>
            {verb}
          </button>
        )}
      </div>
      {answer && open && (
        <form
          className="handover-answer"
          onSubmit={(event) => {
            event.preventDefault();
            if (!text.trim()) return;
            write(`${verb} ${of}`, { ...answer, what: 'answered', text: text.trim() });
            setText('');
          }}
        >
          <input
            type="text"
            aria-label={kind === 'assumption' ? `${of}, confirmed by` : `${of}, what is made of it`}
            placeholder={kind === 'assumption' ? 'confirmed by' : 'what is made of it'}
            maxLength={MAX_SAID}
            value={text}
            onChange={(event) => setText(event.target.value)}
          />
          <button type="submit" disabled={text.trim() === ''}>
            Write it down
          </button>
        </form>
      )}
    </li>
  );
}
