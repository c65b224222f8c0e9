import { useStore } from 'zustand';
import { createStore } from 'zustand/vanilla';
import type { Outlook } from '../../calc/propose/outlook.ts';
import type { ProposalPart } from '../../calc/propose/part.ts';
import type { Doing, ProposalWish } from '../../calc/propose/propose.ts';
import type { SiteFile } from '../../routing/site/site.ts';
import { addProposed } from '../document/edits/add-proposed.ts';
import type { DocumentStore } from '../document/store.ts';
import { failureWords } from '../words/failure-words.ts';
import { stretchOf, type WorkStretch } from '../words/time-left.ts';
import type { ProposalNews, ProposalRequest, ProposalSoFar } from './proposal-request.ts';

interface Proposals {
  /** What is being worked on; null while nothing is. */
  readonly doing: Doing | null;
  /** When the whole was begun, ms, and the stretch of a part that is being worked on. */
  readonly since: number;
  readonly stretch: WorkStretch | null;
  /** Parts that could be drawn in already, should the rest be stopped. */
  readonly ready: ProposalSoFar | null;
  /** What was drawn in last, or why nothing was. */
  readonly parts: readonly ProposalPart[];
  /** Price and days of charging with what was drawn in. */
  readonly outlook: Outlook | null;
  readonly fault: string;
}

const IDLE: Proposals = { doing: null, since: 0, stretch: null, ready: null, parts: [], outlook: null, fault: '' };

export const proposalStore = createStore<Proposals>(() => IDLE);

export const useProposals = <T>(choose: (state: Proposals) => T): T => useStore(proposalStore, choose);

let worker: Worker | null = null;

function end(): void {
  worker?.terminate();
  worker = null;
}

/** Asks for a proposal for the open site and draws it in when it is there, if the site is still as it was. */
export function askProposal(document: DocumentStore, wish: ProposalWish, seconds: number): void {
  end();
  const { file } = document.getState().committed();
  const first = wish.what === 'all' ? 'drops' : wish.what;
  proposalStore.setState({ ...IDLE, doing: { what: first, done: 0, of: 1 }, since: performance.now() });
  worker = new Worker(new URL('./proposal-worker.ts', import.meta.url), { type: 'module' });
  worker.onmessage = ({ data }: MessageEvent<ProposalNews>) => {
    if (data.kind === 'doing') tell(data.doing);
    else if (data.kind === 'ready') proposalStore.setState({ ready: data.soFar });
    else {
      end();
      drawIn(document, file, data.soFar);
    }
  };
  worker.onerror = ({ message }) => {
    end();
    // Without words it is the worker's own file that did not come.
    const why = failureWords(new Error(message || 'module script failed'));
    proposalStore.setState({ ...IDLE, fault: `The proposal could not be worked out: ${why}` });
  };
  const request: ProposalRequest = { file, wish, seconds };
  worker.postMessage(request);
}

function tell(doing: Doing): void {
  const { stretch } = proposalStore.getState();
  proposalStore.setState({ doing, stretch: stretchOf(stretch, doing, performance.now()) });
}

/** Stops working; what is ready is drawn in where `keep` asks for it. */
export function stopProposal(document: DocumentStore, keep: boolean): void {
  end();
  const { ready } = proposalStore.getState();
  if (keep && ready) drawIn(document, document.getState().committed().file, ready);
  else proposalStore.setState(IDLE);
}

/** Takes what is said of the last proposal off the page. */
export const dismissProposal = (): void => proposalStore.setState(IDLE);

function drawIn(document: DocumentStore, file: SiteFile, { added, parts, outlook }: ProposalSoFar): void {
  if (document.getState().committed().file !== file) {
    const fault = 'The drawing was changed meanwhile, so nothing was drawn in. Ask again.';
    proposalStore.setState({ ...IDLE, fault });
    return;
  }
  proposalStore.setState({ ...IDLE, parts, outlook });
  if (Object.keys(added).length > 0) void document.getState().applyLarge(addProposed(file, added));
}
