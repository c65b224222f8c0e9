import { expect, test } from 'vitest';
import { toSite } from '../../../../../routing/site/to-site.ts';
import { SMALL } from '../../../../web/document/small-site.ts';
import { drawnSheets } from '../drawn-sheets.ts';

test('keep-outs and aisles that were given a name have it along their longest edge, numbered ones have none', async () => {
  const strip = (y: number): [number, number][] => [
    [-30, y],
    [60, y],
    [60, y + 1],
    [-30, y + 1],
  ];
  const site = toSite({
    ...SMALL,
    drawings: { sheets: ['plan'] },
    keepouts: [
      { id: 'PROPERTY-LINE', outline: strip(40), blocks: ['equipment'] },
      { id: 'K7', outline: strip(50), blocks: ['equipment'] },
    ],
    aisles: [
      { id: 'Ramp_north', outline: strip(-30) },
      { id: 'A3', outline: strip(-40) },
    ],
  });
  const [sheet] = await drawnSheets(site, 'ANSI D', (key) => key === 'plan');
  const words = sheet!.texts.map(({ text }) => text);
  expect(words.filter((text) => text === 'PROPERTY LINE')).toHaveLength(1);
  expect(words.filter((text) => text === 'RAMP NORTH')).toHaveLength(1);
  for (const id of ['K7', 'A3', 'K07']) expect(words).not.toContain(id);
  // It lies along its own line: level, and nearer to it than a letter is high twice over.
  const name = sheet!.texts.find(({ text }) => text === 'PROPERTY LINE')!;
  const edges = sheet!.strokes.filter(({ layer }) => layer === 'keepouts').flatMap(({ points }) => points);
  const [[, low], , [, high]] = name.corners as [[number, number], unknown, [number, number]];
  expect(Math.min(...edges.map(([, y]) => Math.min(Math.abs(y - low), Math.abs(y - high))))).toBeLessThan(8);
});
