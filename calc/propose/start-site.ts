import type { Aisle, Column, Keepout, Member, SiteFile, Stall } from '../../routing/site/site.ts';

/** What a new lot is to have. */
export interface StartWish {
  readonly name: string;
  readonly stalls: number;
  /** One row, or two with their heads under one canopy. */
  readonly rows: 1 | 2;
}

/** More stalls than these are no lot to start from: draw or import it, or begin with one canopy of several. */
export const MOST_STALLS = 100;
/** Fewer in one row than these make a lot of one row unless two are asked for. */
export const ONE_ROW = 10;

/** Feet. Stalls and the aisle: parking layouts, common practice, no source. */
const WIDTH = 9;
const DEPTH = 18;
const AISLE = 24;
/** A van-accessible stall and the access aisle beside it: 2010 ADA Standards 502.2, 502.3. */
const VAN_WIDTH = 11;
const ACCESS_WIDTH = 5;
/** Between beams about so much, and their height, common practice, no source. */
const BAY = 27;
const STEEL = 12;
const PURLINS = [3, 9, 15] as const;
/** An access aisle is kept clear to the height of 2010 ADA Standards 502.5. */
const ACCESS_CLEAR = 98 / 12;

const two = (n: number): string => String(n).padStart(2, '0');
const round = (feet: number): number => Math.round(feet * 100) / 100;

/**
 * A lot to begin with, in feet, invented: stalls along a canopy, the first of them van-accessible, aisles, gridlines at the
 * columns, and the utility's point at one end, 208 V three-phase. Nothing hangs or runs yet: `propose` draws that in.
 * RangeError for a number of stalls that is not whole, under 1 or over `MOST_STALLS`.
 * @example
 * // By definition: two rows of six
 * startSite({ name: 'Lot', stalls: 12, rows: 2 }).stalls?.length // 12
 */
export function startSite({ name, stalls: count, rows }: StartWish): SiteFile {
  if (!(Number.isInteger(count) && count >= 1 && count <= MOST_STALLS))
    throw new RangeError(`a new lot has 1 to ${MOST_STALLS} stalls, not ${count}`);
  const inFirst = rows === 1 ? count : Math.ceil(count / 2);
  const length = VAN_WIDTH + ACCESS_WIDTH + (inFirst - 1) * WIDTH;
  const bays = Math.max(1, Math.round(length / BAY));
  const beams = Array.from({ length: bays + 1 }, (_, i) => round((length * i) / bays));
  const sides: readonly (1 | -1)[] = rows === 1 ? [1] : [1, -1];
  return {
    format: 'overrow/site',
    version: 1,
    units: 'ft',
    name,
    note: 'A start with invented sizes: put in the lot as it was measured.',
    stalls: Array.from({ length: count }, (_, i) => stallAt(i, inFirst)),
    columns: beams.map((x, i): Column => ({ id: `C${i + 1}`, at: [x, 0], size: [1, 1], height: STEEL })),
    members: [
      ...beams.map(
        (x, i): Member => ({
          id: `B${i + 1}`,
          from: [x, rows === 1 ? -3 : -DEPTH, STEEL],
          to: [x, DEPTH, STEEL],
        }),
      ),
      ...sides.flatMap((side) =>
        PURLINS.map(
          (y): Member => ({
            id: `P${two(side === 1 ? y : y + DEPTH)}`,
            from: [0, side * y, STEEL + 0.5],
            to: [length, side * y, STEEL + 0.5],
          }),
        ),
      ),
    ],
    keepouts: [accessAisle()],
    aisles: sides.map((side, i): Aisle => driveAisle(side, i, length)),
    gridlines: { x: beams.map((at, i) => ({ label: String(i + 1), at })), y: [{ label: 'A', at: 0 }] },
    equipment: [
      {
        id: 'U1',
        kind: 'source',
        at: [-40, 0],
        size: [4, 3, 6],
        entry: [-40, 0, 3],
        volts: 208,
        phases: 3,
        faultAmps: 22_000,
      },
    ],
    rules: { vehicle: 'sedan' },
  };
}

function stallAt(place: number, inFirst: number): Stall {
  const side = place < inFirst ? 1 : -1;
  const along = place < inFirst ? place : place - inFirst;
  const van = place === 0;
  const x = along === 0 && van ? VAN_WIDTH / 2 : VAN_WIDTH + ACCESS_WIDTH + (along - 0.5) * WIDTH;
  return {
    id: `S${two(place + 1)}`,
    at: [side === 1 ? x : (along + 0.5) * WIDTH, side * DEPTH],
    width: van ? VAN_WIDTH : WIDTH,
    depth: DEPTH,
    heading: side === 1 ? 270 : 90,
    label: two(place + 1),
    ...(van && { use: 'van-accessible' as const }),
  };
}

const rectangle = (
  x0: number,
  y0: number,
  x1: number,
  y1: number,
): readonly [[number, number], [number, number], [number, number], [number, number]] => [
  [x0, y0],
  [x1, y0],
  [x1, y1],
  [x0, y1],
];

const accessAisle = (): Keepout => ({
  id: 'K1',
  outline: rectangle(VAN_WIDTH, 1, VAN_WIDTH + ACCESS_WIDTH, DEPTH),
  from: 0,
  to: round(ACCESS_CLEAR),
  blocks: ['equipment', 'drop'],
});

const driveAisle = (side: 1 | -1, place: number, length: number): Aisle => ({
  id: `A${place + 1}`,
  outline:
    side === 1 ? rectangle(-12, DEPTH, length + 6, DEPTH + AISLE) : rectangle(-12, -DEPTH - AISLE, length + 6, -DEPTH),
});
