import type * as v from 'valibot';
import type { DeepReadonly } from '../../../routing/site/kinds/kind.ts';
import type { ElementList, KINDS } from '../../../routing/site/kinds/kinds.ts';
import type {
  asBuiltSchema,
  drawingsSchema,
  gridlinesSchema,
  vehicleSchema,
} from '../../../routing/site/schema/schema.ts';

type Whole<S extends v.GenericSchema> = DeepReadonly<Required<v.InferOutput<S>>>;
/** Of each field two values, and what else must be for it to have a say. The compiler asks for every field. */
export type Pairs<T> = { readonly [F in Exclude<keyof T, 'id'>]: readonly [T[F], T[F], Partial<T>?] };

const OUTLINES = [
  [
    [40, 0],
    [44, 0],
    [44, 4],
  ],
  [
    [40, 0],
    [45, 0],
    [44, 4],
  ],
] as const;

/** For elements of the small site. */
export const FIELDS: { readonly [L in ElementList]: Pairs<Whole<(typeof KINDS)[L]['schema']>> } = {
  stalls: {
    at: [
      [0, 0],
      [1, 0],
    ],
    width: [9, 10],
    depth: [18, 19],
    heading: [90, 80],
    use: ['standard', 'accessible'],
    parking: ['either', 'nose-in'],
    vehicle: ['cart', 'sedan'],
    label: ['7', '77'],
    phase: [1, 2],
  },
  columns: {
    at: [
      [4, 18],
      [5, 18],
    ],
    size: [
      [1, 1],
      [1, 2],
    ],
    rotation: [0, 5],
    height: [12, 13],
  },
  members: {
    from: [
      [0, 18, 12],
      [0, 18, 13],
    ],
    to: [
      [27, 18, 12],
      [27, 18, 13],
    ],
    stringer: [false, true],
  },
  keepouts: { outline: OUTLINES, from: [1, 2], to: [8, 9], blocks: [['drop'], ['drop', 'cord']] },
  aisles: { outline: OUTLINES, kind: ['drive', 'fire'] },
  equipment: {
    kind: ['panelboard', 'disconnect'],
    at: [
      [50, 18],
      [51, 18],
    ],
    size: [
      [2, 1, 6],
      [3, 1, 6],
    ],
    rotation: [0, 5],
    entry: [
      [50, 18, 8],
      [50, 18, 9],
    ],
    volts: [208, 480],
    phases: [3, 1],
    busAmps: [400, 600],
    mainAmps: [300, 400],
    spaces: [42, 84],
    workingSpace: [3, 4],
    condition: [1, 2],
    managedAmps: [100, 120],
    kva: [75, 112.5, { kind: 'transformer' }],
    primaryVolts: [480, 600, { kind: 'transformer' }],
    secondaryVolts: [208, 240, { kind: 'transformer' }],
    impedancePercent: [5, 6, { kind: 'transformer' }],
    xr: [2, 3, { kind: 'transformer' }],
    faultAmps: [20_000, 30_000, { kind: 'source' }],
    faultXr: [5, 6, { kind: 'source' }],
    existingAmps: [100, 110, { kind: 'source' }],
    electrode: ['rods', 'ring'],
    interruptingAmps: [22_000, 42_000],
    seriesAmps: [65_000, 42_000],
    seriesWith: ['the 400 A main', 'the 200 A main'],
    groundFault: [true, false],
    arcEnergy: ['maintenance-switch', 'differential'],
    existing: [false, true],
    lockable: [true, false],
  },
  feeders: {
    from: ['T1', 'P2'],
    to: ['P1', 'P2'],
    conductor: [
      { size: '4/0', metal: 'Cu', sets: 1, insulation: 'THWN-2' },
      { size: '250', metal: 'Cu', sets: 1, insulation: 'THWN-2' },
    ],
    raceway: ['EMT', 'RMC'],
    length: [20, 21],
    breakerAmps: [200, 225],
    existing: [false, true],
    device: ['from', 'to'],
    outdoors: [false, true],
    groundFault: [true, false],
    arcEnergy: ['maintenance-switch', 'differential'],
    tapCondition: ['high-bay', 'industrial'],
  },
  loads: {
    from: ['P1', 'P2'],
    name: ['lights', 'gate'],
    volts: [208, 120],
    phases: [1, 3],
    va: [500, 600],
    continuous: [true, false],
    generation: [false, true],
    demand: [0.5, 0.75],
    motor: [false, true],
  },
  raceways: {
    path: [
      [
        [50, 18, 8],
        [50, 18, 12],
        [0, 18, 12],
      ],
      [
        [50, 18, 8],
        [50, 18, 12],
        [0, 18, 13],
      ],
    ],
    method: ['EMT', 'RMC'],
    place: ['overhead', 'surface'],
    surface: ['asphalt', 'concrete', { place: 'underground' }],
    ambientC: [30, 40],
    aboveRoof: [1, 2],
  },
  pullpoints: {
    at: [
      [50, 18, 12],
      [49, 18, 12],
    ],
  },
  drops: {
    box: [
      [4.5, 18, 12],
      [5, 18, 12],
    ],
    retractor: [
      [4.5, 16, 11],
      [5, 16, 11],
    ],
    cord: [22, 24],
    mount: ['overhead', 'wall'],
    restHeight: [4, 5],
    holds: [1, 2],
  },
  chargers: {
    drop: ['D1', 'D2'],
    stalls: [['S07', 'S08'], ['S07']],
    from: ['P1', 'P2'],
    amps: [32, 40],
    volts: [208, 240],
    phases: [1, 3],
    pilot: [false, true],
    minAmps: [6, 0],
    disconnect: [10, 0],
    branchLimit: [100, 110],
    branchDrop: [1.5, 2],
  },
  notes: {
    at: [
      [50, 5],
      [51, 5],
    ],
    text: ['By others', 'By the owner'],
    to: [
      [45, 0],
      [46, 0],
    ],
  },
  dimensions: {
    from: [
      [0, 0],
      [1, 0],
    ],
    to: [
      [9, 0],
      [9, 1],
    ],
    offset: [3, -3],
  },
  clouds: { outline: OUTLINES, mark: ['1', '2'] },
  sections: {
    name: ['At the trunk', 'At the panel'],
    from: [
      [0, 0],
      [1, 0],
    ],
    to: [
      [9, 0],
      [9, 1],
    ],
    look: [8, -8],
  },
  boundaries: {
    path: [
      [
        [0, 0],
        [9, 0],
      ],
      [
        [0, 0],
        [9, 0],
        [9, 9],
      ],
    ],
    kind: ['right-of-way', 'easement'],
    name: ['Elm Street', 'Oak Street'],
    setback: [5, 10],
  },
};

export const VEHICLE: Pairs<Whole<typeof vehicleSchema>> = {
  length: [8, 9],
  width: [4, 5],
  height: [6, 7],
  inlets: [
    [{ name: 'rear', along: 1, side: 'rear', height: 2, share: 1 }],
    [{ name: 'rear', along: 1, side: 'left', height: 2, share: 1 }],
  ],
};

export const DRAWINGS: Pairs<Whole<typeof drawingsSchema>> = {
  purpose: ['permit', 'bid'],
  sheets: [['plan'], ['plan', 'panels']],
  scale: [96, 48],
  areas: [[{ name: 'North', from: [0, 0], to: [30, 20] }], [{ name: 'North', from: [0, 0], to: [31, 20] }]],
  scope: [['stubs'], ['no stubs']],
  notes: [['at night'], ['by day']],
};

export const AS_BUILT: Pairs<Whole<typeof asBuiltSchema>> = {
  box: [
    [4.6, 18, 12],
    [4.7, 18, 12],
  ],
  retractor: [
    [4.6, 16, 11],
    [4.7, 16, 11],
  ],
  checkedOn: ['2026-05-01', '2026-05-02'],
  checkedBy: ['AB', 'CD'],
  note: ['as drawn', 'moved'],
};

export const GRIDLINES: Pairs<Whole<typeof gridlinesSchema>> = {
  x: [[{ label: '1', at: 0 }], [{ label: '1', at: 1 }]],
  y: [[{ label: 'A', at: 18 }], [{ label: 'B', at: 18 }]],
  rotation: [0, 10],
  origin: [
    [0, 0],
    [1, 0],
  ],
};
