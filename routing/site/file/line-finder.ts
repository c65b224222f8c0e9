/** A place in a text as an editor shows it; both count from 1. */
export interface TextPlace {
  readonly line: number;
  readonly column: number;
}

/** Tells where the characters of a text stand. Its lines are found once, at the first question. */
export function lineFinder(text: string): (at: number) => TextPlace {
  let starts: number[] | undefined;
  return (at) => {
    starts ??= [0, ...Array.from(text.matchAll(/\r\n|\r|\n/g), (end) => end.index + end[0].length)];
    let low = 0;
    for (let high = starts.length; high - low > 1; ) {
      const middle = (low + high) >> 1;
      if ((starts[middle] ?? 0) <= at) low = middle;
      else high = middle;
    }
    return { line: low + 1, column: at - (starts[low] ?? 0) + 1 };
  };
}
