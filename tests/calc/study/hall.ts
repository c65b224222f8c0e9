import type { SiteFile } from '../../../routing/site/site.ts';

const LINES = [0, 24, 48, 72];
const STEEL = 12;

/**
 * Invented: sixteen stalls under a canopy behind a community hall, a service of its own for the lot, and 4/0 copper in a
 * conduit that is full, 225 A at 208 V three-phase, to a board at the canopy. All of it stands.
 */
export function hall(): SiteFile {
  const stalls = Array.from({ length: 16 }, (_, i) => {
    const isNorth = i < 8;
    return {
      id: `S${String(i + 1).padStart(2, '0')}`,
      at: [4.5 + 9 * (i % 8), isNorth ? 18 : -18] as [number, number],
      width: 9,
      depth: 18,
      heading: isNorth ? 270 : 90,
    };
  });
  const conductor = { metal: 'copper', sets: 1, insulation: 'THWN-2' } as const;
  return {
    format: 'overrow/site',
    version: 1,
    units: 'ft',
    name: 'Community hall lot',
    note: 'Invented.',
    stalls,
    columns: LINES.map((x, i) => ({ id: `C${i + 1}`, at: [x, 0], size: [1, 1], height: STEEL })),
    members: [
      ...LINES.map((x, i) => ({
        id: `B${i + 1}`,
        from: [x, -18, STEEL] as [number, number, number],
        to: [x, 18, STEEL] as [number, number, number],
      })),
      ...[-15, -9, -3, 3, 9, 15].map((y, i) => ({
        id: `J${i + 1}`,
        from: [0, y, STEEL + 0.5] as [number, number, number],
        to: [72, y, STEEL + 0.5] as [number, number, number],
      })),
    ],
    aisles: [
      {
        id: 'A1',
        outline: [
          [-12, 18],
          [84, 18],
          [84, 42],
          [-12, 42],
        ],
      },
      {
        id: 'A2',
        outline: [
          [-12, -42],
          [84, -42],
          [84, -18],
          [-12, -18],
        ],
      },
    ],
    gridlines: { x: LINES.map((at, i) => ({ label: String(i + 1), at })), y: [{ label: 'A', at: 0 }] },
    equipment: [
      {
        id: 'U1',
        kind: 'source',
        at: [-120, 0],
        size: [4, 3, 6],
        entry: [-120, 0, 3],
        volts: 208,
        phases: 3,
        faultAmps: 22_000,
      },
      {
        id: 'SE1',
        kind: 'service',
        at: [-112, 0],
        size: [4, 2, 7],
        entry: [-112, 0, 0],
        volts: 208,
        phases: 3,
        busAmps: 400,
        mainAmps: 400,
        workingSpace: 3.5,
        electrode: 'concrete-encased',
        interruptingAmps: 35_000,
        existing: true,
      },
      {
        id: 'P1',
        kind: 'panelboard',
        at: [-8, 0],
        size: [3, 1, 6],
        entry: [-8, 0, 6],
        volts: 208,
        phases: 3,
        busAmps: 225,
        mainAmps: 225,
        spaces: 42,
        workingSpace: 3,
        interruptingAmps: 22_000,
        existing: true,
      },
    ],
    feeders: [
      {
        id: 'F0',
        from: 'U1',
        to: 'SE1',
        conductor: { size: '600', ...conductor },
        raceway: 'PVC40',
        length: 12,
        breakerAmps: 400,
        existing: true,
      },
      {
        id: 'F1',
        from: 'SE1',
        to: 'P1',
        conductor: { size: '4/0', ...conductor },
        raceway: 'PVC40',
        length: 110,
        breakerAmps: 225,
        existing: true,
      },
    ],
    rules: { vehicle: 'sedan' },
  };
}
