import '../field.css';
import { useEffect, useState } from 'react';
import { broughtUp } from '../../../routing/site/records/brought-up.ts';
import { isUsed } from '../../document/change/used-name.ts';
import type { Health } from '../../document/keeping/site-keeping.ts';
import { initialsHere, setInitialsHere } from '../../document/pen.ts';
import { useDocument } from '../../document/use-document.tsx';
import { usePageActions } from '../../page-state/page-actions.ts';
import { usePageStore } from '../../page-state/page-store.ts';
import { Fact, Facts } from '../../panels/facts/facts.tsx';
import { Dialog } from '../../parts/dialog.tsx';
import { TextField } from '../../parts/fields.tsx';
import { byteWords, persistWords, roomWords } from '../../words/room-words.ts';
import { ConflictList } from './conflict-list.tsx';
import { photosKept } from './kept-photos.ts';
import { LinesSection } from './lines-section.tsx';
import { LotTests } from './lot-tests.tsx';
import { SendSection } from './send-section.tsx';
import { TakeInSection } from './take-in-section.tsx';
import { TakenIntoDesign } from './taken-into-design.tsx';

const tooLong = (text: string): string | null => (text.length <= 12 ? null : 'initials, 12 letters or fewer');

/** Who wrote what in the field: to be sent, taken in, decided; and whether it will last here. */
export function RecordsDialog({ close }: { readonly close: () => void }) {
  return (
    <Dialog title="Records of the field" onClose={close}>
      <div className="records">
        <Who />
        <StillOpen />
        <ConflictList />
        <LotTests />
        <TakeInSection />
        <SendSection />
        <LinesSection />
        <TakenIntoDesign />
        <Lasting />
      </div>
    </Dialog>
  );
}

/** The way to what is still open, and to the handing over. */
function StillOpen() {
  const page = usePageStore();
  return (
    <div className="records-acts">
      <button type="button" onClick={() => page.setState({ records: false, handover: true })}>
        Open items and handover
      </button>
    </div>
  );
}

function Who() {
  const site = useDocument((state) => state.site);
  const [by, setBy] = useState(initialsHere);
  const marks = broughtUp(site.records);
  const counts = new Map<string, number>();
  for (const mark of marks) counts.set(mark.by, (counts.get(mark.by) ?? 0) + 1);
  const set = site.drops.filter(({ id }) => site.asBuilt.get(id)?.checkedOn !== undefined).length;
  const stray = [
    ...new Set(
      marks.filter(({ what, of }) => what !== 'line' && what !== 'answered' && !isUsed(site, of)).map(({ of }) => of),
    ),
  ];
  return (
    <section aria-label="Who wrote what">
      <TextField
        label="your initials"
        value={by}
        check={tooLong}
        onChange={(next) => {
          setInitialsHere(next);
          setBy(next);
        }}
      />
      <Facts>
        <Fact name="drops set">
          {set} of {site.drops.length}
        </Fact>
        <Fact name="written down by">
          {counts.size === 0
            ? 'nobody yet'
            : [...counts].map(([name, count]) => `${name || 'without initials'} ${count}`).join(', ')}
        </Fact>
        {stray.length > 0 && <Fact name="of what is not drawn">{stray.join('; ')}</Fact>}
      </Facts>
    </section>
  );
}

function Lasting() {
  const { keeping } = usePageActions();
  // What nobody recorded need not last.
  const begun = useDocument((state) => state.site.records.length > 0);
  const [health, setHealth] = useState<Health | null>(null);
  const [photos, setPhotos] = useState<Awaited<ReturnType<typeof photosKept>> | null>(null);
  useEffect(() => {
    let gone = false;
    void keeping()
      .then(async (work) => {
        if (begun) await work.askToLast();
        return work.health();
      })
      .then(
        (now) => !gone && setHealth(now),
        () => {},
      );
    void photosKept().then(
      (now) => !gone && setPhotos(now),
      () => {},
    );
    return () => {
      gone = true;
    };
  }, [keeping, begun]);
  return (
    <section aria-label="What this device keeps">
      <h3>What this device keeps</h3>
      <Facts>
        <Fact name="may be cleared">{persistWords(health)}</Fact>
        <Fact name="room">{roomWords(health)}</Fact>
        <Fact name="photos">
          {photos
            ? `${photos.count}, ${byteWords(photos.bytes)}: sent with the records where you save them with photos`
            : 'being counted'}
        </Fact>
      </Facts>
    </section>
  );
}
