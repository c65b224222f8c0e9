/** Dollars to the cent, halves up; what a double holds of `1.005` is not taken for less than a half cent. */
export const cents = (dollars: number): number => {
  const whole = Math.round(Number((Math.abs(dollars) * 100).toPrecision(15)));
  return whole === 0 ? 0 : (Math.sign(dollars) * whole) / 100;
};

/** Sum of amounts that are whole cents, to the cent. */
export const sumOf = (amounts: readonly number[]): number =>
  amounts.reduce((sum, dollars) => sum + Math.round(dollars * 100), 0) / 100;

/**
 * An amount dealt out by weights, each share whole cents and all together the amount: each is what the shares so far come
 * to less those before it. By equal parts where nothing has a weight.
 * Halves of a cent go up, as `cents` has it and as a spreadsheet does that works the same
 * shares.
 */
export function dealtOut(dollars: number, weights: readonly number[]): readonly number[] {
  const whole = weights.reduce((sum, weight) => sum + weight, 0);
  const all = Math.round(dollars * 100);
  let [so, dealt] = [0, 0];
  return weights.map((weight, i) => {
    so += whole > 0 ? weight : 1;
    const upTo =
      i === weights.length - 1 ? all : Math.round(100 * cents((dollars * so) / (whole > 0 ? whole : weights.length)));
    const share = upTo - dealt;
    dealt = upTo;
    return share / 100;
  });
}
