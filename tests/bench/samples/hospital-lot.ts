import type {
  Charger,
  Column,
  Drop,
  Equipment,
  Feeder,
  Keepout,
  Member,
  Raceway,
  SiteFile,
  Stall,
} from '../../../routing/site/site.ts';
import { withFaults } from './hospital-faults.ts';
import { CROSSING_Z, DEPTH, GAP, HALF, MIDDLE, PER_HALF, PITCH, RACEWAY_Z, WIDTH } from './hospital-sizes.ts';

const three = (n: number): string => String(n).padStart(3, '0');

/**
 * 240 stalls under four canopies, fed from three load-managed panels; `withFaults` then makes some in it on purpose, as a
 * lot of that size might have them. Each check has a small site with its fault under `tests/calc/findings/faults`.
 * Invented.
 */
export function hospitalLot(): SiteFile {
  const lists = {
    stalls: [] as Stall[],
    columns: [] as Column[],
    members: [] as Member[],
    keepouts: [] as Keepout[],
    equipment: [] as Equipment[],
    feeders: [] as Feeder[],
    raceways: [] as Raceway[],
    drops: [] as Drop[],
    chargers: [] as Charger[],
  };
  lists.equipment.push({
    id: 'SVC',
    kind: 'source',
    at: [-60, 90],
    size: [10, 4, 7],
    entry: [-60, 90, 0],
    volts: 208,
    phases: 3,
    faultAmps: 50_000,
    faultXr: 8,
  });
  for (let canopy = 1; canopy <= 4; canopy++) addCanopy(lists, canopy);
  addPanel(lists, 1, 400);
  addPanel(lists, 2, 400);
  addPanel(lists, 3, 640);
  // The fourth canopy hangs on the third panel: over the drive aisle at 14' 6". unsupported: no steel carries it there.
  lists.raceways.push({
    id: 'T3-4',
    path: [
      [MIDDLE, 2 * PITCH, RACEWAY_Z],
      [MIDDLE, 2 * PITCH, CROSSING_Z],
      [MIDDLE, 3 * PITCH, CROSSING_Z],
      [MIDDLE, 3 * PITCH, RACEWAY_Z],
    ],
    method: 'RMC',
    place: 'overhead',
  });
  const sound: SiteFile = {
    format: 'overrow/site',
    version: 1,
    units: 'ft',
    name: 'Mill Creek Hospital lot',
    note: 'Invented for demonstration: no such hospital, lot or equipment exists. Faults are made in it on purpose.',
    aisles: [-1, 0, 1, 2, 3].map((i) => ({
      id: `A${i + 2}`,
      outline: [
        [-20, i * PITCH + DEPTH],
        [2 * HALF + GAP + 20, i * PITCH + DEPTH],
        [2 * HALF + GAP + 20, (i + 1) * PITCH - DEPTH],
        [-20, (i + 1) * PITCH - DEPTH],
      ],
    })),
    gridlines: {
      x: Array.from({ length: 11 }, (_, i) => ({ label: String(i + 1), at: columnX(i) })),
      y: [0, 1, 2, 3].map((i) => ({ label: 'ABCD'[i] ?? '', at: i * PITCH })),
    },
    ...lists,
    rules: { vehicle: 'sedan' },
    georef: { lon: -93.3, lat: 41.5, bearing: 0 },
  };
  return withFaults(sound);
}

type Lists = {
  [K in 'stalls' | 'columns' | 'members' | 'raceways' | 'drops' | 'chargers' | 'equipment' | 'feeders']: NonNullable<
    SiteFile[K]
  >[number][];
};

const columnX = (i: number): number => (i <= 5 ? i * 27 : HALF + GAP + (i - 6) * 27);

function addCanopy(lists: Lists, canopy: number): void {
  const y0 = (canopy - 1) * PITCH;
  const panel = `P${Math.min(canopy, 3)}`;
  for (let i = 0; i < 12; i++) {
    const x = columnX(i);
    lists.columns.push({ id: `C${canopy}-${i + 1}`, at: [x, y0], size: [1, 1], height: 13 });
    lists.members.push({ id: `B${canopy}-${i + 1}`, from: [x, y0 - DEPTH, 13], to: [x, y0 + DEPTH, 13] });
  }
  for (const y of [-15, -9, -3, 3, 9, 15])
    lists.members.push({
      id: `PU${canopy}${y > 0 ? '+' : ''}${y}`,
      from: [0, y0 + y, 13.5],
      to: [2 * HALF + GAP, y0 + y, 13.5],
    });
  lists.raceways.push({
    id: `T${canopy}`,
    path: [
      [0, y0, RACEWAY_Z],
      [2 * HALF + GAP, y0, RACEWAY_Z],
    ],
    method: 'EMT',
    place: 'overhead',
  });
  for (const side of [1, -1])
    for (let place = 0; place < 2 * PER_HALF; place++) {
      const n = lists.stalls.length + 1;
      const far = place >= PER_HALF;
      const left = place * WIDTH + (far ? GAP : 0);
      const stripe = far ? left : left + WIDTH;
      lists.stalls.push({
        id: `S${three(n)}`,
        at: [left + WIDTH / 2, y0 + side * DEPTH],
        width: WIDTH,
        depth: DEPTH,
        heading: side > 0 ? 270 : 90,
        vehicle: ['sedan', 'suv', 'sedan', 'pickup', 'compact'][n % 5] ?? 'sedan',
        label: three(n),
      });
      const y = y0 + side * 10;
      if (side > 0)
        lists.raceways.push({
          id: `X${canopy}-${place + 1}`,
          path: [
            [stripe, y0 - 10, RACEWAY_Z],
            [stripe, y0 + 10, RACEWAY_Z],
          ],
          method: 'EMT',
          place: 'overhead',
        });
      lists.drops.push({
        id: `D${three(n)}`,
        box: [stripe, y, RACEWAY_Z],
        retractor: [stripe, y, 10],
        cord: 25,
        restHeight: 3,
      });
      lists.chargers.push({
        id: `EV${three(n)}`,
        drop: `D${three(n)}`,
        stalls: [`S${three(n)}`],
        from: panel,
        amps: 32,
        volts: 208,
        phases: 1,
        pilot: true,
      });
    }
}

function addPanel(lists: Lists, n: number, managedAmps: number): void {
  const y = (n - 1) * PITCH;
  lists.equipment.push({
    id: `P${n}`,
    kind: 'switchboard',
    at: [MIDDLE, y],
    size: [4, 1.5, 7],
    entry: [MIDDLE, y, 7],
    volts: 208,
    phases: 3,
    busAmps: 800,
    mainAmps: 800,
    spaces: n === 3 ? 240 : 120,
    workingSpace: 3.5,
    managedAmps,
    electrode: 'concrete-encased',
    interruptingAmps: 65_000,
  });
  lists.feeders.push({
    id: `F${n}`,
    from: 'SVC',
    to: `P${n}`,
    conductor: { size: '600', metal: 'copper', sets: 2, insulation: 'XHHW-2' },
    raceway: 'PVC40',
    length: 240,
    breakerAmps: 800,
    existing: true,
  });
  lists.raceways.push({
    id: `R${n}`,
    path: [
      [MIDDLE, y, 7],
      [MIDDLE, y, RACEWAY_Z],
    ],
    method: 'EMT',
    place: 'overhead',
  });
}
