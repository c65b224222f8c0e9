import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';

const sheet = readFileSync('web/styles/tokens.css', 'utf8');
const sunlight = sheet.split(':root[data-theme="sunlight"]')[1]!;

/** Relative luminance of a color of the theme, as WCAG 2.2 defines it. */
function luminance(name: string): number {
  const hex = new RegExp(`--${name}: #([0-9a-f]{6});`).exec(sunlight)?.[1];
  if (!hex) throw new Error(`the sunlight theme has no color ${name}`);
  const part = (at: number): number => {
    const value = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
    return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
  };
  return 0.2126 * part(0) + 0.7152 * part(2) + 0.0722 * part(4);
}

const contrast = (a: string, b: string): number => {
  const [high, low] = [luminance(a), luminance(b)].sort((p, q) => q - p) as [number, number];
  return (high + 0.05) / (low + 0.05);
};

const GROUNDS = ['paper', 'sheet', 'raised', 'row-hover', 'row-chosen'] as const;

test('in the sun every word stands out from whatever it lies on at seven to one or more', () => {
  for (const word of ['ink', 'ink-2', 'pass', 'warn', 'fail'])
    for (const ground of GROUNDS) expect(contrast(word, ground), `${word} on ${ground}`).toBeGreaterThanOrEqual(7);
  for (const grade of ['pass', 'warn', 'fail'])
    for (const word of ['ink', grade])
      expect(contrast(word, `${grade}-wash`), `${word} on ${grade}-wash`).toBeGreaterThanOrEqual(7);
  // Edges of fields and buttons, which WCAG asks three to one of.
  for (const ground of GROUNDS) expect(contrast('rule-strong', ground)).toBeGreaterThanOrEqual(7);
});
