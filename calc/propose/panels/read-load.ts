import { USUAL_CHARGER, USUAL_PANELBOARD } from '../usual.ts';
import type { LoadWish } from './charger-amps.ts';

/** What load management may be asked for, in words of a command. */
export const LOAD_WORDS = 'full, day, energy and hours such as 20kWh/8h, or a ceiling such as 180A';

export type ReadLoad = { readonly ok: true; readonly load: LoadWish } | { readonly ok: false; readonly says: string };

/**
 * Load management out of its words: `full`, `day`, `20kWh/8h` for each car, `180A` a line for the lot.
 * @example
 * // By definition
 * readLoad('20kWh/8h') // { ok: true, load: { kind: 'energy', kwh: 20, hours: 8 } }
 */
export function readLoad(words: string): ReadLoad {
  const text = words.replace(/\s/g, '');
  if (/^full$/i.test(text)) return { ok: true, load: { kind: 'full' } };
  if (/^day$/i.test(text)) return { ok: true, load: { kind: 'day' } };
  const ceiling = /^(\d+(?:\.\d+)?)A$/i.exec(text);
  if (ceiling) return checked({ kind: 'ceiling', amps: Number(ceiling[1]) });
  const energy = /^(\d+(?:\.\d+)?)kWh\/(\d+(?:\.\d+)?)h$/i.exec(text);
  if (energy) return checked({ kind: 'energy', kwh: Number(energy[1]), hours: Number(energy[2]) });
  return { ok: false, says: `expected ${LOAD_WORDS}; got "${words}"` };
}

/** Most hours that a car stays. */
const MOST_HOURS = 24 * 7;

/** What of it can be: a ceiling over 0, energy that a charger of the usual rating gives in the time. */
function checked(load: LoadWish): ReadLoad {
  if (load.kind === 'ceiling' && !(load.amps > 0)) return { ok: false, says: 'a ceiling is over 0 A' };
  if (load.kind === 'energy') {
    const { kwh, hours } = load;
    if (!(kwh > 0 && hours > 0 && hours <= MOST_HOURS))
      return { ok: false, says: `energy is over 0 kWh, in more than 0 and at most ${MOST_HOURS} hours` };
    const most = mostEnergy(hours);
    if (kwh > most)
      return {
        ok: false,
        says: `a charger of ${USUAL_CHARGER.amps} A gives no more than ${most.toFixed(1)} kWh in ${hours} h`,
      };
  }
  return { ok: true, load };
}

/** Most that a new charger gives in so many hours, kWh. */
export const mostEnergy = (hours: number): number => (USUAL_CHARGER.amps * USUAL_PANELBOARD.volts * hours) / 1000;
