import { outlookOf } from '../../calc/propose/outlook.ts';
import { type Proposal, propose } from '../../calc/propose/propose.ts';
import { toSite } from '../../routing/site/to-site.ts';
import { addedIn, type ProposalNews, type ProposalRequest, type ProposalSoFar } from './proposal-request.ts';
import { untilAfter } from './until-after.ts';

/** Works a proposal out away from the page, which ends this worker when it is told to stop. */
const here = self as unknown as DedicatedWorkerGlobalScope;
here.onmessage = ({ data: { file, wish, seconds } }: MessageEvent<ProposalRequest>) => {
  const post = (news: ProposalNews): void => here.postMessage(news);
  const soFar = ({ file: next, parts, fails, dollars }: Proposal): ProposalSoFar => ({
    added: addedIn(next, file),
    parts,
    best: fails === undefined || dollars === undefined ? null : { fails, dollars },
    outlook: file.days === undefined ? null : outlookOf(toSite(file), toSite(next), wish.prices),
  });
  const proposal = propose(
    file,
    wish,
    (doing) => post({ kind: 'doing', doing }),
    (ready) => post({ kind: 'ready', soFar: soFar(ready) }),
    untilAfter(seconds),
  );
  post({ kind: 'done', soFar: soFar(proposal) });
};
