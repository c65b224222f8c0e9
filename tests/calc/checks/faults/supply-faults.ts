import { changed, lotAnd, lotBehind, lotChanged, lotWith, SMALL_LOT } from './small-lot.ts';

const feeder = SMALL_LOT.feeders[0];
const conductor = (size: string, sets = 1) => ({ ...feeder.conductor, size, sets });

/** The small lot at 480Y/277 V behind devices of so many amperes. */
const at480 = (amps: number) =>
  lotWith({
    equipment: SMALL_LOT.equipment.map((one) => ({
      ...one,
      volts: 480,
      ...(one.kind === 'panelboard' && { busAmps: amps, mainAmps: amps }),
    })),
    feeders: changed('feeders', 'F1', { breakerAmps: amps, conductor: conductor('600', 4) }),
    chargers: SMALL_LOT.chargers.map((one) => ({ ...one, volts: 480 })),
  });

/** Faults of what feeds the branches. */
export const SUPPLY_FAULTS = {
  'supply-tree': lotAnd('feeders', [{ ...feeder, id: 'F2' }]),
  'supply-source': lotWith({ equipment: SMALL_LOT.equipment.slice(1), feeders: [] }),
  'supply-data': lotBehind({ impedancePercent: 4, xr: 1.5 }),
  'supply-unsettled': lotChanged('feeders', 'F1', { length: 20_000 }),
  'voltage-mismatch': lotChanged('chargers', 'EV1', { volts: 480 }),
  'feeder-size': lotChanged('feeders', 'F1', { conductor: conductor('3-0') }),
  'parallel-size': lotChanged('feeders', 'F1', { conductor: conductor('1', 2) }),
  'feeder-conductor': lotChanged('feeders', 'F1', { conductor: conductor('3') }),
  'breaker-rating': lotChanged('feeders', 'F1', { breakerAmps: 190 }),
  'feeder-overload': lotChanged('feeders', 'F1', { breakerAmps: 60 }),
  'main-overload': lotChanged('equipment', 'P1', { mainAmps: 50 }),
  'bus-overload': lotChanged('equipment', 'P1', { busAmps: 100 }),
  'unit-load': lotWith({
    equipment: changed('equipment', 'P1', { mainAmps: 70 }),
    feeders: changed('feeders', 'F1', { breakerAmps: 70 }),
  }),
  'service-load': lotChanged('equipment', 'SVC', { existingAmps: 110 }),
  'managed-floor': lotChanged('equipment', 'P1', { managedAmps: 5 }),
  'back-feed': lotAnd('loads', [
    { id: 'PV', from: 'P1', name: 'Array', volts: 208, phases: 3, va: 40_000, continuous: true, generation: true },
  ]),
  'voltage-rise': lotWith({
    feeders: changed('feeders', 'F1', { length: 1000 }),
    loads: [
      { id: 'PV', from: 'P1', name: 'Array', volts: 208, phases: 3, va: 60_000, continuous: true, generation: true },
    ],
  }),
  'spaces-short': lotChanged('equipment', 'P1', { spaces: 2 }),
  'spaces-order': lotChanged('equipment', 'P1', { spaces: 4 }),
  'charging-day': lotWith({
    days: [
      {
        id: 'day',
        from: '08:00',
        to: '18:00',
        cars: [{ arrive: '08:00', leave: '17:00', kwh: 30 }],
        limits: [{ id: 'P1', kind: 'lines', amps: 10 }],
        strategy: 'unmanaged',
      },
    ],
  }),
  issued: lotWith({ issued: { circuits: { EV1: { panel: 'P1', spaces: [1, 4] } } } }),
  'duct-bank': lotChanged('feeders', 'F1', { conductor: { ...SMALL_LOT.feeders[0].conductor, sets: 3 } }),
  'transformer-overload': lotBehind({ kva: 9, impedancePercent: 4, xr: 1.5 }),
  'transformer-protection': lotBehind(undefined, { breakerAmps: 400 }),
  secondary: lotBehind(undefined, {}, { length: 48 }),
  tap: lotWith({
    equipment: [...SMALL_LOT.equipment, { ...SMALL_LOT.equipment[1], id: 'P2', at: [-6, -12], entry: [-6, -12, 6] }],
    feeders: [
      feeder,
      {
        ...feeder,
        id: 'F2',
        from: 'P1',
        to: 'P2',
        conductor: conductor('3'),
        breakerAmps: 100,
        length: 30,
        device: 'to',
      },
    ],
  }),
  'device-missing': lotWith({
    equipment: changed('equipment', 'P1', {}).map((one) => {
      if (one.kind !== 'panelboard') return one;
      const { mainAmps: _, ...rest } = one;
      return rest;
    }),
    feeders: [],
  }),
  disconnect: lotChanged('chargers', 'EV1', { amps: 80 }),
  'ground-fault': at480(1000),
  'arc-energy': at480(1200),
  'over-limit': lotBehind({ kva: 300, impedancePercent: 4, xr: 3, primaryVolts: 12_470 }, { breakerAmps: 25 }),
  harmonics: lotBehind({ kva: 15, impedancePercent: 4, xr: 1.5 }),
  'fault-current': lotWith({
    equipment: SMALL_LOT.equipment.map((one) => {
      if (one.kind !== 'source') return one;
      const { faultAmps: _, ...rest } = one;
      return rest;
    }),
  }),
  bonding: lotBehind({ impedancePercent: 4, xr: 1.5 }),
  'fault-trip': lotWith({ rules: { fault: { tripTimes: 40 } } }),
  'interrupting-rating': lotChanged('equipment', 'P1', { interruptingAmps: 5000 }),
};
