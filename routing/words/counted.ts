/** A count with its noun: `1 charger`, `2 chargers`. A plural that is not the noun with an s is given. */
export const counted = (count: number, one: string, many = `${one}s`): string => `${count} ${count === 1 ? one : many}`;
