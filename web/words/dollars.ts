const FORM = new Intl.NumberFormat('en-US', { style: 'currency', currency: 'USD' });
const WHOLE = new Intl.NumberFormat('en-US', { style: 'currency', currency: 'USD', maximumFractionDigits: 0 });

/** `$1,234.50`. */
export const dollars = (value: number): string => FORM.format(value);

/** `$1,235`, for a figure at a glance. */
export const wholeDollars = (value: number): string => WHOLE.format(value);
