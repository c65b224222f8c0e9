import { kept } from '../../../routing/kept/kept.ts';
import { continuousPercent } from '../../circuits/design-amps.ts';
import type { Device } from '../../plan-file/supply.ts';
import { byWords, takeoffKind } from '../../prices/kind.ts';
import { breakerSpec } from '../../prices/spec.ts';
import type { CodeTables } from '../../tables/code-tables.ts';
import { type Tally, tallying } from '../tally.ts';

const basisBy = kept((tables: CodeTables) => {
  const percent = continuousPercent(tables);
  return {
    feeder: 'one where the device of each new feeder stands; a main comes with its equipment',
    load: `one of each load: its amps, continuous load counted ${percent}, at the next standard rating`,
    charger: `one of each circuit: ${percent} of its amps at the next standard rating`,
  };
});

const kindFor = byWords((spec, basis) => takeoffKind({ item: 'breaker', spec, unit: 'each', basis }));

/** The breaker of a charger's circuit, by its poles and amperes. */
export const chargerBreaker = (tables: CodeTables, poles: number, amps: number) =>
  kindFor(breakerSpec(poles, amps), basisBy(tables).charger);

const highKind = byWords((rating, volts) =>
  takeoffKind({
    item: 'device over 1,000 V',
    spec: `${rating}, ${volts} V`,
    unit: 'each',
    basis: 'one where the device of each new feeder over 1,000 V stands: a fuse or a breaker, as its designer sizes it',
  }),
);

/**
 * Devices of feeders, transformers and loads. A main that the file gives comes with its equipment, what stands already is
 * not bought, and what nobody gave a rating cannot be.
 */
export function deviceQuantities(devices: readonly Device[], tables: CodeTables): Tally {
  const { add, tally } = tallying();
  const basis = basisBy(tables);
  for (const { use, at, of, amps, poles, volts, existing } of devices) {
    if (amps === null || existing || of === at) continue;
    const kind =
      volts > tables.lowVoltage.upToVolts
        ? highKind(breakerSpec(poles, amps), String(volts))
        : kindFor(breakerSpec(poles, amps), basis[use === 'load' || use === 'charger' ? use : 'feeder']);
    add(kind, of, 1);
  }
  return tally;
}
