import { kept } from '../../../routing/kept/kept.ts';
import type { BoardInk, InkName } from '../painting/ink.ts';

/** How much of a color stays on the ground under what is raised. */
const LEFT = 0.3;
const HEX = /^#[0-9a-f]{6}$/i;

/** The colors of the drawing, faded towards its paper; one that is not written in hexadecimal digits stays. */
export const paled = kept((ink: BoardInk): BoardInk => {
  const part = (color: string, at: number): number => Number.parseInt(color.slice(at, at + 2), 16);
  const faded = (color: string): string =>
    HEX.test(color) && HEX.test(ink.paper)
      ? `rgb(${[1, 3, 5].map((at) => Math.round(LEFT * part(color, at) + (1 - LEFT) * part(ink.paper, at))).join(' ')})`
      : color;
  return Object.fromEntries(Object.entries(ink).map(([name, color]) => [name, faded(color)])) as Record<
    InkName,
    string
  >;
});
