interface Labelled {
  readonly doc: string;
  readonly name: string;
  readonly at: number;
}

const WHEN = new Intl.DateTimeFormat('en-US', { month: 'short', day: 'numeric', hour: 'numeric', minute: '2-digit' });
const LONG_AGO = new Intl.DateTimeFormat('en-US', { year: 'numeric', month: 'short', day: 'numeric' });
const YEAR_MS = 300 * 86_400_000;

/** When a site was last written, in words; the year where it is long ago. */
export const whenWords = (at: number, now: number): string =>
  at === 0 ? 'date not known' : (Math.abs(now - at) > YEAR_MS ? LONG_AGO : WHEN).format(at);

/** `Nov 29, 2026`. */
export const dayWords = (at: number): string => LONG_AGO.format(at);

/** A label for each site, no two alike: its name, with the date where others have the same, and a number where need be. */
export function siteLabels(sites: readonly Labelled[], now: number): ReadonlyMap<string, string> {
  const labels = new Map<string, string>();
  const used = new Set<string>();
  for (const { doc, name, at } of sites) {
    const alone = sites.filter((other) => other.name === name).length === 1;
    const plain = alone ? name : `${name}, ${whenWords(at, now)}`;
    let label = plain;
    for (let number = 2; used.has(label); number++) label = `${plain} (${number})`;
    used.add(label);
    labels.set(doc, label);
  }
  return labels;
}
