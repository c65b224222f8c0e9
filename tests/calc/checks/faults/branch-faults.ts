import { type changed, lotAnd, lotChanged, lotWith, SMALL_LOT } from './small-lot.ts';

const chargers = (to: Parameters<typeof changed<'chargers'>>[2]) =>
  SMALL_LOT.chargers.map((charger) => ({ ...charger, ...to }));

/** A feeder of which the file gives no length, along a raceway in the ground, feet deep. */
const buriedFeeder = (depth: number) =>
  lotWith({
    feeders: SMALL_LOT.feeders.map(({ length: _, ...feeder }) => feeder),
    raceways: [
      ...SMALL_LOT.raceways,
      {
        id: 'R2',
        path: [
          [-40, 0, 0],
          [-40, 0, -depth],
          [-7, 0, -depth],
          [-7, 0, 6],
        ],
        method: 'PVC40',
        place: 'underground',
      },
    ],
  });

/** Faults of runs, circuits and their conduits. */
export const BRANCH_FAULTS = {
  'no-run': lotChanged('drops', 'D2', { box: [18, 20, 11], retractor: [18, 20, 10] }),
  'branch-limit': lotChanged('chargers', 'EV2', { branchLimit: 20 }),
  'no-feeder-route': lotWith({ feeders: SMALL_LOT.feeders.map(({ length: _, ...feeder }) => feeder) }),
  'loose-pull-point': lotAnd('pullpoints', [{ id: 'PB1', at: [10, 30, 11] }]),
  'buried-box': lotWith({
    raceways: [
      {
        id: 'R1',
        path: [
          [-6, 0, 6],
          [-6, 0, -5],
          [-6, 9, -5],
          [9, 9, -5],
          [9, 9, 11],
          [18, 9, 11],
        ],
        method: 'PVC40',
        place: 'underground',
      },
    ],
    pullpoints: [{ id: 'PB1', at: [0, 9, -5] }],
  }),
  // Its two boxes hang at a raceway that is said to lie over a roof in the sun.
  'box-location': {
    ...lotChanged('raceways', 'R1', { aboveRoof: 1 }),
    rules: { boxLocation: 'damp' as const },
  },
  bends: lotChanged('raceways', 'R1', {
    path: [
      [-6, 0, 6],
      [-6, 0, 11],
      [-6, 3, 11],
      [-4, 3, 11],
      [-4, 6, 11],
      [-6, 6, 11],
      [-6, 9, 11],
      [40, 9, 11],
    ],
  }),
  'pull-length': lotWith({ rules: { pullLimit: 20 } }),
  'pull-tension': lotWith({
    raceways: [
      ...SMALL_LOT.raceways,
      {
        id: 'R2',
        path: [
          [-40, 0, 0],
          [-40, 0, -2],
          [-40, 600, -2],
          [-7, 600, -2],
          [-7, 0, -2],
          [-7, 0, 6],
        ],
        method: 'PVC40',
        place: 'underground',
      },
    ],
    feeders: SMALL_LOT.feeders.map(({ length: _, ...feeder }) => feeder),
  }),
  // Three lines of 3 AWG, 0.352 in. over the insulation, in 1 in. EMT of 1.049 in.: 2.98 (Chapter 9 Tables 4 and 5).
  'jam-ratio': lotWith({ chargers: chargers({ phases: 3, amps: 80 }), rules: { circuitsPerConduit: 1 } }),
  'circuit-size': lotChanged('chargers', 'EV1', { amps: 900 }),
  'branch-drop': lotWith({ rules: { dropLimit: { branch: 0.01 } } }),
  'cord-ampacity': lotChanged('chargers', 'EV1', { amps: 600 }),
  riser: lotAnd('raceways', [
    {
      id: 'R9',
      path: [
        [-3, 0, -2],
        [9, 9, -2],
        [9, 9, 3],
      ],
      method: 'PVC40',
      place: 'underground',
    },
  ]),
  'voltage-window': lotChanged('feeders', 'F1', { length: 4500 }),
  'total-drop': lotWith({ rules: { dropLimit: { total: 0.1 } } }),
  'pilot-budget': lotWith({ chargers: chargers({ pilot: true }), rules: { pilot: { budgetPicofarads: 1000 } } }),
  'wet-insulation': lotWith({ rules: { insulation: 'THHN' } }),
  // Four of 1000 kcmil, 1.352 sq in. each, where 4 in. LFMC holds 5.08 at 40% (Chapter 9 Tables 4 and 5).
  'conduit-fill': lotChanged('feeders', 'F1', {
    raceway: 'LFMC',
    conductor: { ...SMALL_LOT.feeders[0].conductor, size: '1000' },
  }),
  'tray-fill': lotChanged('raceways', 'R1', { method: 'tray' }),
  cover: buriedFeeder(0.5),
  expansion: lotChanged('raceways', 'R1', { method: 'PVC40' }),
  'vertical-support': lotChanged('raceways', 'R1', {
    path: [
      [-6, 0, 6],
      [-6, 0, 140],
      [-6, 9, 140],
      [-6, 9, 11],
      [40, 9, 11],
    ],
  }),
};
