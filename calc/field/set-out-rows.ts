import { kept } from '../../routing/kept/kept.ts';
import { setOutPlace } from '../../routing/site/place/grid-frame.ts';
import type { TapeAxis } from '../../routing/site/place/taped-place.ts';
import type { Site } from '../../routing/site/site.ts';
import type { SetOutPoint } from './set-out-points.ts';
import { type TapeLine, tapeLines } from './tape-lines.ts';

/** Points of one kind in one line along the gridlines, set out with one tape that is not moved. */
export interface SetOutRow {
  readonly axis: TapeAxis;
  /** Where it lies across, feet from the origin of the gridlines, and the nearest line of that axis with how far past it. */
  readonly across: number;
  readonly from: { readonly line: string; readonly feet: number } | null;
  /** Where the tape is hooked: the line before the first point, or that point where there is none. */
  readonly zero: string;
  /** Feet on the tape, in order. */
  readonly marks: readonly { readonly point: SetOutPoint; readonly feet: number }[];
  /** What the tape reads at the next line after the last point; null where there is none. It shows a slip in any of them. */
  readonly end: { readonly line: string; readonly feet: number } | null;
  /** The straight from where the tape is hooked, on the line across that is nearest, to the last point, feet. */
  readonly diagonal: { readonly corner: string; readonly feet: number } | null;
}

/** Points lie in one row where they differ by no more than this across, feet: a quarter of an inch. */
const ABREAST = 1 / 48;

/** What goes into one row: points of one kind and part. */
const kindOf = ({ list, part }: SetOutPoint): string => `${list} ${part}`;

/** The rows of a site: each point in the longer of the two lines that it lies in; those alone in both are in none. */
export const setOutRows = kept((site: Site, points: readonly SetOutPoint[]): readonly SetOutRow[] => {
  const lines = tapeLines(site.gridlines, site.records);
  const kinds = new Map<string, Placed[]>();
  for (const point of points) {
    if (point.part === 'corner') continue;
    const [x, y] = setOutPlace(site.gridlines, [point.at[0], point.at[1]]);
    const placed = kinds.get(kindOf(point)) ?? [];
    placed.push({ point, x, y });
    kinds.set(kindOf(point), placed);
  }
  return [...kinds.values()].flatMap((placed) => rowsOf(placed, lines));
});

interface Placed {
  readonly point: SetOutPoint;
  readonly x: number;
  readonly y: number;
}

function rowsOf(
  placed: readonly Placed[],
  lines: Readonly<Record<TapeAxis, readonly TapeLine[]>>,
): readonly SetOutRow[] {
  const groups = { x: abreast(placed, 'y'), y: abreast(placed, 'x') };
  const size = (axis: TapeAxis, one: Placed): number => groups[axis].get(one)!.length;
  const rows: SetOutRow[] = [];
  for (const axis of ['x', 'y'] as const) {
    for (const group of new Set(groups[axis].values())) {
      const other = axis === 'x' ? 'y' : 'x';
      const own = group.filter(
        (one) => size(axis, one) > size(other, one) || (axis === 'x' && size('x', one) === size('y', one)),
      );
      if (own.length > 1) rows.push(rowOf(axis, own, lines));
    }
  }
  return rows;
}

/** Each point with those that lie in one line with it: they share a coordinate. */
function abreast(placed: readonly Placed[], by: TapeAxis): ReadonlyMap<Placed, readonly Placed[]> {
  const groups = new Map<Placed, Placed[]>();
  let group: Placed[] = [];
  for (const one of [...placed].sort((a, b) => a[by] - b[by])) {
    if (group.length === 0 || one[by] - group[0]![by] > ABREAST) group = [];
    group.push(one);
    groups.set(one, group);
  }
  return groups;
}

function rowOf(
  axis: TapeAxis,
  own: readonly Placed[],
  lines: Readonly<Record<TapeAxis, readonly TapeLine[]>>,
): SetOutRow {
  const other = axis === 'x' ? 'y' : 'x';
  const sorted = [...own].sort((a, b) => a[axis] - b[axis]);
  const [first, last] = [sorted[0]!, sorted.at(-1)!];
  const across = first[other];
  const hook = lines[axis].filter(({ at }) => at <= first[axis] + ABREAST).at(-1);
  const zero = hook?.at ?? first[axis];
  const after = lines[axis].find(({ at }) => at > last[axis] + ABREAST);
  const beside = nearest(lines[other], across);
  return {
    axis,
    across,
    from: beside && { line: beside.label, feet: across - beside.at },
    zero: hook?.label ?? first.point.name,
    marks: sorted.map(({ point, ...at }) => ({ point, feet: at[axis] - zero })),
    end: after ? { line: after.label, feet: after.at - zero } : null,
    diagonal: beside && {
      corner: `${hook?.label ?? first.point.name} and ${beside.label}`,
      feet: Math.hypot(last[axis] - zero, last[other] - beside.at),
    },
  };
}

const nearest = (lines: readonly TapeLine[], at: number): TapeLine | null =>
  lines.reduce<TapeLine | null>(
    (best, line) => (best === null || Math.abs(at - line.at) < Math.abs(at - best.at) ? line : best),
    null,
  );
