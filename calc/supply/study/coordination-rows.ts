import type { Device, SupplyEquipment } from '../../plan-file/supply.ts';
import type { CodeTables } from '../../tables/code-tables.ts';
import { cited } from '../../tables/sections.ts';
import type { SupplyTree } from '../tree/supply-tree.ts';
import { type SeriesPair, seriesPairs } from './series-pairs.ts';

/** A pair of devices in series with what decides between them. */
export interface CoordinationRow extends SeriesPair {
  /** Rating ahead over rating, at one voltage; null where one is not known. */
  readonly times: number | null;
  /** The most that the device may have to clear, A; null where it is not known. */
  readonly faultAmps: number | null;
  /** Whether the code asks for selectivity there. */
  readonly asked: string;
}

/**
 * What a study of coordination starts from: each device with the next ahead of it. The code asks for selectivity at
 * elevators, emergency and standby systems and critical operations; a file of chargers draws none of them.
 */
export function coordinationRows(
  tree: SupplyTree,
  devices: readonly Device[],
  supply: readonly SupplyEquipment[],
  tables: CodeTables,
): readonly CoordinationRow[] {
  const fault = new Map(supply.map((one) => [one.id, one.fault?.most ?? null]));
  const asked = `none drawn that ${cited(tables, 'selective')} asks it of`;
  return seriesPairs(tree, devices).map((pair) => {
    const { ahead, device } = pair;
    const times =
      ahead.amps === null || device.amps === null ? null : (ahead.amps * ahead.volts) / (device.amps * device.volts);
    return { ...pair, times, faultAmps: fault.get(device.at) ?? null, asked };
  });
}
