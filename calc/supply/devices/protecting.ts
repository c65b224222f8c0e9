import { kept } from '../../../routing/kept/kept.ts';
import { addTo } from '../../../routing/lists/grouping.ts';
import type { Device } from '../../plan-file/supply.ts';

/** The devices that protect an element, by its id; none where nothing does. */
export const protectorsOf = kept((devices: readonly Device[]): ReadonlyMap<string, readonly Device[]> => {
  const by = new Map<string, Device[]>();
  for (const device of devices)
    for (const id of device.protects) {
      addTo(by, id, device);
    }
  return by;
});

/** The least of the ratings that are given, A; null where none is. */
export function leastAmps(devices: readonly Device[]): number | null {
  const given = devices.flatMap(({ amps }) => (amps === null ? [] : [amps]));
  return given.length === 0 ? null : Math.min(...given);
}

/** Rating of the device that protects the conductors of a feeder, A: the one where it starts, else the one it ends in. */
export function feederDeviceAmps(devices: readonly Device[], feeder: string): number | null {
  const own = protectorsOf(devices).get(feeder) ?? [];
  return (own.find(({ id }) => id === `${feeder}.from`) ?? own[0])?.amps ?? null;
}
