type SheetsNamed<File> =
  | { readonly ok: true; readonly files: readonly File[] }
  | { readonly ok: false; readonly reason: string };

/** The files whose names end as is wished: `pdf`, `runs.csv`; the one alone that has all of its name from the wish: `svg`. */
export function sheetsNamed<File extends { readonly ending: string }>(
  only: string | undefined,
  all: readonly File[],
): SheetsNamed<File> {
  if (only === undefined) return { ok: true, files: all };
  const wishes = only.split(',').map((wish) => wish.trim().replace(/^\./, ''));
  const whole = new Set(all.map(({ ending }) => ending));
  const ends = ({ ending }: File, wish: string): boolean =>
    whole.has(`.${wish}`) ? ending === `.${wish}` : ending.endsWith(`.${wish}`);
  const stray = wishes.find((wish) => wish === '' || !all.some((file) => ends(file, wish)));
  if (stray !== undefined)
    return {
      ok: false,
      reason: `--only: no sheet ends in "${stray}"; the sheets are ${all.map(({ ending }) => ending.slice(1)).join(', ')}`,
    };
  return { ok: true, files: all.filter((file) => wishes.some((wish) => ends(file, wish))) };
}
