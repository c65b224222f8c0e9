/** A number to six decimals, so that a move by 0.1 leaves no tail of rounding in the file. */
export const tidy = (value: number): number => {
  const rounded = Math.round(value * 1e6) / 1e6;
  return Number.isFinite(rounded) ? rounded + 0 : value;
};
