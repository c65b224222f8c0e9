import type { SiteFile } from '../../../routing/site/site.ts';
import { CAR, charger, drop, stall } from './sites.ts';

export const one = (car = CAR, more: Partial<SiteFile> = {}): Partial<SiteFile> => ({
  vehicles: { car },
  stalls: [stall('S1', [0, 0])],
  drops: [drop('D1', [0, 18, 10])],
  chargers: [charger('C1', 'D1', ['S1'])],
  ...more,
});
