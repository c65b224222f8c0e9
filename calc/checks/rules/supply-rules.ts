import { counted } from '../../../routing/words/counted.ts';
import { equipmentDevices } from '../../supply/devices/devices.ts';
import { cited } from '../../tables/sections.ts';
import { VOLTAGE_RANGE } from '../../tables/voltage-range.ts';
import type { Looked, Rule } from '../looked.ts';
import {
  fed,
  generating,
  groundable,
  interrupting,
  limited,
  managed,
  measuredDemand,
  NAMEPLATE,
  overIn,
  parallel,
  protectable,
  rated,
  spaced,
  taps,
  transformers,
  unheld,
  withBus,
  withMain,
} from './supply-looked.ts';

const equipment = ({ site }: Looked): number => site.equipment.length;
const feeders = ({ tree }: Looked): number => fed(tree.nodes);
const held = ({ tree }: Looked): number => fed(tree.nodes) - unheld(tree.nodes);
const devices = ({ site }: Looked): number => equipmentDevices(site).length;

/** What feeds the branches. */
export const SUPPLY_RULES = {
  'supply-tree': {
    title: 'Feeders that make no tree',
    source: 'feeders that are drawn',
    lookedAt: ({ site }) => site.feeders.length,
  },
  'supply-source': {
    title: 'Equipment that no source feeds',
    source: 'feeders that are drawn',
    lookedAt: equipment,
    withholds: 'no source feeds all of the equipment',
  },
  'supply-data': {
    title: 'Ratings that are not entered',
    source: NAMEPLATE,
    lookedAt: equipment,
  },
  'supply-unsettled': {
    title: 'Supply whose voltages do not settle',
    source: 'power flow with every charger on',
    lookedAt: equipment,
  },
  'voltage-mismatch': {
    title: 'Voltages that do not match',
    source: NAMEPLATE,
    lookedAt: ({ site }) => site.chargers.length + site.loads.length + site.feeders.length,
  },
  'feeder-size': {
    title: 'Feeder sizes that the tables do not hold',
    source: ({ impedances }) => impedances.source,
    lookedAt: feeders,
  },
  'parallel-size': {
    title: 'Parallel conductors too small',
    source: (tables) => cited(tables, 'parallel'),
    lookedAt: ({ tree }) => parallel(tree.nodes),
  },
  'feeder-conductor': {
    title: 'Feeder conductors too small',
    source: (tables) => `${cited(tables, 'feederConductor', 'nextRatings')}, ${tables.ampacity.source}`,
    lookedAt: held,
    missed: ({ tree }) => {
      const count = unheld(tree.nodes);
      return count === 0 ? null : `the conductors of ${counted(count, 'feeder')} of a size not held`;
    },
  },
  'duct-bank': {
    title: 'Feeders side by side in the ground',
    source: (tables) => cited(tables, 'ductBank'),
    lookedAt: feeders,
  },
  'breaker-rating': {
    title: 'Breakers of no standard rating',
    source: ({ standardRatings }) => standardRatings.source,
    lookedAt: feeders,
  },
  'feeder-overload': {
    title: 'Feeders overloaded',
    source: (tables) => cited(tables, 'feederDevice', 'loadManagement'),
    lookedAt: feeders,
  },
  'main-overload': {
    title: 'Mains overloaded',
    source: (tables) => cited(tables, 'feederDevice', 'loadManagement'),
    lookedAt: ({ site }) => withMain(site.equipment),
  },
  'bus-overload': {
    title: 'Busbars overloaded',
    source: (tables) => cited(tables, 'panelRating', 'panelDevice'),
    lookedAt: ({ site }) => withBus(site.equipment),
  },
  'unit-load': {
    title: 'Loads by the code’s count per charger',
    source: (tables) => cited(tables, 'chargerLoad'),
    lookedAt: ({ tree }) => limited(tree),
  },
  'service-load': {
    title: 'Services over their rating with what stands already',
    source: ({ existingDemand }) => existingDemand.source,
    lookedAt: ({ site }) => measuredDemand(site.equipment),
  },
  'managed-floor': {
    title: 'Shared amperes under what a car can take',
    source: 'least current of a pilot, IEC 61851-1',
    lookedAt: ({ site }) => managed(site.equipment),
  },
  'back-feed': {
    title: 'Busbars fed from both ends',
    source: (tables) => cited(tables, 'busSources'),
    lookedAt: ({ site }) => (generating(site.loads) === 0 ? 0 : withBus(site.equipment)),
  },
  'voltage-rise': {
    title: 'Voltage rise from generation',
    source: VOLTAGE_RANGE.source,
    lookedAt: ({ site }) => (generating(site.loads) === 0 ? 0 : site.equipment.length),
  },
  'spaces-short': {
    title: 'Panels short of spaces',
    source: NAMEPLATE,
    lookedAt: ({ site }) => spaced(site.equipment),
  },
  'spaces-order': {
    title: 'Circuits not in line order',
    source: 'common practice',
    lookedAt: ({ site }) => spaced(site.equipment),
  },
  'charging-day': {
    title: 'Days of charging in which limits are passed or cars leave short',
    source: 'days as entered; rules of load management: common practice',
    lookedAt: ({ site }) => site.days.length,
  },
  issued: {
    title: 'Issued circuits and conduits that could not be kept',
    source: 'circuits and conduits issued, as entered',
    lookedAt: ({ site }) => site.issued.circuits.size + site.issued.conduits.size,
  },
  'transformer-overload': {
    title: 'Transformers overloaded',
    source: 'nameplate rating: common practice',
    lookedAt: ({ tree }) => rated(tree.nodes),
    missed: ({ tree }) => {
      const count = transformers(tree.nodes) - rated(tree.nodes);
      return count === 0 ? null : `${counted(count, 'transformer')} without a rating`;
    },
  },
  'transformer-protection': {
    title: 'Transformer protection too large',
    source: ({ transformerProtection }) => transformerProtection.source,
    lookedAt: ({ tree }) => protectable(tree.nodes),
  },
  secondary: {
    title: 'Transformer secondaries without a device',
    source: (tables) => cited(tables, 'secondaries', 'panelSecondary'),
    lookedAt: ({ tree }) => transformers(tree.nodes),
  },
  tap: {
    title: 'Feeder taps',
    source: (tables) => cited(tables, 'taps'),
    lookedAt: ({ tree }) => taps(tree),
  },
  'device-missing': {
    title: 'Devices that nobody drew',
    source: (tables) => cited(tables, 'panelDevice'),
    lookedAt: equipment,
  },
  disconnect: {
    title: 'Disconnects of charging equipment',
    source: (tables) => cited(tables, 'chargerDisconnect', 'lockable'),
    lookedAt: ({ site }) => site.chargers.length,
  },
  'ground-fault': {
    title: 'Ground-fault protection of equipment',
    source: ({ groundFault }) => groundFault.source,
    lookedAt: (at) => devices(at),
  },
  'arc-energy': {
    title: 'Arc energy of large devices',
    source: ({ arcEnergy }) => arcEnergy.source,
    lookedAt: (at) => devices(at),
  },
  'over-limit': {
    title: 'Voltages over what the tables are for',
    source: ({ lowVoltage }) => lowVoltage.source,
    lookedAt: equipment,
    missed: ({ tree, tables }) => {
      const count = overIn(tree, tables);
      return count === 0
        ? null
        : `what works over ${tables.lowVoltage.upToVolts} V (${counted(count, 'piece')} of equipment)`;
    },
  },
  harmonics: {
    title: 'Transformers that feed electronic loads',
    source: 'common practice',
    lookedAt: ({ tree }) => rated(tree.nodes),
  },
  'fault-current': {
    title: 'Fault current to be held against ratings',
    source: (tables) => cited(tables, 'interruptingRating'),
    lookedAt: ({ site }) => site.equipment.length,
  },
  'interrupting-rating': {
    title: 'Interrupting ratings below the fault current',
    source: (tables) => cited(tables, 'interruptingRating'),
    lookedAt: ({ site }) => interrupting(site.equipment),
  },
  bonding: {
    title: 'Bonding and electrodes that are not given',
    source: (tables) => `${tables.bondingJumpers.source}, ${tables.electrodeConductors.source}`,
    lookedAt: ({ tree }) => groundable(tree.nodes),
  },
  'fault-trip': {
    title: 'Faults at the end of a branch that its breaker clears slowly',
    source: (tables) => `${cited(tables, 'faultPath')}; instantaneous trip: common practice`,
    lookedAt: ({ site }) => site.chargers.length,
  },
} as const satisfies Readonly<Record<string, Rule>>;
