/** `Lot`, `Lot, alternative 2`, `Lot, alternative 3`: the next that none of the names taken is. */
export function alternativeName(name: string, taken: readonly string[]): string {
  const [, plain = name] = /^(.*), alternative \d+$/.exec(name) ?? [];
  const names = new Set(taken);
  let number = 2;
  while (names.has(`${plain}, alternative ${number}`)) number += 1;
  return `${plain}, alternative ${number}`;
}
