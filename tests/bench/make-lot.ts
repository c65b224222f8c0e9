import type {
  Charger,
  Column,
  Drop,
  Equipment,
  Feeder,
  Gridline,
  Keepout,
  Member,
  Raceway,
  SiteFile,
  Stall,
} from '../../routing/site/site.ts';

/** Lengths of the invented lots, feet. */
const STALL = { width: 9, depth: 18 };
const AISLE = 24;
const BAY = 27;
const RACEWAY_Z = 11;
const RETRACTOR_Z = 10;
const CORD = 25;

export interface LotWish {
  readonly name: string;
  readonly stalls: number;
  /** Stalls under one double-loaded canopy; even. */
  readonly perCanopy?: number;
  readonly amps?: number;
  readonly managedAmps?: number;
}

/** The growing lists of a lot. */
interface Lists {
  stalls: Stall[];
  columns: Column[];
  members: Member[];
  keepouts: Keepout[];
  equipment: Equipment[];
  feeders: Feeder[];
  raceways: Raceway[];
  drops: Drop[];
  chargers: Charger[];
}

const numbered = (prefix: string, n: number, digits: number): string => `${prefix}${String(n).padStart(digits, '0')}`;

/**
 * An invented lot of any size: rows of double-loaded canopies 60 ft apart, each with its own panel at the end of the
 * row, a trunk raceway along the column line, a cross raceway over every stripe, and a drop on each stripe at mid
 * depth. Sound by construction: every cord reaches, every run is inside 250 ft. In feet.
 */
export function makeLot(wish: LotWish): SiteFile {
  const perCanopy = wish.perCanopy ?? 50;
  const digits = String(wish.stalls).length;
  const lists: Lists = {
    stalls: [],
    columns: [],
    members: [],
    keepouts: [],
    equipment: [],
    feeders: [],
    raceways: [],
    drops: [],
    chargers: [],
  };
  const across = Math.max(1, Math.floor(Math.sqrt(wish.stalls / perCanopy / 4)));
  const rowLength = (perCanopy / 2) * STALL.width;
  const columnPitch = rowLength + 2 * AISLE;
  const rowPitch = 2 * STALL.depth + AISLE;
  lists.equipment.push({
    id: 'SVC',
    kind: 'source',
    at: [-60, 0],
    size: [8, 3, 7],
    entry: [-60, 0, 5],
    volts: 208,
    phases: 3,
  });
  for (let canopy = 0; lists.stalls.length < wish.stalls; canopy++) {
    const count = Math.min(perCanopy, wish.stalls - lists.stalls.length);
    const x0 = (canopy % across) * columnPitch;
    const y0 = Math.floor(canopy / across) * rowPitch;
    addCanopy(lists, { canopy: canopy + 1, count, x0, y0, digits, wish });
  }
  const lastY = Math.floor((Math.ceil(wish.stalls / perCanopy) - 1) / across) * rowPitch;
  const gridX: Gridline[] = [];
  for (let i = 0; i * BAY <= rowLength; i++) gridX.push({ label: String(i + 1), at: i * BAY });
  const gridY: Gridline[] = [];
  for (let i = 0; i * rowPitch <= lastY && i < LETTERS.length; i++)
    gridY.push({ label: LETTERS[i] ?? '', at: i * rowPitch });
  return {
    format: 'overrow/site',
    version: 1,
    units: 'ft',
    name: wish.name,
    note: 'Invented for demonstration: no such lot, owner or equipment exists.',
    gridlines: { x: gridX, y: gridY },
    ...lists,
    rules: { vehicle: 'sedan' },
  };
}

/** Gridline letters skip I and O, which read as figures. */
const LETTERS = 'ABCDEFGHJKLMNPQRSTUVWXYZ';

interface CanopyWish {
  readonly canopy: number;
  readonly count: number;
  readonly x0: number;
  readonly y0: number;
  readonly digits: number;
  readonly wish: LotWish;
}

function addCanopy(lists: Lists, { canopy, count, x0, y0, digits, wish }: CanopyWish): void {
  const perSide = Math.ceil(count / 2);
  const length = perSide * STALL.width;
  const panel = `P${canopy}`;
  lists.equipment.push({
    id: panel,
    kind: 'panelboard',
    at: [x0 - 6, y0],
    size: [3, 1, 6],
    entry: [x0 - 6, y0, 6],
    volts: 208,
    phases: 3,
    busAmps: 800,
    mainAmps: 800,
    spaces: 2 * Math.max(count, 12),
    workingSpace: 3,
    managedAmps: wish.managedAmps ?? 400,
  });
  lists.feeders.push({
    id: `F${canopy}`,
    from: 'SVC',
    to: panel,
    conductor: { size: '600', metal: 'copper', sets: 2, insulation: 'THWN-2' },
    raceway: 'PVC40',
    length: 120,
    breakerAmps: 800,
    existing: true,
  });
  for (let x = 0; x <= length; x += BAY) {
    lists.columns.push({ id: `C${canopy}-${x / BAY + 1}`, at: [x0 + x, y0], size: [1, 1], height: 12 });
    lists.members.push({
      id: `B${canopy}-${x / BAY + 1}`,
      from: [x0 + x, y0 - STALL.depth, 12],
      to: [x0 + x, y0 + STALL.depth, 12],
    });
  }
  for (const y of [-15, -9, -3, 3, 9, 15])
    lists.members.push({
      id: `PU${canopy}${y > 0 ? '+' : ''}${y}`,
      from: [x0, y0 + y, 12.5],
      to: [x0 + length, y0 + y, 12.5],
    });
  lists.raceways.push({
    id: `T${canopy}`,
    path: [
      [x0 - 6, y0, 6],
      [x0 - 6, y0, RACEWAY_Z],
      [x0 + length, y0, RACEWAY_Z],
    ],
    method: 'EMT',
    place: 'overhead',
  });
  for (let i = 0; i < count; i++) {
    const side = i < perSide ? 1 : -1;
    const place = i < perSide ? i : i - perSide;
    const n = lists.stalls.length + 1;
    const id = numbered('S', n, digits);
    const drop = numbered('D', n, digits);
    const stripe = x0 + place * STALL.width;
    lists.stalls.push({
      id,
      at: [stripe + STALL.width / 2, y0 + side * STALL.depth],
      width: STALL.width,
      depth: STALL.depth,
      heading: side > 0 ? 270 : 90,
      label: String(n),
    });
    const y = y0 + side * (STALL.depth / 2 + 1);
    if (side > 0)
      lists.raceways.push({
        id: `X${canopy}-${place + 1}`,
        path: [
          [stripe, y0 - STALL.depth / 2 - 1, RACEWAY_Z],
          [stripe, y0 + STALL.depth / 2 + 1, RACEWAY_Z],
        ],
        method: 'EMT',
        place: 'overhead',
      });
    lists.drops.push({
      id: drop,
      box: [stripe, y, RACEWAY_Z],
      retractor: [stripe, y, RETRACTOR_Z],
      cord: CORD,
      restHeight: 3,
    });
    lists.chargers.push({
      id: numbered('EV', n, digits),
      drop,
      stalls: [id],
      from: panel,
      amps: wish.amps ?? 32,
      volts: 208,
      phases: 1,
      pilot: true,
    });
  }
}
