import type { Site } from '../../../routing/site/site.ts';
import { chargers, feeder, type Parts, panel, source, supplied, transformer } from './small-site.ts';

export const rowOf = (site: Site, id: string) => supplied(site).supply.equipment.find((row) => row.id === id)!;

export const behind480 = (count: number, rest: Partial<Parts> = {}): Parts => ({
  equipment: [source(480), transformer('T'), panel('P')],
  feeders: [feeder('SVC', 'T', { length: 300 }), feeder('T', 'P', { length: 20, breakerAmps: 400 })],
  chargers: chargers('P', count),
  ...rest,
});
