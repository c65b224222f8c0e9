import { printLength } from '../../../../routing/site/numbers/feet-inches.ts';
import type { Finding } from '../../../../routing/site/rules/finding.ts';
import type { Feeder } from '../../../../routing/site/site.ts';
import { type Ask, unprotected } from '../../../circuits/unprotected.ts';
import type { Device } from '../../../plan-file/supply.ts';
import { chargerDevices, loadDevices } from '../../../supply/devices/branch-devices.ts';
import { isGrouped } from '../../../supply/devices/supply-devices.ts';
import { type UnprotectedFeeder, unprotectedFeeder } from '../../../supply/devices/unprotected-feeder.ts';
import { ampsText, type SupplyFacts } from '../../../supply/supply-facts.ts';
import type { SupplyNode } from '../../../supply/tree/supply-tree.ts';
import { standardRatingAtMost } from '../../../tables/protection-of.ts';
import { cited } from '../../../tables/sections.ts';

/** Conductors that start without an overcurrent device: taps of feeders, and secondaries of transformers. */
export const unprotectedFindings = (facts: SupplyFacts): readonly Finding[] =>
  facts.tree.nodes.flatMap((node, place) => {
    const { tables, rules, tree, lies } = facts;
    const devices = isGrouped(node) ? withBranches(facts) : facts.devices;
    if (node.feeder?.device === 'none' && node.primary === null) return [nothingThere(node.feeder, facts)];
    const bare = unprotectedFeeder(tables, rules, tree, devices, lies, place);
    return bare === null || bare.byPrimary ? [] : [...notKnown(node, bare, facts), ...broken(node, bare, facts)];
  });

/** Devices of equipment, feeders and branches. */
const withBranches = ({ devices, chargers, loads, tree, lines, tables }: SupplyFacts): readonly Device[] => [
  ...devices,
  ...chargerDevices(chargers, tree, lines, tables),
  ...loadDevices(loads, tree, lines, tables),
];

/** A feeder that has no device at either end and supplies no transformer. */
const nothingThere = ({ id, from, to }: Feeder, { tables }: SupplyFacts): Finding => ({
  severity: 'fail',
  rule: 'tap',
  about: [id, from, to],
  says: `Feeder ${id} has no overcurrent device at either end: only a tap that supplies a transformer may go without. A device at ${from} or at ${to}.`,
  source: cited(tables, 'taps'),
});

const ruleOf = ({ of }: UnprotectedFeeder): Finding['rule'] => (isTap(of) ? 'tap' : 'secondary');
const isTap = (of: UnprotectedFeeder['of']): boolean => of === 'tap' || of === 'transformer tap';

/** What the rules ask for and the file does not say. */
function notKnown(node: SupplyNode, bare: UnprotectedFeeder, { tables }: SupplyFacts): Finding[] {
  const { id, from } = node.feeder!;
  const lacks = [
    ...(bare.length === null ? ['its length'] : []),
    ...(bare.aheadAmps === null
      ? [isTap(bare.of) ? `the device ahead of ${from}` : `the primary device of ${from}`]
      : []),
    ...(bare.condition === 'high-bay' && bare.level === null ? ['how far it runs on the level'] : []),
    ...(bare.condition === 'industrial' && bare.ratedAmps === null ? [`the kVA of ${from}`] : []),
    ...(bare.deviceAmps === null && bare.of !== 'transformer tap' ? ['the devices that it ends in'] : []),
    ...(bare.primaryLength === null ? [`the length of the tap into ${from}`] : []),
  ];
  if (lacks.length === 0 || bare.outdoors) return [];
  return [
    {
      severity: 'warn',
      rule: ruleOf(bare),
      about: [id, from],
      says: `${start(node, bare)}, and ${lacks.join(' and ')} ${lacks.length === 1 ? 'is' : 'are'} not known: what depends on ${lacks.length === 1 ? 'it' : 'them'} is not held against the rules for such conductors. Enter ${lacks.length === 1 ? 'it' : 'them'}.`,
      source: tables.unprotected.source,
    },
  ];
}

function broken(node: SupplyNode, bare: UnprotectedFeeder, facts: SupplyFacts): Finding[] {
  const { tables } = facts;
  const { id, from, to } = node.feeder!;
  return unprotected(tables, bare).asks.flatMap((ask): Finding[] =>
    ask.holds
      ? []
      : [
          {
            severity: 'fail',
            rule: ruleOf(bare),
            about: [id, from, to],
            says: `${start(node, bare)}. ${SAYS[ask.what](node, bare, ask, facts)}`,
            ...(ask.what === 'size' ? {} : { value: ask.value, limit: ask.limit }),
            ...(ask.what === 'size' ? {} : { unit: ask.what === 'length' || ask.what === 'level' ? 'ft' : 'A' }),
            source: `${tables.edition} ${ask.section}`,
          },
        ],
  );
}

function start({ feeder }: SupplyNode, { of }: UnprotectedFeeder): string {
  const { id, from, to } = feeder!;
  switch (of) {
    case 'tap':
      return `Feeder ${id} is a tap of what feeds ${from}: its device stands at ${to}`;
    case 'transformer tap':
      return `Feeder ${id} is a tap of what feeds ${from} and supplies transformer ${to} without a device`;
    case 'tapped secondary':
      return `The secondary conductors of ${from}, which a tap supplies, have their device at ${to} (feeder ${id})`;
    case 'secondary':
      return `The secondary conductors of ${from}, feeder ${id}, have their device at ${to}`;
  }
}

type Says = (node: SupplyNode, bare: UnprotectedFeeder, ask: Ask, facts: SupplyFacts) => string;

const SAYS: Readonly<Record<Ask['what'], Says>> = {
  length: ({ feeder }, { of }, { value, limit }, { units }) =>
    `They are ${printLength(value, units)} long${of === 'tapped secondary' ? ', with the tap ahead of the transformer,' : ''} and may be ${printLength(limit, units)}. A device at ${feeder!.from}, a shorter way, or one outdoors all the way but for its end.`,
  ahead: ({ feeder }, { of, aheadAmps, ampacity }, { value }, _) =>
    isTap(of)
      ? `They carry ${ampsText(ampacity)} and the ${ampsText(aheadAmps!)} device ahead asks for ${ampsText(value)}. Larger conductors, a shorter way, or a device at ${feeder!.from}.`
      : `They carry ${ampsText(ampacity)}; the ${ampsText(aheadAmps!)} primary device, by the ratio of the voltages, asks for ${ampsText(value)}. Larger conductors, a shorter way, or a device at ${feeder!.from}.`,
  level: (_, __, { value, limit }, { units }) =>
    `They run ${printLength(value, units)} on the level and may run ${printLength(limit, units)}. A device nearer to the tap, or one where they start.`,
  size: (_, { conductor }) =>
    `They are ${conductor!.size} ${conductor!.metal}, smaller than a tap in a high bay may be. Larger conductors.`,
  rated: (_, { ampacity }, { value }) =>
    `They carry ${ampsText(ampacity)} and the transformer gives ${ampsText(value)} at its rating. Larger conductors or one more set.`,
  device: (_, { ampacity }, { value }, { tables }) => {
    const most = standardRatingAtMost(tables, ampacity, 'breaker');
    const smaller = most === null ? '' : `A ${most} A device, or l`;
    return `It is ${ampsText(value)} and they carry ${ampsText(ampacity)}: the next standard rating up (${cited(tables, 'nextRating')}) is not for such conductors. ${smaller === '' ? 'L' : smaller}arger conductors or one more set.`;
  },
};
