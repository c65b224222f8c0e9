import type { SiteFile } from '../../../routing/site/site.ts';

/** A made-up site with one of everything, two stalls to a drop, in feet. */
export const SMALL: SiteFile = {
  format: 'overrow/site',
  version: 1,
  units: 'ft',
  name: 'Small lot',
  stalls: [
    { id: 'S07', at: [0, 0], width: 9, depth: 18, heading: 90, label: '7', vehicle: 'cart' },
    { id: 'S08', at: [9, 0], width: 9, depth: 18, heading: 90, label: '8' },
    { id: 'S09', at: [18, 0], width: 9, depth: 18, heading: 90 },
  ],
  columns: [{ id: 'C1', at: [4.5, 18], size: [1, 1] }],
  members: [{ id: 'M1', from: [0, 18, 12], to: [27, 18, 12] }],
  keepouts: [
    {
      id: 'K1',
      outline: [
        [40, 0],
        [44, 0],
        [44, 4],
      ],
      blocks: ['drop'],
    },
  ],
  aisles: [
    {
      id: 'A1',
      outline: [
        [0, -24],
        [27, -24],
        [27, 0],
        [0, 0],
      ],
    },
  ],
  gridlines: { x: [{ label: '1', at: 0 }], y: [{ label: 'A', at: 18 }] },
  equipment: [
    { id: 'T1', kind: 'source', at: [60, 18], size: [4, 4, 5], entry: [58, 18, 4], volts: 208, phases: 3 },
    {
      id: 'P1',
      kind: 'panelboard',
      at: [50, 18],
      size: [2, 1, 6],
      rotation: 0,
      entry: [50, 18, 8],
      volts: 208,
      phases: 3,
    },
  ],
  feeders: [
    {
      id: 'F1',
      from: 'T1',
      to: 'P1',
      conductor: { size: '4/0', metal: 'Cu', sets: 1, insulation: 'THWN-2' },
      length: 20,
      breakerAmps: 200,
    },
  ],
  loads: [{ id: 'L1', from: 'P1', name: 'lights', volts: 208, phases: 1, va: 500, continuous: true }],
  raceways: [
    {
      id: 'R1',
      path: [
        [50, 18, 8],
        [50, 18, 12],
        [0, 18, 12],
      ],
      method: 'EMT',
      place: 'overhead',
    },
  ],
  pullpoints: [{ id: 'PB1', at: [50, 18, 12] }],
  drops: [
    { id: 'D1', box: [4.5, 18, 12], retractor: [4.5, 16, 11], cord: 22 },
    { id: 'D2', box: [18, 18, 12], retractor: [18, 16, 11], cord: 22 },
  ],
  chargers: [
    { id: 'E1', drop: 'D1', stalls: ['S07', 'S08'], from: 'P1', amps: 32, volts: 208, phases: 1 },
    { id: 'E2', drop: 'D2', stalls: ['S09'], from: 'P1', amps: 32, volts: 208, phases: 1 },
  ],
  notes: [{ id: 'N1', at: [30, 25], text: 'By others', to: [18, 18] }],
  dimensions: [{ id: 'DIM1', from: [0, 0], to: [9, 0], offset: -3 }],
  clouds: [
    {
      id: 'CL1',
      outline: [
        [46, 14],
        [58, 14],
        [58, 22],
      ],
      mark: 'A',
    },
  ],
  sections: [{ id: 'SEC1', name: 'At the first drop', from: [4, -4], to: [4, 24], look: 8 }],
  boundaries: [
    {
      id: 'BL1',
      path: [
        [-8, -14],
        [70, -14],
        [70, 30],
      ],
      kind: 'right-of-way',
      name: 'Elm Street',
      setback: 4,
    },
  ],
  vehicles: {
    cart: {
      length: 8,
      width: 4,
      height: 6,
      inlets: [{ name: 'rear', along: 1, side: 'rear', height: 2, share: 1 }],
    },
  },
  asBuilt: { D1: { box: [4.6, 18, 12], checkedOn: '2026-05-01' } },
};
