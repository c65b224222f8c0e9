import { type Obstacle, obstacleOf, spansInside } from '../../../routing/plane/obstacle.ts';
import { workingSpaceOf } from '../../../routing/site/place/working-space.ts';
import { AISLE_WORDS } from '../../../routing/site/schema/vocabulary.ts';
import type { Rules, Site } from '../../../routing/site/site.ts';
import { outlineOf, stallOutline } from '../../../routing/standing/outlines.ts';
import { tablesOf } from '../../tables/editions.ts';
import { leastWorkingSpace } from '../../tables/equipment-of.ts';
import type { CutView } from './cut.ts';
import type { ConduitInCut } from './cut-conduits.ts';
import type { GroundSpan, SectionShape, TrenchCut } from './shape.ts';

/** Parts narrower than this are corners that a cut grazes, feet. */
const LEAST = 0.5;

type Over = Pick<GroundSpan, 'clear'>;

/** The stalls and aisles that a cut goes over, from left to right, with what is lowest over each. */
export function groundSpans(site: Site, view: CutView, shapes: readonly SectionShape[]): readonly GroundSpan[] {
  const { clearHeight } = site.rules;
  const spans = (outline: Obstacle): readonly (readonly [number, number])[] =>
    spansInside(outline, view.left[0], view.left[1], view.right[0], view.right[1])
      .map(([from, to]) => [from * view.length, to * view.length] as const)
      .filter(([from, to]) => to - from >= LEAST);
  const over = (from: number, to: number): Over => ({ clear: lowestOver(shapes, from, to) });
  return [
    ...site.stalls.flatMap((stall) =>
      spans(stallOutline(stall)).map(([from, to]): GroundSpan => {
        const name = stall.label ?? stall.id;
        const asked = stall.use === 'van-accessible' ? clearHeight.van : clearHeight.stall;
        return { from, to, use: 'stall', name, asked, ...over(from, to) };
      }),
    ),
    ...site.aisles.flatMap((aisle) =>
      spans(outlineOf(aisle)).map(
        ([from, to]): GroundSpan => ({
          from,
          to,
          use: AISLE_WORDS[aisle.kind ?? 'drive'] as GroundSpan['use'],
          name: aisle.id,
          asked: askedOver(aisle.kind ?? 'drive', clearHeight),
          ...over(from, to),
        }),
      ),
    ),
    ...site.equipment.flatMap((one) => {
      const space = workingSpaceOf(one, leastWorkingSpace(tablesOf(site.rules)));
      return (space ? spans(obstacleOf(space)) : []).map(
        ([from, to]): GroundSpan => ({ from, to, use: 'working space', name: one.id, asked: null, clear: null }),
      );
    }),
  ].sort((a, b) => a.from - b.from || a.to - b.to);
}

const askedOver = (kind: 'drive' | 'fire' | 'walk' | 'access', clear: Rules['clearHeight']): number =>
  kind === 'walk' ? clear.walk : kind === 'access' ? clear.van : clear.aisle;

/** What stands on the ground, and cords that somebody has out, do not count as hanging over it. */
const HANGS: ReadonlySet<SectionShape['part']> = new Set([
  'member',
  'conduit',
  'raceway',
  'trapeze',
  'box',
  'retractor',
  'pull point',
]);
/** Lower than this, feet, it is no overhead work: a pedestal's box, a riser's foot. */
const OVERHEAD = 4.5;

/** A riser is not what one walks under. */
const isUpright = (shape: SectionShape): boolean =>
  shape.kind === 'line' &&
  Math.abs(shape.points.at(-1)![1] - shape.points[0]![1]) > Math.abs(shape.points.at(-1)![0] - shape.points[0]![0]);

function lowestOver(shapes: readonly SectionShape[], from: number, to: number): GroundSpan['clear'] {
  let lowest: GroundSpan['clear'] = null;
  const take = (across: number, height: number, under: string): void => {
    if (across < from || across > to || height < OVERHEAD) return;
    if (lowest === null || height < lowest.height) lowest = { height, under, across };
  };
  for (const shape of shapes) {
    if (!HANGS.has(shape.part) || isUpright(shape)) continue;
    const under = `${shape.part} ${shape.id}`;
    // Of what the file gives no size, the place that it gives; a conduit is as thick as it is.
    if (shape.kind === 'round')
      take(shape.at[0], shape.part === 'conduit' ? shape.at[1] - shape.radius : shape.elevation, under);
    else
      shape.points.forEach(([u, z], i) => {
        take(u, z, under);
        const next = shape.points[i + 1];
        // Where a slope enters or leaves the part.
        if (next)
          for (const edge of [from, to])
            if (u < edge !== next[0] < edge) take(edge, z + ((edge - u) / (next[0] - u)) * (next[1] - z), under);
      });
  }
  return lowest;
}

/** Beside and under raceways in a trench, feet. Common practice, no source. */
const BESIDE = 0.25;
const BEDDING = 0.25;
/** Raceways no farther apart lie in one trench, feet: as they are dug in the takeoff. */
const ONE_TRENCH = 1;

/** The trenches that a cut goes through: round raceways in the ground that lie near each other. */
export function trenchesAt(
  site: Site,
  bundles: readonly (readonly ConduitInCut[])[],
  shapes: readonly SectionShape[],
): readonly TrenchCut[] {
  const surfaces = new Map(site.raceways.map(({ id, surface = 'asphalt' }) => [id, surface]));
  const rounds = shapes.flatMap((shape) => (shape.kind === 'round' && shape.elevation < 0 ? [shape] : []));
  const open: { from: number; to: number; bottom: number; cover: number; ids: string[]; surface: string }[] = [];
  for (const { id, at, radius, elevation } of [...rounds].sort((a, b) => a.at[0] - b.at[0])) {
    const [from, to, bottom] = [at[0] - radius, at[0] + radius, at[1] - radius];
    const last = open.at(-1);
    const through = bundles.flat().find((one) => one.id === id);
    const surface = surfaceOf(through, site, surfaces);
    if (last && from - last.to <= ONE_TRENCH) {
      last.to = Math.max(last.to, to);
      last.bottom = Math.min(last.bottom, bottom);
      last.cover = Math.min(last.cover, -elevation);
      last.ids.push(id);
    } else open.push({ from, to, bottom, cover: -elevation, ids: [id], surface });
  }
  return open.map((one) => ({ ...one, from: one.from - BESIDE, to: one.to + BESIDE, bottom: one.bottom - BEDDING }));
}

/** What is over the raceway that goes through the cut there. */
function surfaceOf(through: ConduitInCut | undefined, site: Site, surfaces: ReadonlyMap<string, string>): string {
  if (!through) return 'asphalt';
  const own = surfaces.get(through.id);
  if (own) return own;
  const [x, y] = through.at;
  for (const { path, place, surface = 'asphalt' } of site.raceways) {
    if (place !== 'underground') continue;
    for (let i = 1; i < path.length; i++) {
      const [a, b] = [path[i - 1]!, path[i]!];
      const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
      const square = dx * dx + dy * dy;
      const t = square === 0 ? 0 : Math.min(1, Math.max(0, ((x - a[0]) * dx + (y - a[1]) * dy) / square));
      if (Math.hypot(a[0] + t * dx - x, a[1] + t * dy - y) < 0.3) return surface;
    }
  }
  return 'asphalt';
}
