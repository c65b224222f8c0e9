import { addTo } from '../../../routing/lists/grouping.ts';
import type { Drop, Point3, Site } from '../../../routing/site/site.ts';
import { cordsOf } from '../../plan/margins.ts';
import type { UncountedPlan } from '../../plan/plan-shape.ts';
import { cordAtRest, cordOut } from '../cord-shape.ts';
import { type CutView, isSeen } from './cut.ts';
import { rectangle, type SectionShape } from './shape.ts';

/** A drop within this of the cut is at it, though it hangs a little before it, feet. */
export const AT_CUT = 1;
/** Half a box, and a retractor, feet. Common practice, no source. */
const HALF_BOX = 0.25;
const RETRACTOR = 0.35;

/** Drops that are seen, the nearest to the cut last. */
export const dropsSeen = ({ drops }: Site, view: CutView): readonly Drop[] =>
  drops
    .filter(({ box, retractor }) => isSeen(retractor ?? box, view, AT_CUT))
    .sort((a, b) => Math.abs(view.away(b.retractor ?? b.box)) - Math.abs(view.away(a.retractor ?? a.box)));

/** Boxes, retractors and pull points that a cut shows, with the cords of drops at rest and out to their inlets. */
export function cutDrops(site: Site, plan: UncountedPlan, view: CutView): readonly SectionShape[] {
  const flat = (at: Point3): readonly [number, number] => [view.across(at), at[2]];
  const chargers = new Map<string, string[]>();
  for (const { id, drop } of site.chargers) addTo(chargers, drop, id);
  const box = (id: string, at: Point3, part: 'box' | 'pull point'): SectionShape => {
    const [u, z] = flat(at);
    const away = Math.max(0, view.away(at));
    const points = rectangle(u - HALF_BOX, u + HALF_BOX, z - HALF_BOX, z + HALF_BOX);
    return { kind: 'outline', part, id, isCut: Math.abs(view.away(at)) <= AT_CUT, away, points };
  };
  const drops = dropsSeen(site, view).flatMap((drop): SectionShape[] => {
    const { id } = drop;
    const from = drop.retractor ?? drop.box;
    const isCut = Math.abs(view.away(from)) <= AT_CUT;
    const common = { id, isCut, away: Math.max(0, view.away(from)) };
    const rest = cordAtRest(drop, site.rules);
    const out = (chargers.get(id) ?? [])
      .flatMap((charger) => cordsOf(plan, site, charger))
      .map((reach) => cordOut(drop, site.rules, reach))
      .filter((path) => path.length > 1);
    return [
      ...(rest ? [{ ...common, kind: 'line', part: 'cord at rest', points: rest.map(flat) } as const] : []),
      ...out.map((path) => ({ ...common, kind: 'line', part: 'cord out', points: path.map(flat) }) as const),
      box(id, drop.box, 'box'),
      ...(drop.retractor
        ? [
            { ...common, kind: 'line', part: 'rod', points: [flat(drop.box), flat(drop.retractor)] } as const,
            {
              ...common,
              kind: 'round',
              part: 'retractor',
              at: flat(drop.retractor),
              radius: RETRACTOR,
              elevation: drop.retractor[2],
            } as const,
          ]
        : []),
    ];
  });
  const pullpoints = site.pullpoints.filter(({ at }) => isSeen(at, view, AT_CUT));
  return [...pullpoints.map(({ id, at }) => box(id, at, 'pull point')), ...drops];
}
