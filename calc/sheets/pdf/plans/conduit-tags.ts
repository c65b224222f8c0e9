import { boxOf } from '../../../../routing/plane/box.ts';
import { finderBy } from '../../../../routing/plane/box-index.ts';
import type { Conduit } from '../../../plan-file/branches.ts';
import { type AlikeConduits, type ConduitStretch, conduitStretches } from '../../drawing/conduit-stretches.ts';
import type { Area } from '../kit/area.ts';
import { BLACK } from '../kit/ink.ts';
import type { LabelGround, LabelLine, LabelWish } from '../kit/labels/best-label-place.ts';
import { placesAlong, placesAround } from '../kit/labels/label-places.ts';
import { writeLabels } from '../kit/labels/labels.ts';
import type { Pen } from '../kit/pen.ts';
import { grown, partIn, type View } from '../kit/view/view.ts';
import { conduitSize } from '../schedules/circuit-words.ts';

/** Off the line of a raceway, points. */
const OFF = 3;

/** Rounding of where a straight enters a window, feet. */
const NEAR = 0.01;
const stretchesIn = finderBy(({ from, to }: ConduitStretch) => boxOf([from, to]));

/**
 * Writes beside each conduit of the view its name of the conduit schedule and its size, at the straight where it lies with
 * the fewest others; where none has room along it, with a leader. Then the sizes alone along the other straights that have
 * room. The names of those that found no place are returned.
 */
export function writeConduitTags(
  pen: Pen,
  room: Area,
  ground: LabelGround,
  view: View,
  conduits: readonly Conduit[],
): ReadonlySet<string> {
  const near = grown(view.window, NEAR);
  const stretches = stretchesIn(conduitStretches(conduits, 'conduit'), near).flatMap((stretch) => {
    const part = partIn(view.window, stretch.from, stretch.to);
    return part === null ? [] : [{ ...stretch, from: part[0], to: part[1] }];
  });
  const bare = new Set(stretches.flatMap(idsOf));
  const lone = [...stretches].sort((a, b) => idsOf(a).length - idsOf(b).length || lengthOf(b) - lengthOf(a));
  const tagged = new Set<ConduitStretch>();
  for (const wishOf of [alongWish, leaderWish])
    for (const stretch of lone) {
      if (!idsOf(stretch).some((id) => bare.has(id))) continue;
      if (writeLabels(pen, room, ground, [wishOf(view, stretch)]).length > 0) continue;
      tagged.add(stretch);
      for (const id of idsOf(stretch)) bare.delete(id);
    }
  // What lies only among many, and had no room with all of them, is named alone.
  for (const stretch of lone) {
    const conduits = stretch.conduits
      .map((alike) => ({ ...alike, ids: alike.ids.filter((id) => bare.has(id)) }))
      .flatMap((alike) => (alike.ids.length > 0 ? [{ ...alike, count: alike.ids.length }] : []));
    if (conduits.length === 0) continue;
    if (writeLabels(pen, room, ground, [leaderWish(view, { ...stretch, conduits })]).length > 0) continue;
    for (const id of idsOf({ ...stretch, conduits })) bare.delete(id);
  }
  writeLabels(
    pen,
    room,
    ground,
    stretches.filter((stretch) => !tagged.has(stretch)).map((stretch) => sizeWish(view, stretch)),
  );
  return bare;
}

const idsOf = ({ conduits }: ConduitStretch): readonly string[] => conduits.flatMap(({ ids }) => ids);
const lengthOf = ({ from, to }: ConduitStretch): number => Math.hypot(to[0] - from[0], to[1] - from[1]);

const plainWish = { layer: 'conduitSizes', size: 'small', colour: BLACK } as const;

/** Sizes alone, one a line, a number in brackets where several are alike. */
export const sizeWish = (view: View, { from, to, conduits }: ConduitStretch): LabelWish => ({
  ...plainWish,
  lines: conduits.map((alike) => ({ text: countedSize(alike) })),
  places: (size) => placesAlong(view.at(from), view.at(to), OFF, size),
});

const countedSize = (alike: AlikeConduits): string =>
  alike.count > 1 ? `(${alike.count}) ${conduitSize(alike)}` : conduitSize(alike);

/** Names and sizes along a straight: on one line each, or the names over the size. */
const alongWish = (view: View, stretch: ConduitStretch): LabelWish => ({
  ...plainWish,
  ...formsOf(stretch),
  places: (size) => placesAlong(view.at(stretch.from), view.at(stretch.to), OFF, size),
});

const leaderWish = (view: View, stretch: ConduitStretch): LabelWish => ({
  ...plainWish,
  ...formsOf(stretch),
  *places(size) {
    const [from, to] = [view.at(stretch.from), view.at(stretch.to)];
    for (const share of [0.5, 0.3, 0.7]) {
      const at = [from[0] + share * (to[0] - from[0]), from[1] + share * (to[1] - from[1])] as const;
      yield* placesAround(at, OFF, size, true, { leader: at, own: 1 });
    }
  },
});

function formsOf({ conduits }: ConduitStretch): { readonly lines: readonly LabelLine[]; readonly or: LabelLine[][] } {
  const lines = conduits.map((alike): LabelLine => ({ text: `${countedSize(alike)} ${conduitRanges(alike.ids)}` }));
  const stacked = conduits.flatMap((alike): LabelLine[] => [
    ...(alike.ids.length > 0
      ? conduitRanges(alike.ids)
          .split(/(?<=,) /)
          .map((text) => ({ text }))
      : []),
    { text: countedSize(alike) },
  ]);
  return { lines, or: [stacked] };
}

const PARTS = /^(.*?)(\d+)(\.\d+)$/;

/** `P1-5.1 to P1-7.1`, with commas between what does not follow on one another. */
export function conduitRanges(ids: readonly string[]): string {
  const ranges: { first: string; last: string }[] = [];
  const parts = (id: string): readonly [string, number] | null => {
    const found = PARTS.exec(id);
    return found === null ? null : [`${found[1]}${found[3]}`, Number(found[2])];
  };
  for (const id of [...ids].sort(byParts)) {
    const last = ranges.at(-1);
    const [before, mine] = [last && parts(last.last), parts(id)];
    if (last && before && mine && before[0] === mine[0] && mine[1] === before[1] + 1) last.last = id;
    else ranges.push({ first: id, last: id });
  }
  return ranges.map(({ first, last }) => (first === last ? first : `${first} to ${last}`)).join(', ');
}

/** Names in the order of their parts, so that `P1-10.1` comes after `P1-9.1`. */
function byParts(a: string, b: string): number {
  const [pa, pb] = [PARTS.exec(a), PARTS.exec(b)];
  if (pa === null || pb === null) return a < b ? -1 : a > b ? 1 : 0;
  const [ka, kb] = [`${pa[1]}${pa[3]}`, `${pb[1]}${pb[3]}`];
  return ka < kb ? -1 : ka > kb ? 1 : Number(pa[2]) - Number(pb[2]);
}
