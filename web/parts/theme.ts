/** By day, by night, and in the sun, where every word stands out at seven to one or more. */
export const THEMES = ['light', 'dark', 'sunlight'] as const;
export type Theme = (typeof THEMES)[number];

const KEY = 'overrow.theme';

/** The theme that a person chose, else the one that the machine is set to; put on the page at once. */
export function startTheme(): Theme {
  const chosen = quietly(() => localStorage.getItem(KEY));
  const theme =
    THEMES.find((each) => each === chosen) ?? (matchMedia('(prefers-color-scheme: dark)').matches ? 'dark' : 'light');
  document.documentElement.dataset.theme = theme;
  return theme;
}

/** Puts a theme on the page and remembers it. */
export function setTheme(theme: Theme): void {
  document.documentElement.dataset.theme = theme;
  quietly(() => localStorage.setItem(KEY, theme));
}

// A browser set to keep nothing throws at the first touch; the theme then lasts as long as the page.
function quietly<T>(work: () => T): T | undefined {
  try {
    return work();
  } catch {
    return undefined;
  }
}
