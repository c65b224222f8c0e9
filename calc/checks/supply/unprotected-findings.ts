import { printLength } from '../../../routing/site/numbers/feet-inches.ts';
import type { Finding } from '../../../routing/site/rules/finding.ts';
import { type Ask, unprotected } from '../../circuits/unprotected.ts';
import { type UnprotectedFeeder, unprotectedFeeder } from '../../supply/devices/unprotected-feeder.ts';
import { ampsText, type SupplyFacts } from '../../supply/supply-facts.ts';
import type { SupplyNode } from '../../supply/tree/supply-tree.ts';
import { standardRatingAtMost } from '../../tables/lookup.ts';
import { cited } from '../../tables/sections.ts';

/** Conductors that start without an overcurrent device: taps of feeders, and secondaries of transformers. */
export const unprotectedFindings = (facts: SupplyFacts): readonly Finding[] =>
  facts.tree.nodes.flatMap((node, place) => {
    const { tables, rules, tree, devices, lies } = facts;
    const bare = unprotectedFeeder(tables, rules, tree, devices, lies, place);
    return bare === null || bare.byPrimary ? [] : [...notKnown(node, bare, facts), ...broken(node, bare, facts)];
  });

const ruleOf = ({ of }: UnprotectedFeeder): Finding['rule'] => of;

/** What the rules ask for and the file does not say. */
function notKnown(node: SupplyNode, bare: UnprotectedFeeder, { tables }: SupplyFacts): Finding[] {
  const { id, from } = node.feeder!;
  const lacks = [
    ...(bare.length === null ? ['its length'] : []),
    ...(bare.aheadAmps === null
      ? [bare.of === 'tap' ? `the device ahead of ${from}` : `the primary device of ${from}`]
      : []),
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
            value: ask.value,
            limit: ask.limit,
            unit: ask.what === 'length' ? 'ft' : 'A',
            source: `${tables.edition} ${ask.section}`,
          },
        ],
  );
}

const start = ({ feeder }: SupplyNode, { of }: UnprotectedFeeder): string =>
  of === 'tap'
    ? `Feeder ${feeder!.id} is a tap of what feeds ${feeder!.from}: its device stands at ${feeder!.to}`
    : `The secondary conductors of ${feeder!.from}, feeder ${feeder!.id}, have their device at ${feeder!.to}`;

type Says = (node: SupplyNode, bare: UnprotectedFeeder, ask: Ask, facts: SupplyFacts) => string;

const SAYS: Readonly<Record<Ask['what'], Says>> = {
  length: ({ feeder }, _, { value, limit }, { units }) =>
    `They are ${printLength(value, units)} long and may be ${printLength(limit, units)}. A device at ${feeder!.from}, a shorter way, or one outdoors all the way but for its end.`,
  ahead: ({ feeder }, { of, aheadAmps, ampacity }, { value }, _) =>
    of === 'tap'
      ? `They carry ${ampsText(ampacity)} and the ${ampsText(aheadAmps!)} device ahead asks for ${ampsText(value)}. Larger conductors, a shorter way, or a device at ${feeder!.from}.`
      : `They carry ${ampsText(ampacity)}; the ${ampsText(aheadAmps!)} primary device, by the ratio of the voltages, asks for ${ampsText(value)}. Larger conductors, a shorter way, or a device at ${feeder!.from}.`,
  device: (_, { ampacity }, { value }, { tables }) => {
    const most = standardRatingAtMost(tables, ampacity, 'breaker');
    const smaller = most === null ? '' : `A ${most} A device, or l`;
    return `It is ${ampsText(value)} and they carry ${ampsText(ampacity)}: the next standard rating up (${cited(tables, 'nextRating')}) is not for such conductors. ${smaller === '' ? 'L' : smaller}arger conductors or one more set.`;
  },
};
