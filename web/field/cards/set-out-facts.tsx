import '../field.css';
import { useMemo } from 'react';
import { type SetOutPoint, setOutPoints } from '../../../calc/field/set-out-points.ts';
import { type SetOutRow, setOutRows } from '../../../calc/field/set-out-rows.ts';
import {
  axisWords,
  closingWords,
  heightWords,
  tapeReadingWords,
  tapeWords,
  tieWords,
} from '../../../calc/field/set-out-words.ts';
import { type SupportRoom, type SupportStop, supportRoom } from '../../../calc/field/support-room.ts';
import { placeOffsets, tapeLines } from '../../../calc/field/tape-lines.ts';
import type { Units } from '../../../routing/site/schema/vocabulary.ts';
import { useDocument } from '../../document/use-document.tsx';

/** All that is set out of the open site, with its rows. */
export function useSetOut(): { readonly points: readonly SetOutPoint[]; readonly rows: readonly SetOutRow[] } {
  const site = useDocument((state) => state.site);
  const plan = useDocument((state) => state.plan);
  return useMemo(() => {
    const points = setOutPoints(site, plan);
    return { points, rows: setOutRows(site, points) };
  }, [site, plan]);
}

/** Where the points of an element are set out, with what shows a slip, and the one tape along their rows. */
export function SetOutFacts({ id }: { readonly id: string }) {
  const { points, rows } = useSetOut();
  const own = points.filter(({ of }) => of === id);
  if (own.length === 0) return null;
  const through = rows.filter(({ marks }) => marks.some(({ point }) => point.of === id));
  return (
    <section className="set-out" aria-label={`Setting out of ${id}`}>
      {own.map((point) => (
        <PointFacts key={point.name} point={point} />
      ))}
      {through.map((row) => (
        <RowTape key={`${row.axis} ${row.across} ${row.marks[0]!.point.name}`} row={row} id={id} />
      ))}
    </section>
  );
}

function PointFacts({ point }: { readonly point: SetOutPoint }) {
  const gridlines = useDocument((state) => state.site.gridlines);
  const records = useDocument((state) => state.site.records);
  const units = useDocument((state) => state.site.units);
  const place = placeOffsets(gridlines, tapeLines(gridlines, records), point.at);
  const sums = [closingWords(place.x, units), closingWords(place.y, units)].filter((words) => words !== null);
  const tie = tieWords(place, units);
  return (
    <div className="set-out-point" data-point={point.name}>
      <h3>{point.name}</h3>
      <p className="set-out-place">
        <b>{axisWords(place.x, units)}</b>
        <b>{axisWords(place.y, units)}</b>
        <b>{heightWords(point, units)}</b>
      </p>
      {(sums.length > 0 || tie) && (
        <p className="quiet small">
          {[...sums.map((sum) => `Closes: ${sum}.`), ...(tie ? [`Tie: ${tie}.`] : [])].join(' ')}
        </p>
      )}
      {point.part === 'support' && <SupportRoomFacts point={point} />}
    </div>
  );
}

const STOPS: Readonly<Record<SupportStop, string>> = {
  spacing: 'then a conduit spans too far',
  steel: 'then no steel is there',
};

/** How far along its raceway a support may be off, the others being where they are planned. */
function SupportRoomFacts({ point: { of, number = 1 } }: { readonly point: SetOutPoint }) {
  const site = useDocument((state) => state.site);
  const plan = useDocument((state) => state.plan);
  const units = site.units;
  const room = useMemo(() => supportRoom(site, plan, of, number), [site, plan, of, number]);
  if (!room) return null;
  const words = ({ feet, stop }: SupportRoom['on']): string =>
    stop ? `${tapeWords(feet, units)}, ${STOPS[stop]}` : `${tapeWords(feet, units)} or more`;
  return (
    <p className="small">
      Room along {of}: back {words(room.back)}; on {words(room.on)}.
    </p>
  );
}

function RowTape({ row, id }: { readonly row: SetOutRow; readonly id: string }) {
  const units = useDocument((state) => state.site.units);
  const { marks, zero, end, from, diagonal } = row;
  const part = marks[0]!.point.part;
  return (
    <details className="row-tape">
      <summary>
        One tape from {zero}: {marks.length} {part === 'at' ? 'in the row' : part === 'box' ? 'boxes' : `${part}s`}
        {from && `, ${tapeReadingWords(from, units)}`}
      </summary>
      <ol>
        {marks.map(({ point, feet }) => (
          <li key={point.name} aria-current={point.of === id ? 'true' : undefined}>
            <span>{point.name}</span> <b>{tapeWords(feet, units)}</b>
          </li>
        ))}
        {end && (
          <li>
            <span>line {end.line}, which closes it</span> <b>{tapeWords(end.feet, units)}</b>
          </li>
        )}
      </ol>
      {diagonal && <p className="quiet small">{diagonalWords(row, diagonal, units)}</p>}
    </details>
  );
}

const diagonalWords = ({ marks }: SetOutRow, diagonal: NonNullable<SetOutRow['diagonal']>, units: Units): string =>
  `Diagonal from ${diagonal.corner} to ${marks.at(-1)!.point.name}: ${tapeWords(diagonal.feet, units)}.`;
