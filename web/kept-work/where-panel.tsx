import type { Health } from '../document/keeping/site-keeping.ts';
import { useDocument } from '../document/use-document.tsx';
import { Fact, Facts } from '../panels/facts/facts.tsx';
import { persistWords, roomWords } from '../words/room-words.ts';
import { whenWords } from '../words/site-labels.ts';
import { keepingWords } from './keeping-words.tsx';

interface WhereProps {
  readonly health: Health | null;
  readonly count: number;
  readonly onSaveAll: () => void;
  readonly onReadBack: () => void;
}

/** Where the work is: where, how large, whether the browser may clear it, and when it was last written. */
export function WherePanel({ health, count, onSaveAll, onReadBack }: WhereProps) {
  const keeping = useDocument((state) => state.keeping);
  const saved = useDocument((state) => state.saved);
  const name = useDocument((state) => state.name);
  return (
    <section className="kept-where" aria-label="Where the work is">
      <h3>Where the work is</h3>
      <Facts>
        <Fact name="kept in">this browser, for {location.host}: another browser or address does not see it</Fact>
        <Fact name="room">{roomWords(health)}</Fact>
        <Fact name="may be cleared">{persistWords(health)}</Fact>
        <Fact name={`${name}, open`}>{keeping.kind === 'failed' ? keeping.says : keepingWords(keeping, saved)}</Fact>
        <Fact name="last written">{timeWords(health?.wroteAt)}</Fact>
        <Fact name="last in a file">{timeWords(health?.savedAt)}</Fact>
      </Facts>
      <div className="kept-acts">
        <button type="button" disabled={count === 0} onClick={onSaveAll}>
          Save all kept sites in one file
        </button>
        <button type="button" onClick={onReadBack}>
          Read such a file back…
        </button>
      </div>
      <p className="quiet small">The file has every site with its past, not the pictures that lie under drawings.</p>
    </section>
  );
}

const timeWords = (at: number | null | undefined): string => (at == null ? 'not yet' : whenWords(at, Date.now()));
