import loadHighs from 'highs';
import { dropHeadroom } from '../../../routing/checks/drops/clear-height.ts';
import { dropFindings } from '../../../routing/checks/drops/drop-findings.ts';
import { coverer } from '../../../routing/propose/drops/stalls-from-place.ts';
import { steadyNumbers } from '../../../routing/propose/shared/steady-numbers.ts';
import { nowOf } from '../../../routing/reach/kept-reach.ts';
import { stallRectangle } from '../../../routing/site/place/stall-rectangle.ts';
import type { Drop, Keepout, Site, SiteFile, Stall } from '../../../routing/site/site.ts';

/** A seeded lot without steel: five to sixteen stalls in one row or two head to head, square or slanted, and a keep-out. */
export function randomLot(seed: number): SiteFile {
  const random = steadyNumbers(Math.imul(seed, 2_654_435_761));
  const between = (low: number, high: number): number => low + (high - low) * random();
  const rows = random() < 0.3 ? 1 : 2;
  const along = Math.floor(between(5, 17) / rows);
  const angle = random() < 0.5 ? 90 : Math.round(between(60, 90));
  const depth = 18;
  const pitch = 9 / Math.sin((angle * Math.PI) / 180);
  const deep = depth * Math.sin((angle * Math.PI) / 180);
  const lean = depth * Math.cos((angle * Math.PI) / 180);
  const stalls = Array.from({ length: rows * along }, (_, i): Stall => {
    const isFar = i >= along;
    const x = (i % along) * pitch;
    return {
      id: `S${i + 1}`,
      at: isFar ? [x + 2 * lean, 2 * deep] : [x, 0],
      width: 9,
      depth,
      heading: isFar ? angle + 180 : angle,
      ...(random() < 0.2 && { vehicle: random() < 0.5 ? 'pickup' : 'compact' }),
    };
  });
  const [kx, ky, w] = [between(0, along * pitch), between(0, rows * deep), between(4, 12)];
  const keepouts: Keepout[] = [
    {
      id: 'K1',
      outline: [
        [kx, ky],
        [kx + w, ky],
        [kx + w, ky + 5],
        [kx, ky + 5],
      ],
      blocks: ['drop'],
    },
  ];
  const coverage = [0.75, 0.8, 0.9, 1][Math.floor(random() * 4)]!;
  return {
    format: 'overrow/site',
    version: 1,
    units: 'ft',
    name: `seed ${seed}`,
    stalls,
    ...(random() < 0.6 && { keepouts }),
    rules: { vehicle: random() < 0.5 ? 'sedan' : 'suv', coverage },
  };
}

/** The stalls that a usual drop reaches, from each place of a grid over the lot at which one may hang. Feet. */
export function reachedOnGrid(
  site: Site,
  step: number,
  elevation: number,
  cord: number,
): readonly (readonly number[])[] {
  const { field, shared } = nowOf(site);
  const reached = coverer(
    site,
    site.stalls.map((_, i) => i),
  );
  const corners = site.stalls.flatMap((stall) => [...stallRectangle(stall)]);
  const [xs, ys] = [corners.map(([x]) => x), corners.map(([, y]) => y)];
  const sets = new Map<string, readonly number[]>();
  for (let x = Math.floor(Math.min(...xs)) - 4; x <= Math.max(...xs) + 4; x += step)
    for (let y = Math.floor(Math.min(...ys)) - 4; y <= Math.max(...ys) + 4; y += step) {
      const drop: Drop = { id: '', box: [x, y, elevation], retractor: [x, y, elevation - 1], cord };
      if (dropFindings(drop, field, shared).length + dropHeadroom(drop, { shared, stalls: site.stalls }).length > 0)
        continue;
      const own = reached(drop);
      if (own.length > 0) sets.set(own.join(' '), own);
    }
  return [...sets.values()];
}

/**
 * The fewest places that serve some stalls with no more than so many each, by an integer program of an own making for a
 * solver that is not ours: a place is taken or not, and each stall is dealt to one that is.
 */
export async function fewestByProgram(
  stalls: readonly number[],
  sets: readonly (readonly number[])[],
  holds: number,
): Promise<number> {
  const highs = await loadHighs();
  // A place within another is no choice; as many copies as the stalls that it reaches ask for stand at one place.
  const widest = sets.filter(
    (own, i) => !sets.some((o, j) => i !== j && o.length > own.length && own.every((s) => o.includes(s))),
  );
  const copies = widest.flatMap((own) => Array.from({ length: Math.ceil(own.length / holds) }, () => own));
  const x = (s: number, p: number): string => `x${s}_${p}`;
  const rows: string[] = [];
  for (const s of stalls)
    rows.push(`${copies.flatMap((own, p) => (own.includes(s) ? [x(s, p)] : [])).join(' + ')} = 1`);
  for (const [p, own] of copies.entries()) {
    rows.push(`${own.map((s) => x(s, p)).join(' + ')} - ${holds} y${p} <= 0`);
    for (const s of own) rows.push(`${x(s, p)} - y${p} <= 0`);
  }
  const program = [
    'Minimize',
    ` obj: ${copies.map((_, p) => `y${p}`).join(' + ')}`,
    'Subject To',
    ...rows.map((row, i) => ` c${i}: ${row}`),
    'Binary',
    ` ${copies.flatMap((own, p) => [`y${p}`, ...own.map((s) => x(s, p))]).join(' ')}`,
    'End',
  ].join('\n');
  const { Status, ObjectiveValue } = highs.solve(program);
  if (Status !== 'Optimal') throw new RangeError(`the program ends as ${Status}`);
  return Math.round(ObjectiveValue);
}
