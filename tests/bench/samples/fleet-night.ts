import type { SiteFile } from '../../../routing/site/site.ts';

/**
 * Pickups and vans come back in the afternoon and stand until the morning, each at a stall of its own, with what a day of
 * short rounds takes out of them. The evening is dear. Cars and prices are invented.
 */
export const OVERNIGHT: NonNullable<SiteFile['days']>[number] = {
  id: 'overnight',
  name: 'A night in the yard, invented',
  from: '14:00',
  to: '10:00',
  population: {
    kind: 'fleet',
    cars: 48,
    seed: 1,
    kwh: [
      [0, 4],
      [0.1, 9],
      [0.5, 17],
      [0.9, 31],
      [1, 44],
    ],
  },
  // A yard knows when each of its cars goes out.
  strategy: 'deadline',
  tariff: {
    energy: [
      { from: '16:00', to: '21:00', price: 0.22 },
      { from: '21:00', to: '07:00', price: 0.08 },
      { from: '00:00', to: '00:00', price: 0.12 },
    ],
    demand: [{ from: '00:00', to: '00:00', price: 11 }],
  },
};
