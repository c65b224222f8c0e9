import type { SiteFile } from '../../../routing/site/site.ts';

const at = { size: [3, 1, 6] as const, entry: [0, 0, 6] as const };
const conductor = { size: '3/0', metal: 'copper', sets: 1, insulation: 'THWN-2' } as const;

/** A 480 V source, a transformer to 208 V, a managed panel behind it, and two chargers. */
export const managedLot = (more: Partial<SiteFile> = {}): SiteFile => ({
  format: 'overrow/site',
  version: 1,
  units: 'ft',
  name: 'lot',
  stalls: [
    { id: 'S1', at: [0, 20], width: 9, depth: 18, heading: 90 },
    { id: 'S2', at: [9, 20], width: 9, depth: 18, heading: 90 },
  ],
  equipment: [
    { id: 'SVC', kind: 'source', at: [0, 0], ...at, volts: 480, phases: 3 } as never,
    {
      id: 'T1',
      kind: 'transformer',
      at: [6, 0],
      ...at,
      kva: 75,
      primaryVolts: 480,
      secondaryVolts: 208,
      phases: 3,
    } as never,
    {
      id: 'P1',
      kind: 'panelboard',
      at: [12, 0],
      ...at,
      volts: 208,
      phases: 3,
      mainAmps: 200,
      managedAmps: 90,
    } as never,
  ],
  feeders: [
    { id: 'F1', from: 'SVC', to: 'T1', conductor, breakerAmps: 100, length: 50 },
    { id: 'F2', from: 'T1', to: 'P1', conductor, breakerAmps: 225, length: 10 },
  ],
  raceways: [
    {
      id: 'R1',
      path: [
        [12, 0, 6],
        [0, 18, 10],
      ],
      method: 'EMT',
      place: 'overhead',
    },
  ],
  drops: [{ id: 'D1', box: [0, 18, 10], cord: 25, holds: 2 }],
  chargers: ['1', '2'].map((n) => ({
    id: `EV${n}`,
    drop: 'D1',
    stalls: [`S${n}`],
    from: 'P1',
    amps: 32,
    volts: 208,
    phases: 1 as const,
  })),
  days: [{ id: 'day', from: '08:00', to: '18:00', cars: [{ arrive: '08:00', leave: '17:00', kwh: 20 }] }],
  ...more,
});
