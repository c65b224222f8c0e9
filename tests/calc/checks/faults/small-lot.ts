import type { Equipment, Feeder, SiteFile } from '../../../../routing/site/site.ts';

/** A lot that changes of itself make faulty: two stalls, a drop and a charger at each, one panel, one source; sound. */
export const SMALL_LOT = {
  format: 'overrow/site',
  version: 1,
  units: 'ft',
  name: 'small lot',
  stalls: [
    { id: 'S1', at: [4.5, 18], width: 9, depth: 18, heading: 270 },
    { id: 'S2', at: [13.5, 18], width: 9, depth: 18, heading: 270 },
  ],
  members: [
    { id: 'M1', from: [-6, 9, 12], to: [40, 9, 12] },
    { id: 'M2', from: [-6, 0, 12], to: [-6, 9, 12] },
  ],
  equipment: [
    {
      id: 'SVC',
      kind: 'source',
      at: [-40, 0],
      size: [6, 4, 6],
      entry: [-40, 0, 0],
      volts: 208,
      phases: 3,
      faultAmps: 22_000,
    },
    {
      id: 'P1',
      kind: 'panelboard',
      at: [-6, 0],
      size: [3, 1, 6],
      entry: [-6, 0, 6],
      volts: 208,
      phases: 3,
      busAmps: 225,
      mainAmps: 200,
      spaces: 42,
      workingSpace: 3,
      interruptingAmps: 22_000,
      electrode: 'rods',
    },
  ],
  feeders: [
    {
      id: 'F1',
      from: 'SVC',
      to: 'P1',
      conductor: { size: '3/0', metal: 'copper', sets: 1, insulation: 'XHHW-2' },
      raceway: 'PVC40',
      length: 48,
      breakerAmps: 200,
    },
  ],
  raceways: [
    {
      id: 'R1',
      path: [
        [-6, 0, 6],
        [-6, 0, 11],
        [-6, 9, 11],
        [40, 9, 11],
      ],
      method: 'EMT',
      place: 'overhead',
    },
  ],
  drops: [
    { id: 'D1', box: [9, 9, 11], retractor: [9, 9, 10], cord: 25 },
    { id: 'D2', box: [18, 9, 11], retractor: [18, 9, 10], cord: 25 },
  ],
  chargers: [
    { id: 'EV1', drop: 'D1', stalls: ['S1'], from: 'P1', amps: 32, volts: 208, phases: 1 },
    { id: 'EV2', drop: 'D2', stalls: ['S2'], from: 'P1', amps: 32, volts: 208, phases: 1 },
  ],
} as const satisfies SiteFile;

type ListName = 'stalls' | 'equipment' | 'feeders' | 'raceways' | 'drops' | 'chargers';

/** The small lot with other lists, rules and more. */
export const lotWith = (parts: Partial<SiteFile>): SiteFile => ({ ...SMALL_LOT, ...parts });

/** A list of the small lot, one of its elements changed. */
export function changed<List extends ListName>(
  list: List,
  id: string,
  to: Partial<NonNullable<SiteFile[List]>[number]>,
): NonNullable<SiteFile[List]> {
  const elements = SMALL_LOT[list] as readonly { readonly id: string }[];
  if (!elements.some((one) => one.id === id)) throw new RangeError(`the small lot has no ${id}`);
  return elements.map((one) => (one.id === id ? { ...one, ...to } : one)) as unknown as NonNullable<SiteFile[List]>;
}

/** The small lot with one element changed. */
export const lotChanged = <List extends ListName>(
  list: List,
  id: string,
  to: Partial<NonNullable<SiteFile[List]>[number]>,
): SiteFile => lotWith({ [list]: changed(list, id, to) } as Partial<SiteFile>);

/** The small lot with more elements in a list. */
export const lotAnd = <List extends Exclude<keyof SiteFile, 'name'>>(list: List, more: SiteFile[List]): SiteFile =>
  lotWith({
    [list]: [
      ...(((SMALL_LOT as Partial<SiteFile>)[list] as readonly unknown[] | undefined) ?? []),
      ...(more as readonly unknown[]),
    ],
  } as Partial<SiteFile>);

const RATED = { kva: 75, impedancePercent: 4, xr: 1.5 };

/** The small lot behind a transformer, 480 V ahead of it. */
export const lotBehind = (
  transformer: Partial<Equipment> = RATED,
  feeder: Partial<Feeder> = {},
  secondary: Partial<Feeder> = {},
): SiteFile => {
  const [source, panel] = changed('equipment', 'SVC', { volts: 480 });
  return lotWith({
    equipment: [
      source!,
      {
        id: 'T1',
        kind: 'transformer',
        at: [-30, 0],
        size: [3, 3, 4],
        entry: [-30, 0, 2],
        primaryVolts: 480,
        secondaryVolts: 208,
        ...transformer,
      },
      panel!,
    ],
    feeders: [
      { ...SMALL_LOT.feeders[0]!, from: 'T1', length: 20, ...secondary },
      {
        id: 'F2',
        from: 'SVC',
        to: 'T1',
        conductor: { size: '2', metal: 'copper', sets: 1, insulation: 'XHHW-2' },
        raceway: 'PVC40',
        length: 30,
        breakerAmps: 110,
        ...feeder,
      },
    ],
  });
};
