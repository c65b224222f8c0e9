import { printTemperature } from '../../../routing/site/numbers/temperature.ts';
import type { Finding } from '../../../routing/site/rules/finding.ts';
import type { Feeder } from '../../../routing/site/site.ts';
import { continuousPercent } from '../../circuits/design-amps.ts';
import { feederDeviceAmps } from '../../supply/devices/protecting.ts';
import { startsBare } from '../../supply/devices/unprotected-feeder.ts';
import { type FeederAmpacity, feederAmpacity } from '../../supply/feeders/feeder-ampacity.ts';
import type { Demand } from '../../supply/panels/demand.ts';
import { ampsText, type SupplyFacts } from '../../supply/supply-facts.ts';
import { feederIsOver } from '../../supply/tree/over-limit.ts';
import { findImpedance } from '../../tables/conductor-of.ts';
import { largestDeviceFor, standardRatingAtLeast } from '../../tables/protection-of.ts';
import { cited } from '../../tables/sections.ts';
import { compareSizes, isConductorSize } from '../../tables/sizes.ts';
import { ratingFindings } from './protection/breaker-rating.ts';

/**
 * Feeders: load over the breaker, conductors that the breaker or the load is too large for where they lie, sizes and
 * ratings that the tables lack.
 */
export function feederFindings(facts: SupplyFacts): readonly Finding[] {
  return facts.tree.nodes.flatMap((node, place) => {
    const { feeder } = node;
    if (feeder === null || feederIsOver(facts.tables, node)) return [];
    const demand = facts.demands[place]!;
    return [
      ...overload(feeder, demand, facts),
      ...ratingFindings(`breaker of feeder ${feeder.id}`, feeder.breakerAmps, [feeder.id, feeder.to], facts.tables),
      ...conductor(feeder, demand, facts, place),
    ];
  });
}

function overload({ id, to, breakerAmps }: Feeder, asked: Demand, { tables, lines, tree }: SupplyFacts): Finding[] {
  const demand = asked.feederAmps;
  if (demand <= breakerAmps * (1 + 1e-9)) return [];
  const steady = breakerAmps / tables.continuous.factor;
  const needed = standardRatingAtLeast(tables, demand);
  const larger = Number.isFinite(needed) ? ` A ${needed} A feeder would do;` : '';
  const managed = tree.nodes[tree.placeOf.get(to)!]!.equipment.managedAmps;
  // A ceiling at a transformer is in amperes of its secondary. Rounded down: it is the most that may be set.
  const there = Math.floor(((steady * asked.amps) / demand) * (1 + 1e-9) * 10) / 10;
  const ceiling =
    lines.chargers.size === 0
      ? ''
      : ` so would load management at ${to} to ${there >= 100 ? Math.floor(there) : there} A at most${managed === undefined ? '' : ` instead of ${ampsText(managed)}`}, other loads deducted.`;
  return [
    {
      severity: 'fail',
      rule: 'feeder-overload',
      about: [id, to],
      says: `Feeder ${id} to ${to} is asked for ${ampsText(demand)}, continuous load counted ${continuousPercent(tables)}, and its breaker is ${breakerAmps} A.${larger}${ceiling}`,
      value: demand,
      limit: breakerAmps,
      unit: 'A',
      source: cited(tables, 'feederDevice', 'loadManagement'),
    },
  ];
}

function conductor(feeder: Feeder, asked: Demand, facts: SupplyFacts, place: number): Finding[] {
  const { id, to } = feeder;
  const ambientC = facts.lies.ambients[place]!;
  // Those without a device at their start have rules of their own.
  const isBare = startsBare(facts.tree.nodes[place]!, facts.tree);
  const breakerAmps = feederDeviceAmps(facts.devices, id) ?? feeder.breakerAmps;
  const { size, metal, sets, insulation } = feeder.conductor;
  const { tables, rules } = facts;
  const carried = isConductorSize(size) ? feederAmpacity(tables, feeder.conductor, ambientC, rules.terminalC) : null;
  if (carried === null || findImpedance(tables, size, metal, 'PVC') === undefined) {
    const says = `${JSON.stringify(size)} ${metal} is no conductor size of the tables: nothing of feeder ${id} is checked against its breaker and its load, and it is worked without its impedance. Sizes read "3/0" or "250".`;
    return [{ severity: 'fail', rule: 'feeder-size', about: [id, to], says, source: tables.ampacity.source }];
  }
  const findings: Finding[] = [];
  const amps = carried.ampacity;
  const make = `${sets > 1 ? `${sets} sets of ` : ''}${size} ${metal} ${insulation}`;
  const words = `${make}, ${ampsText(amps)} at ${printTemperature(ambientC)}`;
  const largest = largestDeviceFor(tables, amps);
  if (breakerAmps > largest && !isBare)
    findings.push({
      severity: 'fail',
      rule: 'feeder-conductor',
      about: [id, to],
      says:
        largest === 0 || amps === 0
          ? `The conductors of feeder ${id} may carry nothing where they lie: ${words}. A cooler way, or an insulation for more heat.`
          : `The ${breakerAmps} A breaker of feeder ${id} is too large for its conductors: ${words}, may have ${largest} A. A ${largest} A breaker, a larger size or one more set.`,
      value: breakerAmps,
      limit: largest,
      unit: 'A',
      source: `${cited(tables, 'nextRatings')}, ${tables.ampacity.source}`,
    });
  if (asked.feederAmps <= feeder.breakerAmps) {
    const short = tooLittle(asked, carried, make, words, tables);
    if (short !== null)
      findings.push({
        severity: 'fail',
        rule: 'feeder-conductor',
        about: [id, to],
        says: `Feeder ${id} is asked for ${short.says}. A larger size or one more set.`,
        value: short.value,
        limit: short.limit,
        unit: 'A',
        source: cited(tables, 'feederConductor'),
      });
  }
  if (sets > 1 && compareSizes(size, tables.least.parallel) < 0)
    findings.push({
      severity: 'fail',
      rule: 'parallel-size',
      about: [id],
      says: `Feeder ${id} has ${sets} sets of ${size}; conductors in parallel are ${tables.least.parallel} or larger. One set of a larger size.`,
      source: `${cited(tables, 'parallel')}, from memory`,
    });
  return findings;
}

/** 125% of continuous load at the terminals before correction, or the load itself after it, whichever the conductors lack. */
function tooLittle(
  { feederAmps, feederLoadAmps }: Demand,
  { atTerminals, ampacity }: FeederAmpacity,
  make: string,
  words: string,
  tables: SupplyFacts['tables'],
): { readonly says: string; readonly value: number; readonly limit: number } | null {
  if (feederAmps > atTerminals * (1 + 1e-9)) {
    const counted = `${ampsText(feederAmps)}, continuous load counted ${continuousPercent(tables)}`;
    const says = `${counted}, which its breaker allows and its conductors do not: ${make}, ${ampsText(atTerminals)} at the terminals before correction`;
    return { says, value: feederAmps, limit: atTerminals };
  }
  if (feederLoadAmps > ampacity * (1 + 1e-9)) {
    const says = `${ampsText(feederLoadAmps)}, which its breaker allows and its conductors do not: ${words}`;
    return { says, value: feederLoadAmps, limit: ampacity };
  }
  return null;
}
