/** Conductor sizes from the smallest, AWG then kcmil. */
export const CONDUCTOR_SIZES: readonly string[] =
  '18 16 14 12 10 8 6 4 3 2 1 1/0 2/0 3/0 4/0 250 300 350 400 500 600 700 750 800 900 1000 1250 1500 1750 2000'.split(
    ' ',
  );

const places: ReadonlyMap<string, number> = new Map(CONDUCTOR_SIZES.map((size, place) => [size, place]));

/** True for a size as the tables write it: `"14"`, `"1/0"`, `"250"`. */
export const isConductorSize = (text: string): boolean => places.has(text);

function placeOf(size: string): number {
  const place = places.get(size);
  if (place === undefined) throw new RangeError(`${JSON.stringify(size)} is not a conductor size`);
  return place;
}

/** Negative where `a` is the smaller conductor, 0 where they are equal. */
export const compareSizes = (a: string, b: string): number => placeOf(a) - placeOf(b);

/** The sizes from `size` up, itself first. */
export const sizesUpFrom = (size: string): readonly string[] => CONDUCTOR_SIZES.slice(placeOf(size));

/** Trade sizes of raceways from the smallest. */
const TRADE_SIZES: readonly string[] = '3/8 1/2 3/4 1 1-1/4 1-1/2 2 2-1/2 3 3-1/2 4 5 6'.split(' ');

function inchesOf(tradeSize: string): number {
  return tradeSize
    .split('-')
    .map((part) => {
      const [top = Number.NaN, bottom = 1] = part.split('/').map(Number);
      return top / bottom;
    })
    .reduce((sum, part) => sum + part, 0);
}

const inchesByTradeSize: ReadonlyMap<string, number> = new Map(TRADE_SIZES.map((size) => [size, inchesOf(size)]));

/** True for a trade size as the tables write it: `"3/4"`, `"1-1/4"`. */
export const isTradeSize = (text: string): boolean => inchesByTradeSize.has(text);

/** The number that a trade size stands for: `"1-1/4"` is 1.25. */
export function tradeSizeInches(tradeSize: string): number {
  const inches = inchesByTradeSize.get(tradeSize);
  if (inches === undefined) throw new RangeError(`${JSON.stringify(tradeSize)} is not a trade size`);
  return inches;
}

/** The trade size of a number of inches; undefined where there is none. */
export const tradeSizeOf = (inches: number): string | undefined =>
  TRADE_SIZES.find((tradeSize) => inchesByTradeSize.get(tradeSize) === inches);
