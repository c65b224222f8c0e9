import { kept } from '../../routing/kept/kept.ts';
import { levelOver } from '../../routing/network/support/held-parts.ts';
import { holderOf } from '../../routing/network/support/holders.ts';
import { steelOf } from '../../routing/network/support/steel-near.ts';
import type { ElementList } from '../../routing/site/kinds/kinds.ts';
import type { Equipment, Point3, Site } from '../../routing/site/site.ts';
import { designOf } from '../branches/design.ts';
import type { Plan } from '../plan/plan-shape.ts';
import { feederLays } from '../steel/feeder-lays.ts';
import { supportsOf } from '../steel/kept-supports.ts';
import type { RacewaySupports } from '../steel/raceway-supports.ts';
import { feederConduits } from '../supply/feeders/feeder-conduit.ts';

/** What of an element is set out. */
export const POINT_PARTS = ['box', 'retractor', 'at', 'entry', 'corner', 'support'] as const;
export type PointPart = (typeof POINT_PARTS)[number];

/** A place that the field sets out: of a box, a retractor, a pull point, a support line, a column core or a pad. */
export interface SetOutPoint {
  /** The element: of a support line, the raceway. */
  readonly of: string;
  readonly list: Extract<ElementList, 'drops' | 'pullpoints' | 'columns' | 'equipment' | 'raceways'>;
  readonly part: PointPart;
  /** Which of several alike, from 1: the corner of a pad, the support of a raceway. */
  readonly number?: number;
  /** "D05 box", "R1 support 3". */
  readonly name: string;
  /** Feet. */
  readonly at: Point3;
  /** The steel it hangs from, and how far under that it is, feet; null where nothing drawn holds it. */
  readonly steel: { readonly member: string; readonly under: number } | null;
}

/** Every place that is set out, kind by kind in the order of the site. */
export const setOutPoints = kept((site: Site, plan: Pick<Plan, 'branches'>): readonly SetOutPoint[] => [
  ...dropPoints(site),
  ...site.pullpoints.map(({ id, at }) => point(site, 'pullpoints', id, 'at', at)),
  ...supportPoints(site, plan),
  ...site.columns.map(
    ({ id, at: [x, y] }): SetOutPoint => ({
      ...point(site, 'columns', id, 'at', [x, y, 0]),
      name: `${id} core`,
      steel: null,
    }),
  ),
  ...site.equipment.flatMap((equipment) => padPoints(site, equipment)),
]);

function point(
  site: Site,
  list: SetOutPoint['list'],
  of: string,
  part: PointPart,
  at: Point3,
  number?: number,
): SetOutPoint {
  const name = part === 'at' ? of : `${of} ${part}${number === undefined ? '' : ` ${number}`}`;
  return { of, list, part, ...(number !== undefined && { number }), name, at, steel: steelAbove(site, at) };
}

function steelAbove({ members, rules }: Site, at: Point3): SetOutPoint['steel'] {
  if (members.length === 0 || at[2] <= 0) return null;
  const member = holderOf(at, steelOf(members), rules.hangReach);
  return member && { member: member.id, under: levelOver(member, at) - at[2] };
}

const dropPoints = (site: Site): readonly SetOutPoint[] =>
  site.drops.flatMap(({ id, box, retractor }) => [
    point(site, 'drops', id, 'box', box),
    ...(retractor ? [point(site, 'drops', id, 'retractor', retractor)] : []),
  ]);

/** The supports of all conduits that hang along the raceways of a lot. */
export function lotSupports(site: Site, { branches }: Pick<Plan, 'branches'>): readonly RacewaySupports[] {
  const { tables } = designOf(site.rules);
  const lays = feederLays(site, feederConduits(site, tables), tables);
  return supportsOf(site, branches, lays, tables);
}

function supportPoints(site: Site, { branches }: Pick<Plan, 'branches'>): readonly SetOutPoint[] {
  return lotSupports(site, { branches }).flatMap(({ raceway, supports }) =>
    supports.map(
      ({ at, member, rod }, i): SetOutPoint => ({
        of: raceway.id,
        list: 'raceways',
        part: 'support',
        number: i + 1,
        name: `${raceway.id} support ${i + 1}`,
        at,
        steel: member && { member: member.id, under: rod },
      }),
    ),
  );
}

/** A pad by its four corners, counter-clockwise, and where raceways enter. */
function padPoints(site: Site, equipment: Equipment): readonly SetOutPoint[] {
  const { id, entry } = equipment;
  const corners = padCorners(equipment).map(
    (at, i): SetOutPoint => ({ ...point(site, 'equipment', id, 'corner', at, i + 1), steel: null }),
  );
  return [...corners, point(site, 'equipment', id, 'entry', entry)];
}

/** The corners of equipment on the ground, counter-clockwise from the one at its lower left before it is turned, feet. */
export function padCorners({
  at: [x, y],
  size: [w, d],
  rotation = 0,
}: Pick<Equipment, 'at' | 'size' | 'rotation'>): readonly Point3[] {
  const turn = (rotation * Math.PI) / 180;
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  return [
    [-1, -1],
    [1, -1],
    [1, 1],
    [-1, 1],
  ].map(([a, b]): Point3 => {
    const [u, v] = [(a! * w) / 2, (b! * d) / 2];
    return [x + u * cos - v * sin, y + u * sin + v * cos, 0];
  });
}
