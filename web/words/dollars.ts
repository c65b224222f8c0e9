const FORM = new Intl.NumberFormat('en-US', { style: 'currency', currency: 'USD' });

/** `$1,234.50`. */
export const dollars = (value: number): string => FORM.format(value);
