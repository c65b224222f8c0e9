/** Whole numbers from small to large, each once, with what follows on drawn together: `3, 5-9`. */
export function rangesOf(numbers: readonly number[]): string {
  const parts: [from: number, to: number][] = [];
  for (const number of numbers) {
    const last = parts.at(-1);
    if (last && number === last[1] + 1) last[1] = number;
    else parts.push([number, number]);
  }
  return parts
    .map(([from, to]) => (from === to ? `${from}` : to === from + 1 ? `${from}, ${to}` : `${from}-${to}`))
    .join(', ');
}
