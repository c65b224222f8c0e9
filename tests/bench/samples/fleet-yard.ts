import type { Charger, Column, Drop, Member, Point3, Raceway, SiteFile, Stall } from '../../../routing/site/site.ts';
import { OVERNIGHT } from './fleet-night.ts';

const ANGLE = (60 * Math.PI) / 180;
const WIDTH = 10;
const DEPTH = 22;
/** Along the row, a stall of width W at 60 degrees takes W / sin 60. */
const PITCH = WIDTH / Math.sin(ANGLE);
const PER_SIDE = 12;
const ROW = PER_SIDE * PITCH;
const RACEWAY_Z = 12;
const LINES = [0, 84];

const two = (n: number): string => String(n).padStart(2, '0');
const tidy = (x: number): number => Math.round(x * 1000) / 1000;

/**
 * 48 angled stalls for pickups and vans under two canopies; the 480 V feeder that is already in the ground ends at a
 * transformer and a switchboard, which feed one load-managed panel a canopy. Invented.
 */
export function fleetYard(): SiteFile {
  const stalls: Stall[] = [];
  const drops: Drop[] = [];
  const chargers: Charger[] = [];
  const columns: Column[] = [];
  const members: Member[] = [];
  const raceways: Raceway[] = [];
  LINES.forEach((y0, canopy) => {
    raceways.push({
      id: `R${canopy + 1}`,
      path: [
        [-14, y0, 6],
        [-14, y0, RACEWAY_Z],
        [tidy(ROW + 8), y0, RACEWAY_Z],
      ],
      method: 'EMT',
      place: 'overhead',
    });
    for (let i = 0; i * 3 * PITCH <= ROW + 1; i++) {
      const x = tidy(i * 3 * PITCH);
      columns.push({ id: `C${canopy + 1}-${i + 1}`, at: [x, y0], size: [1, 1], height: 14 });
      members.push({ id: `B${canopy + 1}-${i + 1}`, from: [x, y0 - 20, 14], to: [x, y0 + 20, 14] });
    }
    for (const y of [-15, -9, -3, 3, 9, 15])
      members.push({
        id: `PU${canopy + 1}${y > 0 ? '+' : ''}${y}`,
        from: [-6, y0 + y, 14.5],
        to: [tidy(ROW + 8), y0 + y, 14.5],
      });
    for (const side of [1, -1])
      for (let i = 0; i < PER_SIDE; i++) {
        const n = stalls.length + 1;
        // A stall leans 30 degrees from square: the head lies on the canopy line, the entry towards its aisle.
        const axis = [Math.cos(ANGLE) * side, Math.sin(ANGLE) * side] as const;
        const across = [Math.sin(ANGLE) * side, -Math.cos(ANGLE) * side] as const;
        const head = [(i + 0.5) * PITCH + (side < 0 ? PITCH / 4 : 0), y0 + side * (1 + WIDTH * 0.25)] as const;
        stalls.push({
          id: `S${two(n)}`,
          at: [tidy(head[0] + axis[0] * DEPTH), tidy(head[1] + axis[1] * DEPTH)],
          width: WIDTH,
          depth: DEPTH,
          heading: side > 0 ? 240 : 60,
          vehicle: i % 3 === 2 ? 'van' : 'pickup',
          parking: i % 4 === 3 ? 'back-in' : 'either',
          label: two(n),
        });
        const reach = 11;
        const offset = WIDTH / 2;
        const box: Point3 = [
          tidy(head[0] + axis[0] * reach + across[0] * offset),
          tidy(head[1] + axis[1] * reach + across[1] * offset),
          RACEWAY_Z,
        ];
        // The branch follows the stripe from the trunk out to the drop.
        const foot: Point3 = [tidy(box[0] - (axis[0] / axis[1]) * (box[1] - y0)), y0, RACEWAY_Z];
        raceways.push({ id: `X${two(n)}`, path: [foot, box], method: 'EMT', place: 'overhead' });
        drops.push({ id: `D${two(n)}`, box, retractor: [box[0], box[1], 11], cord: 25, restHeight: 3 });
        chargers.push({
          id: `EV${two(n)}`,
          drop: `D${two(n)}`,
          stalls: [`S${two(n)}`],
          from: `P${canopy + 1}`,
          amps: 32,
          volts: 208,
          phases: 1,
          pilot: true,
        });
      }
  });
  const panel = (n: number, y: number) => ({
    id: `P${n}`,
    kind: 'panelboard' as const,
    at: [-14, y] as const,
    size: [3, 1, 6] as const,
    entry: [-14, y, 6] as const,
    volts: 208,
    phases: 3 as const,
    busAmps: 225,
    mainAmps: 200,
    spaces: 54,
    workingSpace: 3,
    managedAmps: 125,
    interruptingAmps: 10_000,
  });
  const aisle = (id: string, from: number, to: number) => ({
    id,
    outline: [
      [-6, from],
      [tidy(ROW + 20), from],
      [tidy(ROW + 20), to],
      [-6, to],
    ] as [number, number][],
  });
  return {
    format: 'overrow/site',
    version: 1,
    units: 'ft',
    name: 'Quarry Road fleet yard',
    note: 'Invented for demonstration: no such yard, fleet or equipment exists.',
    stalls,
    columns,
    members,
    aisles: [aisle('A1', 25, 59), aisle('A2', -49, -25), aisle('A3', 109, 133)],
    // The service stands by the street; what lies north of the yard is not surveyed.
    boundaries: [
      {
        id: 'BL1',
        path: [
          [-70, 134],
          [-70, -49],
        ],
        kind: 'right-of-way',
        setback: 5,
      },
      {
        id: 'BL2',
        path: [
          [-70, -49],
          [162, -49],
          [162, 134],
        ],
      },
      {
        id: 'BL3',
        path: [
          [-95, 134],
          [-95, -49],
        ],
        kind: 'street',
        name: 'Quarry Road',
      },
    ],
    gridlines: {
      x: [0, 1, 2, 3, 4].map((i) => ({ label: String(i + 1), at: tidy(i * 3 * PITCH) })),
      y: LINES.map((at, i) => ({ label: 'AB'[i] ?? '', at })),
    },
    equipment: [
      {
        id: 'SVC',
        kind: 'source',
        at: [-60, 130],
        size: [8, 4, 7],
        entry: [-60, 130, 0],
        volts: 480,
        phases: 3,
        faultAmps: 30_000,
        faultXr: 6,
      },
      {
        id: 'SE1',
        kind: 'service',
        at: [-60, 118],
        size: [4, 2, 7],
        entry: [-60, 118, 0],
        volts: 480,
        phases: 3,
        busAmps: 400,
        mainAmps: 200,
        workingSpace: 4,
        electrode: 'concrete-encased',
        interruptingAmps: 35_000,
      },
      {
        id: 'T1',
        kind: 'transformer',
        at: [-40, 52],
        size: [4, 3, 4],
        entry: [-40, 52, 0],
        kva: 150,
        primaryVolts: 480,
        secondaryVolts: 208,
        impedancePercent: 4.5,
        xr: 2,
        electrode: 'building-steel',
      },
      {
        id: 'SB1',
        kind: 'switchboard',
        at: [-40, 42],
        size: [4, 2, 7],
        entry: [-40, 42, 0],
        volts: 208,
        phases: 3,
        busAmps: 600,
        mainAmps: 450,
        spaces: 12,
        workingSpace: 3.5,
        interruptingAmps: 14_000,
      },
      panel(1, 0),
      panel(2, 84),
    ],
    feeders: [
      {
        id: 'F0',
        from: 'SVC',
        to: 'SE1',
        conductor: { size: '3/0', metal: 'copper', sets: 1, insulation: 'XHHW-2' },
        raceway: 'PVC40',
        length: 12,
        breakerAmps: 200,
      },
      {
        id: 'F1',
        from: 'SE1',
        to: 'T1',
        conductor: { size: '3/0', metal: 'copper', sets: 1, insulation: 'XHHW-2' },
        raceway: 'PVC40',
        length: 298,
        breakerAmps: 200,
        existing: true,
      },
      {
        id: 'F2',
        from: 'T1',
        to: 'SB1',
        conductor: { size: '4/0', metal: 'copper', sets: 2, insulation: 'XHHW-2' },
        raceway: 'RMC',
        length: 15,
        breakerAmps: 450,
      },
      {
        id: 'F3',
        from: 'SB1',
        to: 'P1',
        conductor: { size: '350', metal: 'copper', sets: 1, insulation: 'XHHW-2' },
        raceway: 'PVC40',
        breakerAmps: 200,
      },
      {
        id: 'F4',
        from: 'SB1',
        to: 'P2',
        conductor: { size: '350', metal: 'copper', sets: 1, insulation: 'XHHW-2' },
        raceway: 'PVC40',
        breakerAmps: 200,
      },
    ],
    loads: [{ id: 'L1', from: 'SB1', name: 'Yard lighting', volts: 208, phases: 1, va: 2400, continuous: true }],
    raceways: [
      ...raceways,
      {
        id: 'U1',
        path: [
          [-40, 42, 0],
          [-40, 42, -2],
          [-18, 42, -2],
          [-18, 0, -2],
          [-14, 0, -2],
          [-14, 0, 2],
        ],
        method: 'PVC40',
        place: 'underground',
      },
      {
        id: 'U2',
        path: [
          [-18, 42, -2],
          [-18, 84, -2],
          [-14, 84, -2],
          [-14, 84, 2],
        ],
        method: 'PVC40',
        place: 'underground',
      },
    ],
    drops,
    chargers,
    days: [OVERNIGHT],
    rules: { vehicle: 'pickup', dropLimit: { branch: 1.75 } },
    georef: { lon: -93.2, lat: 41.7, bearing: 0 },
  };
}
