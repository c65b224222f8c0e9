/** A force or weight: to the tenth under 100 lb, else to the pound. */
export const pounds = (value: number): string =>
  `${value.toLocaleString('en-US', { maximumFractionDigits: Math.abs(value) < 100 ? 1 : 0 })} lb`;
