import type { Finding } from '../../../routing/site/rules/finding.ts';
import { PILOT_FLOOR_AMPS, PILOT_FLOOR_SOURCE } from '../../supply/panels/pilot-floor.ts';
import { ampsText, type SupplyFacts } from '../../supply/supply-facts.ts';
import { equipmentLoadFindings } from './equipment-findings.ts';
import { feederFindings } from './feeder-findings.ts';
import { harmonicFindings } from './harmonic-findings.ts';
import { issuedFindings } from './issued-findings.ts';
import { overLimitFindings } from './over-limit-findings.ts';
import { bondingFindings } from './protection/bonding-findings.ts';
import { deviceFindings } from './protection/device-findings.ts';
import { faultFindings } from './protection/fault-findings.ts';
import { protectionFindings } from './protection/protection-findings.ts';
import { unprotectedFindings } from './protection/unprotected-findings.ts';
import { serviceFindings } from './service-findings.ts';
import { transformerFindings } from './transformer-findings.ts';
import { voltageFindings } from './volts/voltage-findings.ts';
import { mismatchFindings } from './volts/voltage-mismatch.ts';

/** Every check of a supply but the drop at each box. */
export const supplyFindings = (facts: SupplyFacts): readonly Finding[] => [
  ...unsettled(facts),
  ...mismatchFindings(facts),
  ...feederFindings(facts),
  ...unprotectedFindings(facts),
  ...transformerFindings(facts),
  ...deviceFindings(facts),
  ...overLimitFindings(facts),
  ...equipmentLoadFindings(facts),
  ...protectionFindings(facts),
  ...serviceFindings(facts),
  ...voltageFindings(facts),
  ...managedFloor(facts),
  ...issuedFindings(facts),
  ...harmonicFindings(facts),
  ...faultFindings(facts),
  ...bondingFindings(facts),
];

function unsettled({ state, tree, model }: SupplyFacts): Finding[] {
  const roots = new Set([...state.full.unsettled, ...(state.withoutGeneration?.unsettled ?? [])]);
  return tree.nodes.flatMap(({ equipment: { id } }, place): Finding[] => {
    if (!roots.has(model.feedBus[place]!)) return [];
    const says = `No voltages satisfy the load under ${id}: it is past what the feeders and transformers can carry at any voltage. Its figures are those at nominal voltage. Shorter or larger feeders, or less load.`;
    return [
      {
        severity: 'fail',
        rule: 'supply-unsettled',
        about: [id],
        says,
        source: 'backward and forward sweeps did not settle',
      },
    ];
  });
}

function managedFloor({ state, tree, model, chargers }: SupplyFacts): Finding[] {
  const low = new Map<string, { readonly charger: string; readonly amps: number }>();
  for (const { id, from, amps } of chargers) {
    const place = tree.placeOf.get(from);
    if (place === undefined) continue;
    const share = state.full.share[model.loadBus[place]!]!;
    const left = amps * share;
    if (share === 1 || left >= PILOT_FLOOR_AMPS * (1 - 1e-9)) continue;
    if (left < (low.get(from)?.amps ?? Infinity)) low.set(from, { charger: id, amps: left });
  }
  return [...low].map(([id, { charger, amps }]) => ({
    severity: 'warn',
    rule: 'managed-floor',
    about: [id, charger],
    says: `Load management leaves chargers of ${id} ${ampsText(amps)} each when all are on, less than the ${PILOT_FLOOR_AMPS} A that a pilot can call for: some of them have to wait. A higher ceiling, or fewer chargers.`,
    value: amps,
    limit: PILOT_FLOOR_AMPS,
    unit: 'A',
    source: PILOT_FLOOR_SOURCE,
  }));
}
