import { counting } from '../../../routing/kept/counting.ts';
import type { Feeder, Raceway } from '../../../routing/site/site.ts';
import { counted } from '../../../routing/words/counted.ts';
import type { FeederConduit } from '../../supply/feeders/feeder-conduit.ts';
import { cited } from '../../tables/sections.ts';
import { VOLTAGE_RANGE } from '../../tables/voltage-range.ts';
import { risersOfSite } from '../conduits/riser-findings.ts';
import { branchCounts } from '../counts.ts';
import type { Looked, Rule } from '../looked.ts';

const PRACTICE = 'common practice';

const openFeeders = counting<Feeder>(({ length }) => length === undefined);
const buried = counting<Raceway>(({ place, method }) => place === 'underground' && method !== 'tray');
const trays = counting<Raceway>(({ method }) => method === 'tray');
const sized = counting<FeederConduit>(({ feeder, tradeSize }) => feeder.existing !== true && tradeSize !== null);
const unsized = counting<FeederConduit>(
  ({ feeder, tradeSize, method }) => feeder.existing !== true && tradeSize === null && method !== 'tray',
);
const drawn = counting<FeederConduit>(
  ({ feeder, tradeSize, path }) => feeder.existing !== true && tradeSize !== null && path !== null,
);

const circuits = ({ branches }: Looked): number => branchCounts(branches).circuits;
/** Conduits that are pulled: of branches, and of new feeders whose way is drawn. */
const pulled = ({ branches, feeders }: Looked): number => branchCounts(branches).conduits + drawn(feeders);

/** Runs, circuits and their conduits. */
export const BRANCH_RULES = {
  'no-run': {
    title: 'Chargers without a run',
    source: `distance to a raceway: ${PRACTICE}`,
    lookedAt: ({ site }) => site.chargers.length,
  },
  'branch-limit': {
    title: 'Branches longer than their limit',
    source: `limit of this site or of the equipment: ${PRACTICE}`,
    lookedAt: ({ branches }) => branchCounts(branches).circuits + branchCounts(branches).unsized,
  },
  'no-feeder-route': {
    title: 'Feeders without a way',
    source: 'raceways that are drawn',
    lookedAt: ({ site }) => openFeeders(site.feeders),
  },
  'loose-pull-point': {
    title: 'Pull points on no raceway',
    source: 'raceways that are drawn',
    lookedAt: ({ site }) => site.pullpoints.length,
  },
  bends: {
    title: 'Too much bend between two openings',
    source: ({ bendLimit }) => bendLimit.source,
    lookedAt: pulled,
  },
  'pull-length': { title: 'Long pulls between two openings', source: PRACTICE, lookedAt: pulled },
  'pull-tension': { title: 'Hard pulls', source: `cable pulling practice`, lookedAt: pulled },
  'jam-ratio': {
    title: 'Three lines that may jam at a bend',
    source: ({ jam }) => jam.source,
    lookedAt: ({ branches, feeders }) => branchCounts(branches).threeLines + drawn(feeders),
  },
  'circuit-size': {
    title: 'Loads past the largest conductor',
    source: ({ ampacity }) => ampacity.source,
    lookedAt: ({ branches }) => branchCounts(branches).circuits + branchCounts(branches).unsized,
  },
  'branch-drop': {
    title: 'Branches over the voltage drop limit',
    source: ({ dropAdvice }) => dropAdvice.source,
    lookedAt: circuits,
  },
  'total-drop': {
    title: 'Total voltage drop over its limit',
    source: ({ dropAdvice }) => dropAdvice.source,
    lookedAt: circuits,
  },
  'voltage-window': {
    title: 'Volts at boxes under those of ordinary service',
    source: VOLTAGE_RANGE.source,
    lookedAt: circuits,
  },
  'pilot-budget': {
    title: 'Pilots past their capacitance budget',
    source: 'IEC 61851-1 Annex A',
    lookedAt: ({ branches }) => branchCounts(branches).pilots,
  },
  'wet-insulation': {
    title: 'Insulation that is not for wet places',
    source: (tables) => cited(tables, 'wetUnderground', 'wetAbove'),
    lookedAt: ({ site }) => site.chargers.length,
  },
  'conduit-fill': {
    title: 'Conduits too full',
    source: ({ fill }) => fill.source,
    lookedAt: ({ branches, feeders }) => branchCounts(branches).conduits + sized(feeders),
    missed: ({ feeders }) => {
      const count = unsized(feeders);
      return count === 0 ? null : `the fill of ${counted(count, 'feeder')} of a size not held`;
    },
  },
  'tray-fill': {
    title: 'Trays whose fill is not checked',
    source: ({ edition }) => `${edition} Article 392`,
    lookedAt: ({ site }) => trays(site.raceways),
    missed: ({ site }) => {
      const count = trays(site.raceways);
      return count === 0 ? null : `the fill of ${counted(count, 'tray')}`;
    },
  },
  cover: {
    title: 'Raceways buried too shallow',
    source: ({ cover }) => cover.source,
    lookedAt: ({ site }) => buried(site.raceways),
  },
  riser: {
    title: 'Raceways that come out of the ground beside cars',
    source: ({ damage }) => damage.source,
    lookedAt: ({ site }) => risersOfSite(site.raceways).length,
  },
  'buried-box': {
    title: 'Boxes in the ground',
    source: (tables) => cited(tables, 'boxAccess', 'handholes'),
    lookedAt: ({ branches }) => branchCounts(branches).buried,
  },
  'box-location': {
    title: 'Boxes in the open that are not taken as wet',
    source: (tables) => cited(tables, 'wetBoxes'),
    lookedAt: ({ branches }) => branchCounts(branches).standing,
  },
  expansion: {
    title: 'Straights that grow and shrink',
    source: ({ expansion }) => expansion.source,
    lookedAt: ({ branches }) => branchCounts(branches).stiff,
  },
  'vertical-support': {
    title: 'Risers whose conductors need supports',
    source: ({ verticalSupports }) => verticalSupports.source,
    lookedAt: pulled,
  },
} as const satisfies Readonly<Record<string, Rule>>;
