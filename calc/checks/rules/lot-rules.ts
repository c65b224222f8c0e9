import { accessibleUse } from '../../../routing/checks/access/accessible-stalls.ts';
import { isBollard } from '../../../routing/checks/access/guard-findings.ts';
import { reachedDrops } from '../../../routing/checks/access/reach-range.ts';
import { counting } from '../../../routing/kept/counting.ts';
import { hasWorkingSpace } from '../../../routing/site/place/working-space.ts';
import type { Charger, Column, Drop, Equipment, Raceway, Stall } from '../../../routing/site/site.ts';
import { counted } from '../../../routing/words/counted.ts';
import { cited } from '../../tables/sections.ts';
import type { Looked, Rule } from '../looked.ts';

const PRACTICE = 'common practice';

const drops = ({ site }: Looked): number => site.drops.length;
const anything = ({ site: { stalls, drops, chargers } }: Looked): number =>
  stalls.length + drops.length + chargers.length > 0 ? 1 : 0;

const resting = counting<Drop>(({ restHeight }) => restHeight !== undefined);
const hung = counting<Drop>(({ mount = 'overhead' }) => mount === 'overhead');
const grounded = counting<Drop>(({ mount = 'overhead' }) => mount !== 'overhead');
const overhead = counting<Raceway>(({ place }) => place === 'overhead');
const idle = counting<Charger>(({ stalls }) => stalls.length === 0);
const accessible = counting<Stall>((stall) => accessibleUse(stall) !== null);
const pedestals = counting<Drop>(({ mount }) => mount === 'pedestal');
const bollards = counting<Column>(isBollard);
const worked = counting<Equipment>(hasWorkingSpace);

/** Stalls, drops, cords, and what is in their way. */
export const LOT_RULES = {
  'nothing-served': {
    title: 'Lots in which no stall is served',
    source: 'stalls and chargers that are drawn',
    lookedAt: anything,
    withholds: 'no stall is served',
  },
  unserved: {
    title: 'Stalls and chargers that are not meant for one another',
    source: 'stalls and chargers that are drawn',
    lookedAt: ({ site }) => site.stalls.length + site.chargers.length,
  },
  'drop-idle': {
    title: 'Drops without a charger',
    source: 'drops and chargers that are drawn',
    lookedAt: drops,
    withholds: 'drops hang without a charger',
  },
  'cords-per-drop': {
    title: 'More cords at a drop than it holds',
    source: 'cords that the drop is made for',
    lookedAt: drops,
  },
  'boxes-coincide': { title: 'Boxes in one place', source: PRACTICE, lookedAt: drops },
  'stalls-overlap': {
    title: 'Stalls that lie on one another',
    source: PRACTICE,
    lookedAt: ({ site }) => site.stalls.length,
  },
  overlap: {
    title: 'Things that stand in one place',
    source: PRACTICE,
    lookedAt: ({ site }) => site.columns.length + site.equipment.length,
  },
  'raceways-overlap': {
    title: 'Raceways laid twice',
    source: PRACTICE,
    lookedAt: ({ site }) => site.raceways.length,
  },
  reach: {
    title: 'Cords short of an inlet',
    source: `coverage and cord kept back, as this site sets them: ${PRACTICE}`,
    lookedAt: ({ reach }) => reach.length,
    missed: ({ site }) => {
      const count = idle(site.chargers);
      return count === 0 ? null : `the reach of ${counted(count, 'charger')} meant for no stall`;
    },
  },
  'cord-limit': {
    title: 'Cords longer than allowed',
    source: (tables) => cited(tables, 'cordLength'),
    lookedAt: drops,
  },
  'cord-ampacity': {
    title: 'Cords that the tables do not carry',
    source: ({ cords }) => cords.source,
    lookedAt: ({ site }) => site.chargers.length,
  },
  'rest-height': {
    title: 'Connectors that rest too high or too low',
    source: (tables) => `${cited(tables, 'couplingHeight')}; 2010 ADA Standards 308`,
    lookedAt: ({ site }) => resting(site.drops),
  },
  'pedestal-height': {
    title: 'Pedestals and wall boxes out of reach',
    source: '2010 ADA Standards 308',
    lookedAt: ({ site }) => grounded(site.drops),
  },
  'pedestal-feed': {
    title: 'Pedestals fed through the air',
    source: PRACTICE,
    lookedAt: ({ site }) => grounded(site.drops),
  },
  'low-cord': {
    title: 'Slack cords that hang low over an aisle or walk',
    source: '2010 ADA Standards 307.4',
    lookedAt: ({ site, reach }) => (site.aisles.length === 0 ? 0 : reach.length),
  },
  'over-vehicle': {
    title: 'Drops that hang over a vehicle',
    source: PRACTICE,
    lookedAt: ({ site }) => (site.stalls.length === 0 ? 0 : site.drops.length),
  },
  'clear-height': {
    title: 'Hung too low over what passes below',
    source: 'International Fire Code 503.2.1; municipal parking codes; 2010 ADA Standards 502.5',
    lookedAt: ({ site }) =>
      site.stalls.length + site.aisles.length === 0 ? 0 : hung(site.drops) + overhead(site.raceways),
  },
  'accessible-count': {
    title: 'Fewer accessible charging stalls than asked for',
    source:
      'California Building Code Table 11B-228.3.2.1; US Access Board, 89 FR 71215 (proposed); as this site chooses',
    lookedAt: ({ site }) => (site.rules.accessibleBy === 'none' || site.stalls.length === 0 ? 0 : site.chargers.length),
  },
  'accessible-size': {
    title: 'Accessible charging stalls and their aisles too small',
    source: '2010 ADA Standards 502.2, 502.3; California Building Code 11B-812; US Access Board, as this site chooses',
    lookedAt: ({ site }) => accessible(site.stalls),
  },
  'reach-range': {
    title: 'Connectors and pedestals out of reach at accessible stalls',
    source: '2010 ADA Standards 308.3',
    lookedAt: ({ site }) => reachedDrops(site),
  },
  'clear-floor': {
    title: 'No clear floor space at connectors of accessible stalls',
    source: '2010 ADA Standards 305.3, 308.3',
    lookedAt: ({ site }) => reachedDrops(site),
  },
  'pedestal-guard': {
    title: 'Pedestals without bollards, and bollards in the way',
    source: `${PRACTICE}; 2010 ADA Standards 502.3`,
    lookedAt: ({ site }) => pedestals(site.drops) + bollards(site.columns),
  },
  unsupported: {
    title: 'Nothing to hang from',
    source: ({ supports }) => supports.source,
    lookedAt: ({ site }) => hung(site.drops) + overhead(site.raceways),
    withholds: 'something overhead has nothing to hang from',
  },
  'keepout-crossed': {
    title: 'Keep-outs crossed',
    source: 'keep-outs that are drawn',
    lookedAt: ({ site }) => site.keepouts.length,
  },
  setback: {
    title: 'Equipment within the setback of a boundary',
    source: 'setbacks that the site states',
    lookedAt: ({ site }) => site.boundaries.filter(({ setback }) => setback !== undefined).length,
  },
  'working-space': {
    title: 'Working spaces that are not clear',
    source: (tables) => `${tables.workingSpace.source}, ${cited(tables, 'workingSpace', 'entrancesThere')}`,
    lookedAt: ({ site }) => worked(site.equipment),
  },
} as const satisfies Readonly<Record<string, Rule>>;
