import type { Charger, Column, Drop, Member, Raceway, SiteFile, Stall } from '../../../routing/site/site.ts';

const DEPTH = 18;
const WIDTH = 9;
/** The first stall of each row is 11 ft with a 5 ft access aisle beside it. */
const FIRST = 16;
const ROW = FIRST + 7 * WIDTH;
const RACEWAY_Z = 11;

const two = (n: number): string => String(n).padStart(2, '0');

/**
 * Those who work there and come to read, through a working day: a car a stall, some of them twice a day. Its tariff has
 * a dear afternoon. Cars and prices are invented.
 */
const WORKPLACE_DAY: NonNullable<SiteFile['days']>[number] = {
  id: 'workplace',
  name: 'A working day, invented',
  from: '06:00',
  to: '22:00',
  population: { kind: 'workplace', cars: 20, seed: 2 },
  tariff: {
    energy: [
      { from: '14:00', to: '19:00', price: 0.24 },
      { from: '00:00', to: '00:00', price: 0.11 },
    ],
    demand: [{ from: '00:00', to: '00:00', price: 12 }],
  },
};

/** 16 stalls, double-loaded under one canopy, one panel at its west end. Invented. */
export function libraryLot(): SiteFile {
  const stalls: Stall[] = [];
  const drops: Drop[] = [];
  const chargers: Charger[] = [];
  const crossings: Raceway[] = [];
  for (let n = 1; n <= 16; n++) {
    const north = n <= 8;
    const place = (n - 1) % 8;
    const side = north ? 1 : -1;
    const accessible = place === 0;
    const width = accessible ? 11 : WIDTH;
    const left = accessible ? 0 : FIRST + (place - 1) * WIDTH;
    const id = `S${two(n)}`;
    stalls.push({
      id,
      at: [left + width / 2, side * DEPTH],
      width,
      depth: DEPTH,
      heading: north ? 270 : 90,
      ...(accessible ? { use: north ? ('van-accessible' as const) : ('accessible' as const) } : {}),
      vehicle: ['sedan', 'suv', 'compact', 'sedan', 'suv', 'pickup', 'sedan', 'suv'][place] ?? 'sedan',
      label: two(n),
    });
    // The drop hangs over the stripe, or over the access aisle of an accessible stall: never over a car.
    const x = accessible ? 13.5 : left + WIDTH;
    // A pickup stands further out, and its drop with it.
    const y = side * (place === 5 ? 10 : 9);
    drops.push({ id: `D${two(n)}`, box: [x, y, RACEWAY_Z], retractor: [x, y, 10], cord: 25, restHeight: 3 });
    chargers.push({
      id: `EV${two(n)}`,
      drop: `D${two(n)}`,
      stalls: [id],
      from: 'P1',
      amps: 32,
      volts: 208,
      phases: 1,
      pilot: true,
    });
    if (north)
      crossings.push({
        id: `R${place + 2}`,
        path: [
          [x, -y, RACEWAY_Z],
          [x, y, RACEWAY_Z],
        ],
        method: 'EMT',
        place: 'overhead',
      });
  }
  const columns: Column[] = [];
  const members: Member[] = [];
  const lines = [0, 26, 53, ROW];
  lines.forEach((x, i) => {
    columns.push({ id: `C${i + 1}`, at: [x, 0], size: [1, 1], height: 12 });
    members.push({ id: `B${i + 1}`, from: [x, -DEPTH, 12], to: [x, DEPTH, 12] });
  });
  for (const y of [-15, -9, -3, 3, 9, 15]) members.push({ id: `PU${y}`, from: [0, y, 12.5], to: [ROW, y, 12.5] });
  return {
    format: 'overrow/site',
    version: 1,
    units: 'ft',
    name: 'Alder Street Library lot',
    note: 'Invented for demonstration: no such library, lot or equipment exists.',
    stalls,
    columns,
    members,
    keepouts: [
      {
        id: 'K1',
        outline: [
          [11, 1],
          [16, 1],
          [16, 18],
          [11, 18],
        ],
        from: 0,
        to: 8.17,
        blocks: ['equipment', 'drop'],
      },
      {
        id: 'K2',
        outline: [
          [11, -18],
          [16, -18],
          [16, -1],
          [11, -1],
        ],
        from: 0,
        to: 8.17,
        blocks: ['equipment', 'drop'],
      },
    ],
    aisles: [
      {
        id: 'A1',
        outline: [
          [-12, 18],
          [ROW + 6, 18],
          [ROW + 6, 42],
          [-12, 42],
        ],
      },
      {
        id: 'A2',
        outline: [
          [-12, -42],
          [ROW + 6, -42],
          [ROW + 6, -18],
          [-12, -18],
        ],
      },
    ],
    gridlines: { x: lines.map((at, i) => ({ label: String(i + 1), at })), y: [{ label: 'A', at: 0 }] },
    equipment: [
      {
        id: 'SVC',
        kind: 'source',
        at: [-40, -6],
        size: [6, 4, 6],
        entry: [-40, -4, 0],
        volts: 208,
        phases: 3,
        faultAmps: 30_000,
        faultXr: 5,
      },
      {
        id: 'SE1',
        kind: 'service',
        at: [-28, -6],
        size: [4, 2, 7],
        entry: [-28, -6, 0],
        volts: 208,
        phases: 3,
        busAmps: 400,
        mainAmps: 400,
        workingSpace: 3.5,
        electrode: 'concrete-encased',
        interruptingAmps: 35_000,
      },
      {
        id: 'P1',
        kind: 'panelboard',
        at: [-6, 0],
        size: [3, 1, 6],
        entry: [-6, 0, 6],
        volts: 208,
        phases: 3,
        busAmps: 400,
        mainAmps: 400,
        spaces: 42,
        workingSpace: 3,
        // 16 chargers of 7,200 VA count for 413 A at 125%; held to 320 A they count for 400 A, and run at their rating all the same.
        managedAmps: 320,
        interruptingAmps: 22_000,
      },
    ],
    feeders: [
      {
        id: 'F0',
        from: 'SVC',
        to: 'SE1',
        conductor: { size: '600', metal: 'copper', sets: 1, insulation: 'THWN-2' },
        raceway: 'PVC40',
        length: 12,
        breakerAmps: 400,
      },
      {
        id: 'F1',
        from: 'SE1',
        to: 'P1',
        conductor: { size: '600', metal: 'copper', sets: 1, insulation: 'THWN-2' },
        raceway: 'PVC40',
        length: 36,
        breakerAmps: 400,
        existing: true,
      },
    ],
    loads: [{ id: 'L1', from: 'P1', name: 'Canopy lighting', volts: 120, phases: 1, va: 600, continuous: true }],
    raceways: [
      {
        id: 'R1',
        path: [
          [-6, 0, 6],
          [-6, 0, RACEWAY_Z],
          [ROW, 0, RACEWAY_Z],
        ],
        method: 'EMT',
        place: 'overhead',
      },
      ...crossings,
    ],
    pullpoints: [{ id: 'PB1', at: [13.5, 0, RACEWAY_Z] }],
    drops,
    chargers,
    days: [WORKPLACE_DAY],
    rules: { vehicle: 'sedan' },
    georef: { lon: -93.1, lat: 41.6, bearing: 0 },
  };
}
