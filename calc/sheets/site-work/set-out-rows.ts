import type { Site } from '../../../routing/site/site.ts';
import { type SetOutPoint, setOutPoints } from '../../field/set-out-points.ts';
import { setOutRows } from '../../field/set-out-rows.ts';
import {
  axisWords,
  closingWords,
  heightWords,
  tapeReadingWords,
  tapeWords,
  tieWords,
} from '../../field/set-out-words.ts';
import { placeOffsets, tapeLines } from '../../field/tape-lines.ts';
import type { Plan } from '../../plan/plan-shape.ts';

/** Heads of the table of all points by the tape. */
export const POINT_HEADS = [
  'Point',
  'Part',
  'x',
  'y',
  'Up, and under the steel',
  'x closes',
  'y closes',
  'Tie',
] as const;

const PARTS: Readonly<Record<SetOutPoint['part'], string>> = {
  box: 'box',
  retractor: 'retractor',
  at: 'middle',
  entry: 'entry of raceways',
  corner: 'pad corner',
  support: 'support',
};

const partWords = ({ list, part }: SetOutPoint): string =>
  list === 'columns' ? 'core' : list === 'pullpoints' ? 'pull point' : PARTS[part];

/**
 * Every point that is set out, as the tape reads it to 1/8 in. or a millimeter: from the nearest lines, with the sum to the
 * lines on both sides and the tie to where the nearest two cross, by which a slip shows.
 */
export function pointRows(site: Site, plan: Pick<Plan, 'branches'>): readonly (readonly string[])[] {
  const { gridlines, records, units } = site;
  const lines = tapeLines(gridlines, records);
  return setOutPoints(site, plan).map((point) => {
    const place = placeOffsets(gridlines, lines, point.at);
    return [
      point.name,
      partWords(point),
      axisWords(place.x, units),
      axisWords(place.y, units),
      heightWords(point, units),
      closingWords(place.x, units) ?? '',
      closingWords(place.y, units) ?? '',
      tieWords(place, units) ?? '',
    ];
  });
}

/** Heads of the table of running dimensions. */
export const TAPE_HEADS = ['Row', 'Tape from', 'Point', 'Tape reads'] as const;

/** Running dimensions along each row from one end, what the tape reads at the line that closes it, and its diagonal. */
export function tapeRows(site: Site, plan: Pick<Plan, 'branches'>): readonly (readonly string[])[] {
  const { units } = site;
  return setOutRows(site, setOutPoints(site, plan)).flatMap(({ axis, from, zero, marks, end, diagonal }) => {
    const row = `${partWords(marks[0]!.point)}, along ${axis}${from ? `, ${tapeReadingWords(from, units)}` : ''}`;
    const line = (what: string, feet: number): readonly string[] => [row, zero, what, tapeWords(feet, units)];
    return [
      ...marks.map(({ point, feet }) => line(point.name, feet)),
      ...(end ? [line(`line ${end.line}, which closes it`, end.feet)] : []),
      ...(diagonal ? [line(`diagonal from ${diagonal.corner} to ${marks.at(-1)!.point.name}`, diagonal.feet)] : []),
    ];
  });
}
