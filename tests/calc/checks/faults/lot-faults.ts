import { changed, lotAnd, lotChanged, lotWith } from './small-lot.ts';

/** Faults of stalls, drops, cords and what is in their way. */
export const LOT_FAULTS = {
  'nothing-served': lotWith({ chargers: [] }),
  unserved: lotWith({
    chargers: changed('chargers', 'EV2', {}).slice(0, 1),
    drops: changed('drops', 'D2', {}).slice(0, 1),
  }),
  'drop-idle': lotAnd('drops', [{ id: 'D3', box: [27, 9, 11], cord: 25 }]),
  'cords-per-drop': lotChanged('chargers', 'EV2', { drop: 'D1' }),
  'boxes-coincide': lotChanged('drops', 'D2', { box: [9.2, 9, 11] }),
  'stalls-overlap': lotChanged('stalls', 'S2', { at: [11, 18] }),
  overlap: lotAnd('columns', [{ id: 'C1', at: [-6, 0], size: [1, 1] }]),
  'raceways-overlap': lotAnd('raceways', [
    {
      id: 'R2',
      path: [
        [10, 9, 11],
        [40, 9, 11],
      ],
      method: 'EMT',
      place: 'overhead',
    },
  ]),
  reach: lotChanged('drops', 'D1', { cord: 12 }),
  'cord-limit': lotChanged('drops', 'D1', { cord: 30 }),
  'rest-height': lotChanged('drops', 'D1', { restHeight: 1 }),
  'pedestal-height': lotChanged('drops', 'D1', { mount: 'pedestal', box: [9, 9, 6], retractor: [9, 9, 6] }),
  'pedestal-feed': lotChanged('drops', 'D1', { mount: 'pedestal', box: [9, 9, 5.5], retractor: [9, 9, 5.5] }),
  'low-cord': lotAnd('aisles', [
    {
      id: 'A1',
      outline: [
        [-10, 0],
        [40, 0],
        [40, 30],
        [-10, 30],
      ],
    },
  ]),
  'over-vehicle': lotChanged('drops', 'D1', { retractor: [4.5, 9, 10] }),
  'clear-height': lotChanged('drops', 'D1', { box: [8, 9, 6.5], retractor: [8, 9, 6] }),
  'accessible-count': lotWith({ rules: { accessibleBy: 'california' } }),
  'accessible-size': lotChanged('stalls', 'S1', { use: 'van-accessible' }),
  'reach-range': lotWith({
    stalls: changed('stalls', 'S1', { use: 'accessible' }),
    drops: changed('drops', 'D1', { restHeight: 5 }),
  }),
  'clear-floor': lotWith({
    stalls: changed('stalls', 'S1', { use: 'accessible' }),
    columns: [{ id: 'C1', at: [9, 9], size: [10, 10] }],
  }),
  'pedestal-guard': lotChanged('drops', 'D1', { mount: 'pedestal', box: [9, 9, 3], retractor: [9, 9, 3] }),
  unsupported: lotWith({ members: [] }),
  'keepout-crossed': lotAnd('keepouts', [
    {
      id: 'K1',
      outline: [
        [0, 8],
        [2, 8],
        [2, 10],
        [0, 10],
      ],
      blocks: ['raceway'],
    },
  ]),
  setback: lotAnd('boundaries', [
    {
      id: 'BL1',
      path: [
        [-20, -3],
        [30, -3],
      ],
      setback: 5,
    },
  ]),
  'working-space': lotAnd('columns', [{ id: 'C1', at: [-6, -2], size: [1, 1] }]),
};
