import type { Aisle, Column, Member, SiteFile, Stall } from '../../../../routing/site/site.ts';

/** An invented lot: rows under canopies, and the utility's point west of them. Feet. */
export interface Lot {
  /** Stalls in each row; two rows, heads together, stand under one canopy. */
  readonly along: number;
  readonly canopies: number;
  readonly volts: 208 | 480;
  /** From the west end of the rows to the source. */
  readonly away: number;
}

export const WIDTH = 9;
export const DEPTH = 18;
/** From one canopy's middle to the next: two rows and the aisle between them. */
export const PITCH = 2 * DEPTH + 24;
const BEAM = 27;
const STEEL = 12;
const PURLINS = [-15, -9, -3, 3, 9, 15] as const;

export const lengthOf = ({ along }: Pick<Lot, 'along'>): number => along * WIDTH;

const rectangle = (x0: number, y0: number, x1: number, y1: number): Aisle['outline'] => [
  [x0, y0],
  [x1, y0],
  [x1, y1],
  [x0, y1],
];

const source = (volts: number, away: number): NonNullable<SiteFile['equipment']>[number] => ({
  id: 'U1',
  kind: 'source',
  at: [-away, 0],
  size: [4, 3, 6],
  entry: [-away, 0, 3],
  volts,
  phases: 3,
  faultAmps: 22_000,
});

/** The ground of a lot of double rows: stalls, canopies with a beam each 27 ft and purlins, aisles and the source. */
export function doubleRows({ along, canopies, volts, away }: Lot): SiteFile {
  const length = lengthOf({ along });
  const beams = Math.max(1, Math.ceil(length / BEAM));
  const xs = Array.from({ length: beams + 1 }, (_, i) => Math.min(i * BEAM, length));
  const middles = Array.from({ length: canopies }, (_, k) => k * PITCH);
  return {
    format: 'overrow/site',
    version: 1,
    units: 'ft',
    name: `${2 * along * canopies} stalls`,
    stalls: middles.flatMap((y, k) =>
      [1, -1].flatMap((side) =>
        Array.from(
          { length: along },
          (_, i): Stall => ({
            id: `S${k + 1}${side > 0 ? 'N' : 'S'}${i + 1}`,
            at: [(i + 0.5) * WIDTH, y + side * DEPTH],
            width: WIDTH,
            depth: DEPTH,
            heading: side > 0 ? 270 : 90,
          }),
        ),
      ),
    ),
    columns: middles.flatMap((y, k) =>
      xs.map((x, i): Column => ({ id: `C${k + 1}.${i + 1}`, at: [x, y], size: [1, 1], height: STEEL })),
    ),
    members: middles.flatMap((y, k) => [
      ...xs.map(
        (x, i): Member => ({ id: `B${k + 1}.${i + 1}`, from: [x, y - DEPTH, STEEL], to: [x, y + DEPTH, STEEL] }),
      ),
      ...PURLINS.map(
        (off): Member => ({
          id: `PU${k + 1}.${off}`,
          from: [0, y + off, STEEL + 0.5],
          to: [length, y + off, STEEL + 0.5],
        }),
      ),
    ]),
    aisles: Array.from({ length: canopies + 1 }, (_, k): Aisle => {
      const from = k * PITCH - DEPTH - 24;
      return { id: `A${k + 1}`, outline: rectangle(-12, from, length + 6, from + 24) };
    }),
    equipment: [source(volts, away)],
    rules: { vehicle: 'sedan' },
  };
}

/** Two single rows that face each other over an aisle, no canopy: their heads are outward. */
export function facingRows({ along, volts, away }: Omit<Lot, 'canopies'>): SiteFile {
  const length = lengthOf({ along });
  return {
    format: 'overrow/site',
    version: 1,
    units: 'ft',
    name: `${2 * along} stalls in two single rows`,
    stalls: [1, -1].flatMap((side) =>
      Array.from(
        { length: along },
        (_, i): Stall => ({
          id: `S${side > 0 ? 'N' : 'S'}${i + 1}`,
          at: [(i + 0.5) * WIDTH, side * 12],
          width: WIDTH,
          depth: DEPTH,
          heading: side > 0 ? 90 : 270,
        }),
      ),
    ),
    aisles: [{ id: 'A1', outline: rectangle(-12, -12, length + 6, 12) }],
    equipment: [source(volts, away)],
    rules: { vehicle: 'sedan' },
  };
}
