import type { SiteFile } from '../../routing/site/site.ts';
import { toSite } from '../../routing/site/to-site.ts';
import { withPhases } from './buildout/with-phases.ts';
import { equipmentFromBest } from './by-source.ts';
import { withChargers } from './drops/chargers.ts';
import { dropsPart } from './drops/drops-part.ts';
import { panelsOf } from './feeding.ts';
import { proposeInPose } from './in-pose.ts';
import type { Doing, Proposal, ProposalWish } from './proposal.ts';
import { bestRaceways } from './raceways/best-raceways.ts';

export { type Doing, type Proposal, type ProposalWish, WHATS, type What } from './proposal.ts';

/**
 * What could be drawn on a site: drops with their chargers for the stalls that no charger serves, panelboards where none
 * can feed them, raceways for what has no run; or all three, in that order. Nothing that is drawn is moved or taken away.
 * Pure: the same file gives the same proposal, where nobody stops it.
 * @param tell hears what is being worked on
 * @param ready hears the proposal as far as it has come: drops and panels first, then each whole one that is better
 * @param mayGoOn asked as it goes; the best that is found by then is given, whole, once it says no
 */
export function propose(
  file: SiteFile,
  wish: ProposalWish,
  tell: (doing: Doing) => void = () => {},
  ready: (soFar: Proposal) => void = () => {},
  mayGoOn: () => boolean = () => true,
): Proposal {
  const { what, cordsADrop, prices, load, isBounded } = wish;
  const routing = (done: number, of: number): void => tell({ what: 'raceways', done, of });
  switch (what) {
    case 'drops': {
      tell({ what: 'drops', done: 0, of: 1 });
      const { file: hung, cords, part } = dropsPart(file, cordsADrop, wish.wanted);
      const next = withChargers(hung, cords, new Map());
      const fed = panelsOf(toSite(file)).length > 0 || cords.length === 0;
      const says = fed
        ? part.says
        : [...part.says, 'They have no chargers: there is no panel to feed them. Propose panels, then drops again.'];
      return { file: next, parts: [{ ...part, says }] };
    }
    case 'equipment': {
      tell({ what: 'equipment', done: 0, of: 1 });
      const { file: next, part } = equipmentFromBest(
        file,
        { prices, cords: null, ...(load && { load }) },
        wish.feederMetal,
      );
      return { file: next, parts: [part] };
    }
    case 'raceways': {
      const { file: next, part } = bestRaceways(file, prices, routing, mayGoOn, { isBounded, answers: wish.answers });
      return { file: next, parts: [part] };
    }
    case 'all':
      return withPhases(file, wish, proposeInPose(file, wish, tell, ready, mayGoOn), mayGoOn);
  }
}
