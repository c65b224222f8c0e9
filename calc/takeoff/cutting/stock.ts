import { kept } from '../../../routing/kept/kept.ts';
import { addTo } from '../../../routing/lists/grouping.ts';
import { STICK } from '../../prices/spec.ts';
import type { TalliedPart } from '../tally.ts';
import { cut, fitCut } from './cut.ts';
import { fitMany } from './fit-many.ts';

/** Reels that conductors are bought on, feet. Common practice, no source. */
const PUT_UPS = [500, 1000, 2500] as const;

/** Coils that one of is bought where it holds all there is of a conductor, feet. Common practice, no source. */
const COILS = [100, 250] as const;

/** Lost at each saw cut of a raceway, feet: 1/8 in. Common practice, no source. */
const KERF = 0.125 / 12;

/** How a thing is bought: in sticks, on reels, or ordered to length. */
export type StockWay = 'stick' | 'reel' | 'length';

export interface CutPiece {
  /** Id of the conduit, circuit or feeder that it is for. */
  readonly of: string;
  /** Feet. */
  readonly length: number;
}

export interface CutStock {
  /** Pieces in the order in which they are cut, longest first. */
  readonly pieces: readonly CutPiece[];
  /** Feet left over. */
  readonly offcut: number;
}

/** How one kind of stock is cut, and how much of it is bought. */
export interface CutGroup {
  readonly item: 'raceway' | 'conductor';
  readonly spec: string;
  /** Length of one stick or reel, feet; 0 where all is ordered to length. */
  readonly stock: number;
  /** Sticks or reels bought, spare ones too. */
  readonly count: number;
  readonly stocks: readonly CutStock[];
  /** Sticks or reels more, so that what is bought has the waste of the rules in it. */
  readonly spare: number;
  /** Proved: no cutting takes fewer of this stock. */
  readonly bound: number;
  /** Pieces ordered to length, for they are longer than any stock or so are bought: each in whole feet, waste in. */
  readonly toLength: readonly (CutPiece & { readonly ordered: number })[];
  /** Feet bought in all, and of them left over. */
  readonly bought: number;
  readonly left: number;
}

/**
 * How the parts of one kind are cut and bought. Raceways in sticks from elbow to elbow, whole sticks first; conductors in
 * whole lengths (nothing is spliced inside a pull) from the put-up that buys the fewest feet; feeder conductors and
 * flexible conduit in whole feet ordered to length. Lengths are before waste; what is bought is no less than the length with it.
 * @param waste share of the length
 */
export const cutGroup = kept(
  (_first: TalliedPart, parts: readonly TalliedPart[], way: StockWay, spec: string, waste: number): CutGroup => {
    const pieces = parts.flatMap(({ of, quantity, cut: lengths = [quantity] }) =>
      lengths.map((length): CutPiece => ({ of, length })),
    );
    if (way === 'length') return closed(spec.startsWith('LFMC') ? 'raceway' : 'conductor', spec, 0, pieces, 0, waste);
    if (way === 'stick') return closed('raceway', spec, STICK, pieces.flatMap(inSticks), KERF, waste);
    return onReels(spec, pieces, waste);
  },
);

/** A length as whole sticks and the piece that is left. */
function inSticks({ of, length }: CutPiece): CutPiece[] {
  const whole = Math.floor(length / STICK + 1e-9);
  const rest = length - whole * STICK;
  const sticks = Array.from({ length: whole }, () => ({ of, length: STICK }));
  return rest > 1e-9 ? [...sticks, { of, length: rest }] : sticks;
}

/** One coil where it holds all; else from the put-up that buys the fewest feet; those that cannot are not tried. */
function onReels(spec: string, pieces: readonly CutPiece[], waste: number): CutGroup {
  const longest = pieces.reduce((most, { length }) => Math.max(most, length), 0);
  const feet = sumOf(pieces) * (1 + waste);
  const coil = COILS.find((length) => length >= feet);
  if (coil !== undefined) return closed('conductor', spec, coil, pieces, 0, waste);
  const least = (putUp: number): number => putUp * Math.ceil(feet / putUp - 1e-9);
  const fitting = PUT_UPS.filter((putUp) => putUp >= longest).sort((a, b) => least(a) - least(b) || a - b);
  let best: CutGroup | null = null;
  for (const putUp of fitting.length > 0 ? fitting : [PUT_UPS.at(-1)!]) {
    if (best !== null && least(putUp) >= best.bought) continue;
    const one = closed('conductor', spec, putUp, pieces, 0, waste);
    if (best === null || one.bought < best.bought) best = one;
  }
  return best!;
}

const sumOf = (pieces: readonly CutPiece[]): number => pieces.reduce((sum, { length }) => sum + length, 0);

/** Pieces cut from one stock, with what is spare, bought and left. */
function closed(
  item: CutGroup['item'],
  spec: string,
  stock: number,
  all: readonly CutPiece[],
  kerf: number,
  waste: number,
): CutGroup {
  const pieces = all.filter(({ length }) => length <= stock);
  const toLength = all
    .filter(({ length }) => length > stock)
    .map((piece) => ({ ...piece, ordered: Math.ceil(piece.length * (1 + waste) - 1e-9) }));
  const feet = sumOf(pieces);
  const planned = kept(() => (stock === 0 ? { stocks: [], bound: 0 } : cutFrom(stock, pieces, kerf)));
  const needed = stock === 0 ? 0 : Math.ceil((feet * (1 + waste)) / stock - 1e-9);
  // Where plain fitting needs no more than the waste asks for, no cutting plan changes what is bought.
  const isSettled = stock === 0 || fitted(stock, pieces, kerf) <= needed;
  const count = isSettled ? needed : Math.max(needed, planned().stocks.length);
  const bought = stock * count + toLength.reduce((sum, { ordered }) => sum + ordered, 0);
  return {
    item,
    spec,
    stock,
    count,
    toLength,
    bought,
    left: bought - feet - sumOf(toLength),
    get stocks() {
      return planned().stocks;
    },
    get bound() {
      return planned().bound;
    },
    get spare() {
      return count - planned().stocks.length;
    },
  };
}

/** More pieces than this are fitted and no better plan is looked for. */
const MOST_SEARCHED = 400;
/** Some tenth of a second: what is not proved by then stands beside its bound. */
const STEPS = 40_000_000;

/** Pieces that are as long as the stock, and the rest. */
function byLength(stock: number, pieces: readonly CutPiece[]) {
  const isWhole = ({ length }: CutPiece): boolean => length >= stock - 1e-9;
  return { whole: pieces.filter(isWhole), parts: pieces.filter((piece) => !isWhole(piece)) };
}

/** How many stocks hold the pieces as they are fitted, the longest first: no plan takes more. */
function fitted(stock: number, pieces: readonly CutPiece[], kerf: number): number {
  const { whole, parts } = byLength(stock, pieces);
  const lengths = parts.map(({ length }) => length);
  const count = parts.length > MOST_SEARCHED ? fitMany(stock, lengths, kerf).length : fitCut(stock, lengths, kerf);
  return whole.length + count;
}

function cutFrom(stock: number, pieces: readonly CutPiece[], kerf: number): Pick<CutGroup, 'stocks' | 'bound'> {
  const { whole, parts } = byLength(stock, pieces);
  const lengths = parts.map(({ length }) => length);
  const wholes = whole.map((piece): CutStock => ({ pieces: [piece], offcut: 0 }));
  if (parts.length > MOST_SEARCHED) {
    const fitted = fitMany(stock, lengths, kerf).map((places) =>
      stockOf(
        stock,
        places.map((place) => parts[place]!),
        kerf,
      ),
    );
    const bound = Math.ceil(lengths.reduce((sum, one) => sum + one, 0) / stock - 1e-9);
    return { stocks: [...wholes, ...fitted], bound: wholes.length + bound };
  }
  const { plan, bound } = cut({ stock, pieces: lengths, kerf, steps: STEPS });
  const piles = new Map<number, CutPiece[]>();
  for (const piece of parts) {
    addTo(piles, piece.length, piece);
  }
  const cuts = plan.map((own) =>
    stockOf(
      stock,
      own.map((length) => piles.get(length)!.shift()!),
      kerf,
    ),
  );
  return { stocks: [...wholes, ...cuts], bound: wholes.length + bound };
}

function stockOf(stock: number, pieces: readonly CutPiece[], kerf: number): CutStock {
  const used = sumOf(pieces) + kerf * Math.max(0, pieces.length - 1);
  return { pieces, offcut: Math.max(0, stock - used) };
}
