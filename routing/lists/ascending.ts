/** Lists up to this long, as most are, are put in order by hand: a comparison that is called costs more. */
const SHORT = 24;

/** Puts the numbers of a list in ascending order, in place; returns the list. */
export function ascending(numbers: number[]): number[] {
  if (numbers.length > SHORT) return numbers.sort((a, b) => a - b);
  for (let i = 1; i < numbers.length; i++) {
    const number = numbers[i]!;
    let at = i;
    for (; at > 0 && numbers[at - 1]! > number; at--) numbers[at] = numbers[at - 1]!;
    numbers[at] = number;
  }
  return numbers;
}
