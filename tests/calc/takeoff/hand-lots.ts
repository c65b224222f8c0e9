import type { SiteFile } from '../../../routing/site/site.ts';
import { charger, panel } from '../../routing/network/sites.ts';

const stall = (id: string, x: number) => ({ id, at: [x, -10], width: 9, depth: 18, heading: 90 }) as const;

/** Two drops on one trunk under a beam: up 6 ft from the panel, 40 ft along, boxes a foot below at 20 and 40 ft. */
export const OVERHEAD: SiteFile = {
  format: 'overrow/site',
  version: 1,
  units: 'ft',
  name: 'two drops under a beam',
  equipment: [panel('P1', [0, 0, 4], { busAmps: 100, mainAmps: 100, spaces: 12 })],
  stalls: [stall('S1', 20), stall('S2', 40)],
  members: [{ id: 'B1', from: [0, 0, 12], to: [40, 0, 12] }],
  raceways: [
    {
      id: 'R1',
      path: [
        [0, 0, 4],
        [0, 0, 10],
        [40, 0, 10],
      ],
      method: 'EMT',
      place: 'overhead',
    },
  ],
  drops: [
    { id: 'D1', box: [20, 0, 9], retractor: [20, 0, 8.5], cord: 25 },
    { id: 'D2', box: [40, 0, 9], retractor: [40, 0, 8.5], cord: 25 },
  ],
  chargers: [charger('C1', 'D1', 'P1', { stalls: ['S1'], pilot: true }), charger('C2', 'D2', 'P1', { stalls: ['S2'] })],
};

/** A 480 V feeder of 100 ft in the ground to a transformer, a panel beside it, and two pedestals in one trench. */
export const PEDESTALS: SiteFile = {
  format: 'overrow/site',
  version: 1,
  units: 'ft',
  name: 'two pedestals and a feeder',
  equipment: [
    panel('MSB', [-100, 0, 2], { kind: 'source', volts: 480 }),
    panel('T1', [0, 0, 2], {
      kind: 'transformer',
      size: [3, 3, 4],
      kva: 45,
      primaryVolts: 480,
      secondaryVolts: 208,
      electrode: 'rods',
    }),
    panel('P1', [8, 0, 2], { busAmps: 225, mainAmps: 150, spaces: 24 }),
  ],
  feeders: [
    {
      id: 'F1',
      from: 'MSB',
      to: 'T1',
      conductor: { size: '4', metal: 'copper', sets: 1, insulation: 'XHHW-2' },
      breakerAmps: 70,
      device: 'from',
    },
    {
      id: 'F2',
      from: 'T1',
      to: 'P1',
      conductor: { size: '1/0', metal: 'copper', sets: 1, insulation: 'XHHW-2' },
      raceway: 'EMT',
      length: 8,
      breakerAmps: 150,
    },
  ],
  stalls: [stall('S1', 30), stall('S2', 50)],
  raceways: [
    {
      id: 'U1',
      path: [
        [-100, 0, 2],
        [-100, 0, -3],
        [0, 0, -3],
        [0, 0, 2],
      ],
      method: 'PVC40',
      place: 'underground',
      surface: 'concrete',
    },
    {
      id: 'U2',
      path: [
        [8, 0, 2],
        [8, 0, -2],
        [50, 0, -2],
        [50, 0, 2],
      ],
      method: 'PVC80',
      place: 'underground',
    },
    {
      id: 'U3',
      path: [
        [30, 0, -2],
        [30, 0, 2],
      ],
      method: 'PVC80',
      place: 'underground',
    },
  ],
  drops: [
    { id: 'D1', box: [30, 0, 3], cord: 20, mount: 'pedestal' },
    { id: 'D2', box: [50, 0, 3], cord: 20, mount: 'pedestal' },
  ],
  chargers: [charger('C1', 'D1', 'P1', { stalls: ['S1'] }), charger('C2', 'D2', 'P1', { stalls: ['S2'] })],
};
