/** The colors of the drawing, from the style sheet's variables, so that a theme is written in one place. */
const NAMES = {
  paper: '--paper',
  sheet: '--sheet',
  ink: '--ink',
  soft: '--ink-2',
  rule: '--rule',
  ruleStrong: '--rule-strong',
  existing: '--existing',
  existingFill: '--existing-fill',
  car: '--car',
  carEdge: '--car-edge',
  stripe: '--stripe',
  aisle: '--aisle',
  tube: '--tube',
  tubeEdge: '--tube-edge',
  hatch: '--hatch',
  pass: '--pass',
  warn: '--warn',
  fail: '--fail',
  chosen: '--row-chosen',
  cover0: '--cover-0',
  cover1: '--cover-1',
  cover2: '--cover-2',
  cover3: '--cover-3',
  coverOnStrong: '--cover-on-strong',
  coverOnSoft: '--cover-on-soft',
  black: '--line-black',
  red: '--line-red',
  blue: '--line-blue',
  brown: '--line-brown',
  orange: '--line-orange',
  yellow: '--line-yellow',
} as const;

export type InkName = keyof typeof NAMES;
export type BoardInk = Readonly<Record<InkName, string>>;

export function readInk(element: Element): BoardInk {
  const style = getComputedStyle(element);
  const ink: Partial<Record<InkName, string>> = {};
  for (const name of Object.keys(NAMES) as InkName[]) ink[name] = style.getPropertyValue(NAMES[name]).trim();
  return ink as BoardInk;
}

/** Pixels of the names on the drawing: on a large sheet they are lettered larger, as its symbols are. */
export const namePx = (scale: number): number => Math.round(Math.min(15, Math.max(12, 10.6 + scale * 0.14)) * 2) / 2;

/** The drawing's lettering; the face is the page's. */
export const lettering = (px: number, weight: 400 | 600 | 700 = 400): string =>
  `${weight} ${px}px Overpass, system-ui, sans-serif`;
