import { counting } from '../../routing/kept/counting.ts';
import type { Drop, Equipment, Feeder, Raceway } from '../../routing/site/site.ts';
import type { Looked } from './looked.ts';
import { RULE_LIST } from './rules.ts';

const overhead = counting<Raceway>(({ place }) => place === 'overhead');
const underground = counting<Raceway>(({ place }) => place === 'underground');
const hung = counting<Drop>(({ mount = 'overhead' }) => mount === 'overhead');
const existing = counting<Feeder>((feeder) => feeder.existing === true);
const unrated = counting<Equipment>(
  ({ kind, interruptingAmps }) => kind !== 'source' && kind !== 'transformer' && interruptingAmps === undefined,
);
const unknownSources = counting<Equipment>(({ kind, faultAmps }) => kind === 'source' && faultAmps === undefined);
const unmeasured = counting<Equipment>(({ kind, existingAmps }) => kind === 'source' && existingAmps === undefined);

/** A part of the job that the planner looks at on no site, and where it belongs to one. */
interface Left {
  readonly says: string;
  readonly belongs: (at: Looked) => boolean;
}

const equipped = ({ site }: Looked): boolean => site.equipment.length > 0;

const LEFT: readonly Left[] = [
  {
    says: 'the capacity of the structure for what hangs from it',
    belongs: ({ site }) => site.members.length + overhead(site.raceways) + hung(site.drops) > 0,
  },
  {
    says: 'fault current from the supply: no figure is given for the source',
    belongs: ({ site }) => unknownSources(site.equipment) > 0,
  },
  {
    says: 'interrupting ratings that are not entered',
    belongs: ({ site }) => unrated(site.equipment) > 0,
  },
  {
    says: 'what the utility’s own voltage is, and flicker',
    belongs: ({ site }) => site.chargers.length > 0,
  },
  { says: 'selective coordination and arc flash', belongs: equipped },
  { says: 'the grounding electrodes themselves, and bonding of metal piping and steel', belongs: equipped },
  { says: 'settings of trips and of ground-fault protection', belongs: equipped },
  {
    says: 'what else the existing feeders and the service carry',
    belongs: ({ site }) => existing(site.feeders) + unmeasured(site.equipment) > 0,
  },
  { says: 'what lies in the ground already', belongs: ({ site }) => underground(site.raceways) > 0 },
  {
    says: 'how many accessible stalls are required: the site chooses no standard',
    belongs: ({ site }) => site.stalls.length > 0 && site.rules.accessibleBy === 'none',
  },
  {
    says: 'the accessible routes, and slopes of accessible stalls',
    belongs: ({ site }) => site.stalls.length > 0,
  },
  { says: 'grades and drainage', belongs: ({ site }) => site.stalls.length + site.aisles.length > 0 },
  { says: 'listings and instructions of the equipment', belongs: ({ site }) => site.chargers.length > 0 },
  { says: 'local amendments to the code', belongs: equipped },
];

/** What the checks apply to and could not look at, in words. */
export const missedOf = (at: Looked): readonly string[] =>
  RULE_LIST.flatMap(({ missed }) => (missed === undefined ? [] : (missed(at) ?? [])));

/** What of this job nobody looked at: first what a check could not look at, then what no check is for. */
export const notCheckedOf = (at: Looked): readonly string[] => [
  ...missedOf(at),
  ...LEFT.flatMap(({ says, belongs }) => (belongs(at) ? [says] : [])),
];
