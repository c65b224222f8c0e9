/** A value for the eye with its unit, six significant figures: `measured(26.6666667, 'A')` is `"26.6667 A"`. */
export const measured = (value: number, unit: string): string => `${Number(value.toPrecision(6))} ${unit}`;
