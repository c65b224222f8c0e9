import type { DevicePlace } from '../../../routing/site/schema/vocabulary.ts';
import type { Equipment, Feeder } from '../../../routing/site/site.ts';

/** Kinds of equipment that have no place for an overcurrent device of what leaves them. */
const WITHOUT_DEVICES: ReadonlySet<Equipment['kind']> = new Set(['transformer', 'source']);

/**
 * Where the overcurrent device of a feeder stands: as the file says; else in what feeds it, but at the far end of one
 * that leaves a transformer or a utility, where no breaker stands.
 * @param from what feeds it
 */
export const devicePlace = ({ device }: Pick<Feeder, 'device'>, from: Pick<Equipment, 'kind'>): DevicePlace =>
  device ?? (WITHOUT_DEVICES.has(from.kind) ? 'to' : 'from');

/** Whether a feeder has no overcurrent device where it starts. */
export function startsWithout(feeder: Pick<Feeder, 'device'>, from: Pick<Equipment, 'kind'>): boolean {
  const place = devicePlace(feeder, from);
  return place === 'to' || place === 'none';
}
