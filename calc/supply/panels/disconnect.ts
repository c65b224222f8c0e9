import type { CodeTables } from '../../tables/code-tables.ts';
import { cited } from '../../tables/sections.ts';
import { SILENT, type Tell } from '../../words/explain.ts';
import { measured } from '../../words/measured.ts';
import { singlePhaseSystem, suitsVolts, threePhaseSystem } from '../tree/system.ts';
import { voltsToGround } from './working-needs.ts';

export interface DisconnectInput {
  /** Rated output current of the charging equipment. */
  readonly amps: number;
  /** Line to line, or line to neutral of a single-phase charger at 120 or 277 V. */
  readonly volts: number;
  readonly phases: 1 | 3;
  /** Where the system is known; else by its volts. */
  readonly voltsToGround?: number | undefined;
}

export interface Disconnect {
  readonly needed: boolean;
  readonly voltsToGround: number;
  readonly says: string;
}

/** Volts that single-phase equipment has from line to neutral. */
const TO_NEUTRAL = [120, 277, 347];

/** Volts to ground of a circuit by its nominal volts alone; of a three-wire system without a grounded line, its volts. */
function groundVolts(volts: number, phases: 1 | 3): number {
  if (phases === 3) return voltsToGround(threePhaseSystem(volts));
  return TO_NEUTRAL.some((nominal) => suitsVolts(volts, nominal)) ? volts : voltsToGround(singlePhaseSystem(volts));
}

/**
 * Whether permanently connected charging equipment has to have a disconnecting means of its own, readily accessible and
 * lockable open: by its amperes, or by its volts to ground.
 * @example
 * // NEC 2023 625.43: 80 A is over 60 A; 32 A at 480Y/277 V is over 150 V to ground
 * disconnect(NEC, { amps: 80, volts: 208, phases: 1 }).needed // true
 * disconnect(NEC, { amps: 32, volts: 480, phases: 3 }).needed // true
 * disconnect(NEC, { amps: 48, volts: 240, phases: 1 }).needed // false
 */
export function disconnect(tables: CodeTables, input: DisconnectInput, tell: Tell = SILENT): Disconnect {
  const { amps, volts, phases } = input;
  const { disconnectAboveAmps: mostAmps, disconnectAboveVoltsToGround: mostVolts } = tables.vehicleSupply;
  const toGround = input.voltsToGround ?? groundVolts(volts, phases);
  const over = [
    ...(amps > mostAmps * (1 + 1e-9) ? [`${measured(amps, 'A')} is over ${mostAmps} A`] : []),
    ...(toGround > mostVolts * (1 + 1e-9) ? [`${Math.round(toGround)} V to ground is over ${mostVolts} V`] : []),
  ];
  const needed = over.length > 0;
  const says = needed
    ? `${over.join(' and ')}: a disconnecting means, readily accessible and lockable open; where it is not in sight of the equipment, a plaque there says where it is`
    : `no more than ${mostAmps} A and ${mostVolts} V to ground: none asked for`;
  tell(() => ({
    find: 'disconnecting means',
    formula: `asked for over ${mostAmps} A, or over ${mostVolts} V to ground`,
    values: { amperes: measured(amps, 'A'), 'volts to ground': measured(toGround, 'V') },
    result: needed ? 'needed' : 'not needed',
    source: `${cited(tables, 'chargerDisconnect')} (read in older texts)`,
  }));
  return { needed, voltsToGround: toGround, says };
}
