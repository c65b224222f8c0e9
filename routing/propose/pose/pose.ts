import { boxOf } from '../../plane/box.ts';
import { placedKind } from '../../site/kinds/kinds.ts';
import type { Motion } from '../../site/place/motion.ts';
import type { Point2, SiteFile } from '../../site/site.ts';
import { toSite } from '../../site/to-site.ts';
import { lotFrame } from '../raceways/lattice/lot-frame.ts';
import { motionTo, type Turn, turnedBy } from './motion-to.ts';
import { posedFile } from './posed-file.ts';

/** A lot as it is looked at for proposals. */
export interface Pose {
  readonly file: SiteFile;
  /** From there to where the lot lies. */
  readonly back: Motion;
  /** The lot does not lie square to its axes: what is turned back is rounded. */
  readonly isOdd: boolean;
}

/** What makes out where a lot lies, and how far it reaches. */
const MARKS = ['stalls', 'columns', 'members', 'keepouts', 'aisles', 'equipment', 'raceways', 'drops'] as const;

const TURNS: readonly Turn[] = [0, 90, 180, 270].flatMap((degrees) =>
  [false, true].map((mirrors) => ({ degrees, mirrors })),
);

/**
 * A lot in the pose that all lots have that are the same but turned, mirrored, moved, renamed or drawn in another order: square to
 * the axes and longer along x, what feeds it to the left and low, and what that leaves open by all that is drawn.
 */
export function poseOf(file: SiteFile): Pose {
  const marks = MARKS.flatMap((list) =>
    (file[list] ?? []).flatMap((one) => [...placedKind(list)!.points(one as never)]),
  );
  const { turn: odd } = lotFrame(toSite(file));
  const feeding = (file.equipment ?? []).map(({ at }) => at);
  const turns = TURNS.map(({ degrees, mirrors }) => {
    const turn: Turn = { degrees: degrees - odd, mirrors };
    const into = turnedBy(turn);
    const { minX, minY, maxX, maxY } = boxOf(marks.length > 0 ? marks.map(into) : [[0, 0]]);
    const fed = middle(feeding.map(into), [minX, minY]);
    const looks = [maxX - minX < maxY - minY - NEAR ? 1 : 0, tenths(fed[0] - minX), tenths(fed[1] - minY)];
    return { turn, corner: [minX, minY] as const, looks };
  });
  const best = turns.map(({ looks }) => looks).reduce((least, one) => (inOrder(one, least) < 0 ? one : least));
  const alike = turns
    .filter(({ looks }) => inOrder(looks, best) === 0)
    .map(({ turn, corner }) => {
      const { into, back } = motionTo(turn, corner);
      return { ...posedFile(file, into), into, back };
    });
  const { file: posed, into, back } = alike.reduce((least, one) => (one.key < least.key ? one : least));
  return odd === 0 ? { file: posed, back, isOdd: false } : { file: posed, back: backTo(file, into, back), isOdd: true };
}

/** Back, and onto what is drawn where it was on it, for that was rounded on the way. */
function backTo(
  { equipment = [], drops = [], raceways = [], pullpoints = [] }: SiteFile,
  into: Motion,
  back: Motion,
): Motion {
  const drawn = [
    ...equipment.map(({ entry }) => entry),
    ...drops.map(({ box }) => box),
    ...raceways.flatMap(({ path }) => path),
    ...pullpoints.map(({ at }) => at),
  ];
  const known = new Map(drawn.map(([x, y]) => [into.point([x, y]).join(' '), [x, y] as const]));
  return { ...back, point: (at) => known.get(at.join(' ')) ?? back.point(at) };
}

/** Lots this near to square are longer neither way, in the units of the file. */
const NEAR = 0.1;
const tenths = (value: number): number => Math.round(value * 10);

function middle(points: readonly Point2[], without: Point2): Point2 {
  if (points.length === 0) return without;
  const sum = points.reduce(([x, y], [px, py]): Point2 => [x + px, y + py], [0, 0]);
  return [sum[0] / points.length, sum[1] / points.length];
}

const inOrder = (a: readonly number[], b: readonly number[]): number =>
  a.reduce((so, value, i) => so || value - b[i]!, 0);
