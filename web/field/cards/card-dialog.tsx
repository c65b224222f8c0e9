import '../field.css';
import { useEffect, useState } from 'react';
import { type CardName, type CardOfSite, cardInLink, cardLink } from '../../../calc/field/cards/card-link.ts';
import { cardLines, cardSubtitle, cardTitle } from '../../../calc/field/cards/card-words.ts';
import { type PullCard, pullCard } from '../../../calc/field/cards/pull-cards.ts';
import { withCounts } from '../../document/counted-plan.ts';
import type { KeptSite } from '../../document/keeping/kept-list/kept-work.ts';
import { useDocument, useDocumentStore } from '../../document/use-document.tsx';
import { usePageActions } from '../../page-state/page-actions.ts';
import { usePageStore } from '../../page-state/page-store.ts';
import { Dialog } from '../../parts/dialog.tsx';
import { refsOf } from '../../words/refs.ts';
import { StepsFacts } from './steps-facts.tsx';

interface CardDialogProps {
  /** The address that names the card, each time that it is opened. */
  readonly opened: { readonly link: string };
  readonly close: () => void;
}

/** A pull card in the hand: of the open site, or of another that this device keeps, which is then opened. */
export function CardDialog({ opened, close }: CardDialogProps) {
  const { link } = opened;
  const open = useDocument((state) => state.name);
  const card = cardInLink(link);
  useEffect(() => {
    // Once: reloaded, the page opens no card by itself.
    if (location.hash === opened.link) history.replaceState(null, '', location.pathname + location.search);
  }, [opened]);
  if (card === null || card === 'damaged')
    return (
      <Dialog title="Pull card" onClose={close}>
        <p role="alert">The address of this card is not whole. Scan its code again, or find the circuit in Build.</p>
      </Dialog>
    );
  return card.site === open ? <OwnCard card={card} close={close} /> : <OtherSite card={card} close={close} />;
}

interface OfSite {
  readonly card: CardOfSite;
  readonly close: () => void;
}

const KIND_WORDS = { circuit: 'circuit of charger', feeder: 'feeder', conduit: 'conduit' } as const;

function OwnCard({ card, close }: OfSite) {
  const site = useDocument((state) => state.site);
  const plan = useDocument((state) => state.plan);
  const found = pullCard(site, withCounts(plan), card);
  if (found) return <CardView key={`${card.kind} ${card.id}`} card={found} site={card.site} close={close} />;
  return (
    <Dialog title="Pull card" onClose={close}>
      <p role="alert">
        This site has no {KIND_WORDS[card.kind]} {card.id} with a run: the card is of another version of “{card.site}”.
      </p>
    </Dialog>
  );
}

interface ViewProps {
  readonly card: PullCard;
  readonly site: string;
  readonly close: () => void;
}

function CardView({ card, site, close }: ViewProps) {
  const page = usePageStore();
  const document = useDocumentStore();
  const units = useDocument((state) => state.site.units);
  const { reveal } = usePageActions();
  const goTo = (name: CardName): void => page.setState({ card: { link: cardLink('', { ...name, site }) } });
  const show = (): void => {
    const { file, plan } = document.getState();
    close();
    reveal(refsOf(file, plan, card.id));
  };
  return (
    <Dialog title={cardTitle(card)} onClose={close}>
      <div className="pull-card">
        <p>{cardSubtitle(card)}</p>
        <dl>
          {cardLines(card, units).map(({ name, says, opens = [] }) => (
            <div key={name}>
              <dt>{name}</dt>
              {says.map((text, i) => {
                const to = opens[i];
                return (
                  <dd key={text} className={name === 'cut each to' ? 'pull-length' : undefined}>
                    {to ? (
                      <button type="button" onClick={() => goTo(to)}>
                        {text}
                      </button>
                    ) : (
                      text
                    )}
                  </dd>
                );
              })}
            </div>
          ))}
        </dl>
      </div>
      <div className="pull-acts">
        {card.kind === 'circuit' && <StepsFacts id={card.id} steps={['pulled', 'terminated']} />}
        {card.kind === 'feeder' && <StepsFacts id={card.id} steps={['pulled', 'terminated', 'tested']} />}
        <button type="button" className="main-act" onClick={show}>
          Show on the drawing
        </button>
      </div>
    </Dialog>
  );
}

/** The card is of a site that is not open: it is opened where this device keeps it, else that is said. */
function OtherSite({ card, close }: OfSite) {
  const { keeping, reopen } = usePageActions();
  const open = useDocument((state) => state.name);
  const [found, setFound] = useState<readonly KeptSite[] | null>(null);
  const [says, setSays] = useState('');
  const { site } = card;
  useEffect(() => {
    let gone = false;
    void keeping()
      .then((work) => work.list())
      .then(
        async (sites) => {
          const own = sites.filter(({ name }) => name === site);
          if (gone) return;
          // One of that name is the one; the page shows the card once it stands.
          if (own.length === 1 && (await reopen(own[0]!.doc))) return;
          if (!gone) setFound(own);
        },
        () => !gone && setFound([]),
      );
    return () => {
      gone = true;
    };
  }, [keeping, reopen, site]);
  const openIt = async ({ doc }: KeptSite): Promise<void> => {
    if (!(await reopen(doc))) setSays('It was not opened: see the words at the foot of the page.');
  };
  const of = `${KIND_WORDS[card.kind]} ${card.id}`;
  return (
    <Dialog title="Pull card" onClose={close}>
      <div className="pull-card">
        {found === null ? (
          <p role="status">Looking for “{site}” among the sites that this device keeps…</p>
        ) : found.length === 0 ? (
          <>
            <p role="alert">
              This card is of the {of} in the site “{site}”, which this device does not hold.
            </p>
            <p>
              Have its site file sent to you and open it here (Open, at the top of the page); then scan the code again.
              Open now is “{open}”.
            </p>
          </>
        ) : (
          <>
            <p>
              The card is of the {of} in the site “{site}”. This device keeps {found.length} of that name.
            </p>
            <ul>
              {found.map((each) => (
                <li key={each.doc}>
                  <button type="button" onClick={() => void openIt(each)}>
                    Open that of {new Date(each.at).toLocaleString()}
                  </button>
                </li>
              ))}
            </ul>
            {says && <p role="alert">{says}</p>}
          </>
        )}
      </div>
    </Dialog>
  );
}
