import type { Device } from '../plan-file/supply.ts';
import { byWords, takeoffKind } from '../prices/kind.ts';
import { breakerSpec } from '../prices/spec.ts';
import { type Tally, tallying } from './tally.ts';

const BASIS = {
  feeder: 'one where the device of each new feeder stands; a main comes with its equipment',
  load: 'one of each load: its amps, continuous load counted 125%, at the next standard rating',
  charger: 'one of each circuit: 125% of its amps at the next standard rating',
} as const;
type Served = keyof typeof BASIS;

const kindFor = byWords((spec, served) =>
  takeoffKind({ item: 'breaker', spec, unit: 'each', basis: BASIS[served as Served] }),
);

/** The breaker of a charger's circuit, by its poles and amperes. */
export const chargerBreaker = (poles: number, amps: number) => kindFor(breakerSpec(poles, amps), 'charger');

const highKind = byWords((rating, volts) =>
  takeoffKind({
    item: 'device over 1,000 V',
    spec: `${rating}, ${volts} V`,
    unit: 'each',
    basis: 'one where the device of each new feeder over 1,000 V stands: a fuse or a breaker, as its designer sizes it',
  }),
);

/** Volts past which what is bought is no breaker of a panel. */
const HIGH = 1000;

/**
 * Devices of feeders, transformers and loads. A main that the file gives comes with its equipment, what stands already is
 * not bought, and what nobody gave a rating cannot be.
 */
export function deviceQuantities(devices: readonly Device[]): Tally {
  const { add, tally } = tallying();
  for (const { use, at, of, amps, poles, volts, existing } of devices) {
    if (amps === null || existing || of === at) continue;
    const kind =
      volts > HIGH
        ? highKind(breakerSpec(poles, amps), String(volts))
        : kindFor(breakerSpec(poles, amps), use === 'load' || use === 'charger' ? use : 'feeder');
    add(kind, of, 1);
  }
  return tally;
}
