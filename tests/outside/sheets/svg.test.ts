import { beforeAll, describe, expect, test } from 'vitest';
import { raisedSvg } from '../../../calc/sheets/svg/raised-svg.ts';
import { FONTS } from './pdf/drawing-set.ts';
import { svgOf } from './pdf/lettered.ts';
import { nastyLot, plannedSample } from './planned-samples.ts';

/** Tags of well-formed markup in order; throws where they do not nest. A small reader, and not the writer's own. */
function tagsOf(markup: string): string[] {
  const open: string[] = [];
  const tags: string[] = [];
  const rest = markup
    .replace(/<\?xml[^?]*\?>/, '')
    .replace(
      /<(\/?)((?:[a-z]+:)?[A-Za-z]+)((?:\s+[\w:-]+="[^"<&]*(?:&[a-z0-9#]+;[^"<&]*)*")*)\s*(\/?)>/g,
      (_, close, name, _attributes, self) => {
        if (close) {
          if (open.pop() !== name) throw new Error(`</${name}> closes nothing`);
        } else {
          tags.push(name);
          if (!self) open.push(name);
        }
        return '';
      },
    );
  if (open.length > 0) throw new Error(`${open.join(', ')} left open`);
  if (/[<>]/.test(rest)) throw new Error(`stray markup: ${rest.slice(rest.search(/[<>]/), rest.search(/[<>]/) + 60)}`);
  return tags;
}

describe('the SVG', () => {
  const { site, planned } = plannedSample('library-lot');
  let markup = '';
  beforeAll(async () => {
    markup = await svgOf({ site, planned });
  });

  test('is well-formed, with a polygon for each stall', () => {
    const inside = /<g id="C-PKNG-STAL"[^>]*>([\s\S]*?)<\/g>/.exec(markup)?.[1] ?? '';
    expect(tagsOf(markup)[0]).toBe('svg');
    expect(inside.match(/<polygon /g)).toHaveLength(site.stalls.length);
  });
  test('turns y: north is up', () => {
    const inside = /<g id="C-PKNG-STAL"[^>]*>([\s\S]*?)<\/g>/.exec(markup)?.[1] ?? '';
    const tops = [...inside.matchAll(/points="([^"]+)"/g)].map(([, points = '']) =>
      Math.min(...points.split(' ').map((point) => Number(point.split(',')[1]))),
    );
    // S01 is north of S09.
    expect(tops[0]).toBeLessThan(tops[8] as number);
  });
  test('carries the cautions', () => {
    expect(markup).toContain('authority having jurisdiction');
  });
  test('takes names as text', async () => {
    const known = new Set(tagsOf(markup));
    const tags = tagsOf(await svgOf(nastyLot()));
    expect(tags.length).toBeGreaterThan(200);
    for (const tag of tags) expect(known).toContain(tag);
  });
  test('has its title, scale, scale bar, north, feeders, drops with their circuits and dimensions', () => {
    const head = /<g id="title">([\s\S]*?)<\/g>/.exec(markup)![1]!;
    expect(head).toContain(`>${site.name}</text>`);
    expect(head).toContain('Scale 8 px = 1 ft');
    const widths = [...head.matchAll(/<rect [^>]*width="([\d.]+)"/g)].map(([, width]) => Number(width));
    const [, most] = /text-anchor="middle"[^>]*>(\d+) ft</.exec(head)!;
    expect(widths.reduce((sum, width) => sum + width, 0)).toBeCloseTo(8 * Number(most), 6);
    expect(head).toContain('id="north"');
    for (const { id } of [...site.feeders, ...site.drops, ...site.equipment])
      expect(markup).toMatch(new RegExp(`>${id}[ ,<]`));
    expect(markup).toContain('>P1-1,3</text>');
    for (const [layer, stands] of [
      ['E-POWR-FEED', false],
      ['E-POWR-FEED-E', true],
    ] as const)
      expect(markup.includes(`<g id="${layer}"`)).toBe(
        site.feeders.some(({ length, existing = false }) => length !== undefined && existing === stands),
      );
    expect(markup).toMatch(/class="E-POWR-DIMS"|>\d+&#39; \d/);
  });

  test('has white under its words, and lines of its cautions that its page holds', () => {
    // Every figure of a dimension stands on white, drawn before it.
    const figures = [
      ...markup.matchAll(/(<polygon points="[^"]+" fill="#ffffff"\/>\n)?<text[^>]*>\d+&#39; [^<]*<\/text>/g),
    ];
    expect(figures.length).toBeGreaterThan(10);
    expect(figures.filter(([, white]) => white === undefined)).toHaveLength(0);
    holdsItsCautions(markup);
  });
});

/** Lines of the cautions, reckoned at as much a letter as sans-serif of 11 px takes on the mean (6 px), within the page. */
function holdsItsCautions(markup: string): void {
  const width = Number(/<svg [^>]*width="([\d.]+)"/.exec(markup)![1]);
  const height = Number(/<svg [^>]*height="([\d.]+)"/.exec(markup)![1]);
  const lines = [...markup.matchAll(/<text x="([\d.]+)" y="([\d.]+)"[^>]*font-size="11" fill="#20242c">([^<]{20,})</g)];
  expect(lines.map(([, , , words]) => words).join(' ')).toContain('Nothing here is a statement of compliance.');
  for (const [, x, y, words] of lines) {
    expect(Number(x) + 6 * words!.length).toBeLessThan(width);
    expect(Number(y)).toBeLessThan(height);
  }
}

test('the raised view has its title, scale, scale bar, north and cautions', async () => {
  const { site, planned } = plannedSample('library-pedestals');
  const markup = await raisedSvg(site, planned, { fonts: FONTS, date: '2026-11-25' });
  expect(tagsOf(markup)[0]).toBe('svg');
  for (const words of [`>${site.name}</text>`, 'Raised view', 'Scale 8 px = 1 ft', '2026-11-25', 'id="north"'])
    expect(markup).toContain(words);
  holdsItsCautions(markup);
});

/** Points of the lines on some layers of an SVG, pixels. */
const linesOn = (markup: string, layers: RegExp): readonly (readonly (readonly number[])[])[] =>
  [...markup.matchAll(/<g id="([^"]+)"[^>]*>([\s\S]*?)\n<\/g>/g)].flatMap(([, id, inside]) =>
    layers.test(id!)
      ? [...inside!.matchAll(/<(polygon|polyline) points="([^"]+)"\/>/g)].map(([, kind, points]) => {
          const all = points!.split(' ').map((point) => point.split(',').map(Number));
          return kind === 'polygon' ? [...all, all[0]!] : all;
        })
      : [],
  );

/** Whether a straight goes through a box, by sampling it each quarter of a pixel: another way than the sheets' own tests. */
function goesThrough([ax, ay]: readonly number[], [bx, by]: readonly number[], box: readonly number[]): boolean {
  const [left, high, right, low] = box as readonly [number, number, number, number];
  if (Math.max(ax!, bx!) < left || Math.min(ax!, bx!) > right) return false;
  if (Math.max(ay!, by!) < high || Math.min(ay!, by!) > low) return false;
  const steps = Math.ceil(Math.hypot(bx! - ax!, by! - ay!) * 4) + 1;
  return Array.from({ length: steps + 1 }, (_, i) => i / steps).some((t) => {
    const [x, y] = [ax! + t * (bx! - ax!), ay! + t * (by! - ay!)];
    return x > left && x < right && y > high && y < low;
  });
}

test.each(['library-lot', 'library-pedestals', 'fleet-yard', 'hospital-lot'] as const)(
  'in the raised view of the %s no name lies over a raceway, a cord, equipment or a column',
  async (name) => {
    const { site, planned } = plannedSample(name);
    const markup = await raisedSvg(site, planned, { fonts: FONTS, date: '2026-11-25' });
    const names = [
      ...markup.matchAll(
        /<text class="([^"]+)" x="([\d.]+)" y="([\d.]+)" textLength="([\d.]+)"[^>]*font-size="([\d.]+)"[^>]*>([^<]+)/g,
      ),
    ].map(([, , x, y, width, size, words]) => {
      const [left, low, up] = [Number(x), Number(y), 0.72 * Number(size)];
      return { words: words!, box: [left + 0.5, low - up + 0.5, left + Number(width) - 0.5, low - 0.5] };
    });
    for (const { id } of site.drops) expect(names.filter(({ words }) => words === id)).toHaveLength(1);
    const legs = linesOn(markup, /^(E-POWR-(CNDT|UGND|CORD|EQPM)|S-COLS$)/).flatMap((points) =>
      points.slice(1).map((to, i) => [points[i]!, to] as const),
    );
    expect(legs.length).toBeGreaterThan(site.drops.length);
    const over = names.filter(({ box }) => legs.some(([a, b]) => goesThrough(a, b, box)));
    expect(over.map(({ words }) => words)).toEqual([]);
  },
);
