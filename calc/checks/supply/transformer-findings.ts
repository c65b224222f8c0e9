import type { Finding } from '../../../routing/site/rules/finding.ts';
import { feederDeviceAmps } from '../../supply/devices/protecting.ts';
import { magnitudeAt } from '../../supply/load-flow/phasor.ts';
import { usualXr } from '../../supply/load-flow/supply-model.ts';
import { greatestLine } from '../../supply/panels/demand.ts';
import { ampsText, type SupplyFacts } from '../../supply/supply-facts.ts';
import { eitherIsOver } from '../../supply/tree/over-limit.ts';
import type { SupplyNode } from '../../supply/tree/supply-tree.ts';
import type { System } from '../../supply/tree/system.ts';
import { transformerDeviceLimit, transformerProtection } from '../../tables/equipment-of.ts';

/** Transformers: loading, protection, and nameplate figures that are not there. */
export const transformerFindings = (facts: SupplyFacts): readonly Finding[] =>
  facts.tree.nodes.flatMap((node, place) =>
    node.primary === null
      ? []
      : [...nameplate(node, facts), ...overload(node, place, facts), ...protection(node, node.primary, facts)],
  );

/** Full-load amperes of a side, from its kVA. */
const fullLoad = (kva: number, { volts, phases }: System): number =>
  (kva * 1000) / (phases === 3 ? Math.sqrt(3) * volts : volts);

function nameplate({ equipment }: SupplyNode, { tables }: SupplyFacts): Finding[] {
  const { id, kva, impedancePercent, xr } = equipment;
  const say = (severity: 'warn' | 'note', says: string, source: string): Finding[] => [
    { severity, rule: 'supply-data', about: [id], says, source },
  ];
  if (kva === undefined)
    return say(
      'warn',
      `${id} has no kVA rating: its loading, protection and drop are not worked. Enter its rating.`,
      'ratings as entered',
    );
  if (impedancePercent === undefined)
    return say(
      'warn',
      `${id} has no impedance: it is taken without drop, and no fault current is given. Enter the nameplate figure.`,
      'ratings as entered',
    );
  if (xr !== undefined) return [];
  const taken = usualXr(tables, kva);
  const says = `${id} has no X/R: ${taken} is taken, the middle of what its size usually has. Enter the maker's figure.`;
  return say('note', says, tables.threePhaseImpedances.source);
}

function overload(node: SupplyNode, place: number, { model, state }: SupplyFacts): Finding[] {
  const { id, kva } = node.equipment;
  if (kva === undefined) return [];
  const bus = model.loadBus[place]!;
  const solved = state.withoutGeneration ?? state.full;
  const percent = (100 * greatestLine(solved.out, bus)) / fullLoad(kva, node.system);
  if (percent <= 100 * (1 + 1e-9)) return [];
  const line = [0, 1, 2].reduce((most, one) =>
    magnitudeAt(solved.out, 3 * bus + one) > magnitudeAt(solved.out, 3 * bus + most) ? one : most,
  );
  return [
    {
      severity: 'fail',
      rule: 'transformer-overload',
      about: [id],
      says: `Line ${'ABC'[line]} of ${id} carries ${percent.toFixed(0)}% of its rated current with everything on and no generation (${kva} kVA). A larger transformer, or load management below it.`,
      value: percent,
      limit: 100,
      unit: '%',
      source: 'nameplate rating; common practice, no source',
    },
  ];
}

/**
 * Rating of what protects the secondary, A: the sum of the devices that its feeders start or end with. Null where there is
 * none, where something hangs on it with no board between, or where they are more than may be grouped.
 */
function secondaryDevices(id: string, { tree, devices, tables }: SupplyFacts): number | null {
  const leaving = tree.nodes.filter(({ feeder }) => feeder?.from === id);
  const isBare = devices.some(({ use, at, known }) => use === 'secondary' && at === id && known === 'missing');
  if (leaving.length === 0 || isBare || leaving.length > tables.transformerProtection.mostSecondaries) return null;
  return leaving.reduce((sum, { feeder }) => sum + (feederDeviceAmps(devices, feeder!.id) ?? feeder!.breakerAmps), 0);
}

/** A transformer of which nobody drew the device ahead. */
const noPrimary = ({ equipment: { id } }: SupplyNode, { tables }: SupplyFacts): Finding[] => [
  {
    severity: 'warn',
    rule: 'transformer-protection',
    about: [id],
    says: `Nothing is drawn ahead of ${id}: its primary device is not known and is held against nothing. Draw the feeder that comes in, with its breaker.`,
    source: tables.transformerProtection.source,
  },
];

function protection(node: SupplyNode, primary: System, facts: SupplyFacts): Finding[] {
  const { id, kva } = node.equipment;
  const { feeder } = node;
  if (eitherIsOver(facts.tables, node)) return [];
  if (feeder === null) return noPrimary(node, facts);
  if (kva === undefined) return [];
  const { tables } = facts;
  const amps = { primary: fullLoad(kva, primary), secondary: fullLoad(kva, node.system) };
  const limit = (percent: number, of: number): number => transformerDeviceLimit(tables, percent, of);
  const alone = transformerProtection(tables, 'primary only', amps);
  const both = transformerProtection(tables, 'primary and secondary', amps);
  const aloneLimit = limit(alone.primary, amps.primary);
  if (feeder.breakerAmps <= aloneLimit) return [];
  const devices = secondaryDevices(id, facts);
  const secondaryLimit = both.secondary === null ? Infinity : limit(both.secondary, amps.secondary);
  const bothLimit = limit(both.primary, amps.primary);
  if (feeder.breakerAmps <= bothLimit && devices !== null && devices <= secondaryLimit) return [];
  const secondary =
    devices === null
      ? `nothing known protects its secondary, or more than ${tables.transformerProtection.mostSecondaries} devices do`
      : `its secondary devices come to ${devices} A and may have ${ampsText(secondaryLimit)}`;
  return [
    {
      severity: 'fail',
      rule: 'transformer-protection',
      about: [id, feeder.id],
      says: `The ${feeder.breakerAmps} A breaker of ${feeder.id} ahead of ${id} (${kva} kVA, ${ampsText(amps.primary)} primary) is over ${ampsText(aloneLimit)}, the most without secondary protection; ${secondary}, with which the primary may have ${ampsText(bothLimit)}. A smaller breaker, or secondary protection within its limit.`,
      value: feeder.breakerAmps,
      limit: aloneLimit,
      unit: 'A',
      source: tables.transformerProtection.source,
    },
  ];
}
