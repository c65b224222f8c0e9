import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';

type Rgb = readonly [number, number, number];

/**
 * How colors look without one kind of cone: Machado, Oliveira and Fernandes, "A Physiologically-based Model for
 * Simulation of Color Vision Deficiency", IEEE TVCG 15(6), 2009, severity 1.0, on linear sRGB. From memory, and the
 * same in several public programs. Without color at all: luminance alone (IEC 61966-2-1).
 */
const VISIONS: Readonly<Record<string, readonly [Rgb, Rgb, Rgb]>> = {
  usual: [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ],
  protanope: [
    [0.152286, 1.052583, -0.204868],
    [0.114503, 0.786281, 0.099216],
    [-0.003882, -0.048116, 1.051998],
  ],
  deuteranope: [
    [0.367322, 0.860646, -0.227968],
    [0.280085, 0.672501, 0.047413],
    [-0.01182, 0.04294, 0.968881],
  ],
  tritanope: [
    [1.255528, -0.076749, -0.178779],
    [-0.078411, 0.930809, 0.147602],
    [0.004733, 0.691367, 0.3039],
  ],
  'without color': [
    [0.2126, 0.7152, 0.0722],
    [0.2126, 0.7152, 0.0722],
    [0.2126, 0.7152, 0.0722],
  ],
};

const sheet = readFileSync('web/styles/tokens.css', 'utf8');
const [LIGHT, DARK] = [sheet.split(':root[data-theme')[0]!, sheet.split(':root[data-theme')[1]!];

function colorIn(theme: string, name: string): Rgb {
  const hex = new RegExp(`--${name}: #([0-9a-f]{6});`).exec(theme)?.[1];
  if (!hex) throw new Error(`no color ${name}`);
  const linear = (at: number): number => {
    const value = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
    return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
  };
  return [linear(0), linear(2), linear(4)];
}

const seen = (vision: string, color: Rgb): Rgb =>
  VISIONS[vision]!.map((row) =>
    Math.min(1, Math.max(0, row[0] * color[0] + row[1] * color[1] + row[2] * color[2])),
  ) as unknown as Rgb;

const luminance = ([r, g, b]: Rgb): number => 0.2126 * r + 0.7152 * g + 0.0722 * b;

/** CIE 1976 L*a*b* under D65. */
function lab([r, g, b]: Rgb): Rgb {
  const f = (t: number): number => (t > 216 / 24389 ? Math.cbrt(t) : (24389 / 27 / 116) * t + 16 / 116);
  const x = f((0.4124 * r + 0.3576 * g + 0.1805 * b) / 0.95047);
  const y = f(0.2126 * r + 0.7152 * g + 0.0722 * b);
  const z = f((0.0193 * r + 0.1192 * g + 0.9505 * b) / 1.08883);
  return [116 * y - 16, 500 * (x - y), 200 * (y - z)];
}

function apart(a: Rgb, b: Rgb): number {
  const [p, q] = [lab(a), lab(b)];
  return Math.hypot(p[0] - q[0], p[1] - q[1], p[2] - q[2]);
}

/** WCAG 2 contrast ratio. */
function contrast(a: Rgb, b: Rgb): number {
  const [high, low] = [luminance(a), luminance(b)].sort((p, q) => q - p) as [number, number];
  return (high + 0.05) / (low + 0.05);
}

const cases = Object.keys(VISIONS).flatMap((vision) => [
  [vision, 'light', LIGHT] as const,
  [vision, 'dark', DARK] as const,
]);
const STEPS = ['cover-3', 'cover-2', 'cover-1', 'cover-0'];

test('the visions leave white white and gray gray, as the model says', () => {
  for (const row of Object.values(VISIONS).flat()) expect(row[0] + row[1] + row[2]).toBeCloseTo(1, 5);
});

test.each(cases)(
  '%s, %s: each step of coverage stands out more from the paper than the one before',
  (vision, _, theme) => {
    const paper = luminance(seen(vision, colorIn(theme, 'paper')));
    const away = STEPS.map((step) => Math.abs(luminance(seen(vision, colorIn(theme, step))) - paper));
    expect(away).toEqual([...away].sort((a, b) => a - b));
  },
);

// A difference of 2.3 in L*a*b* is just noticeable (Mahy 1994, from memory); five times that is told across a board.
test.each(cases)('%s, %s: any two steps of coverage are told apart', (vision, _, theme) => {
  for (const [i, step] of STEPS.entries())
    for (const other of STEPS.slice(i + 1)) {
      const difference = apart(seen(vision, colorIn(theme, step)), seen(vision, colorIn(theme, other)));
      expect(difference, `${step} and ${other}`).toBeGreaterThan(11.5);
    }
});

test.each(cases)('%s, %s: the lettering and the lines on a step are read against it', (vision, _, theme) => {
  for (const [step, on] of [
    ['cover-3', 'cover-on-soft'],
    ['cover-2', 'cover-on-soft'],
    ['cover-1', 'cover-on-strong'],
    ['cover-0', 'cover-on-strong'],
  ] as const) {
    const ratio = contrast(seen(vision, colorIn(theme, step)), seen(vision, colorIn(theme, on)));
    expect(ratio, step).toBeGreaterThan(4.5);
  }
});

// WCAG 2.2, 1.4.11: 3 to 1 for what is needed to read a figure. Which bar fails is told by its side and its hatching.
test.each(cases)(
  '%s, %s: the bars of the margins and their center marks stand out from the paper',
  (vision, _, theme) => {
    const paper = seen(vision, colorIn(theme, 'paper'));
    for (const name of ['pass', 'fail', 'warn', 'ink'])
      expect(contrast(seen(vision, colorIn(theme, name)), paper), name).toBeGreaterThan(3);
  },
);
