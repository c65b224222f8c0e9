import { useId, useState } from 'react';
import { tapeLines } from '../../../calc/field/tape-lines.ts';
import { setOutPlace } from '../../../routing/site/place/grid-frame.ts';
import { placeTaped, settingOutLine, type TapeAxis, tapedFrom } from '../../../routing/site/place/taped-place.ts';
import type { Point3 } from '../../../routing/site/site.ts';
import { useDocument } from '../../document/use-document.tsx';
import { LengthField, PlaceFields } from '../../parts/fields.tsx';
import { nearestInch } from '../../words/lengths.ts';
import { setOutWords } from '../../words/setting-out.ts';

interface TapedProps {
  /** What is measured: "box". */
  readonly name: string;
  /** Where it is drawn: setting-out names the lines that the tape is held to. */
  readonly drawn: Point3;
  readonly value: Point3;
  readonly onChange: (value: Point3) => void;
}

const WAYS = { x: 'along', y: 'across' } as const;

/** A place as the tape reads it: from two gridlines and up from grade, each written as it is measured. */
export function TapedPlace({ name, drawn, value, onChange }: TapedProps) {
  const gridlines = useDocument((state) => state.site.gridlines);
  const units = useDocument((state) => state.site.units);
  const on = setOutPlace(gridlines, [drawn[0], drawn[1]]);
  const hasLines = gridlines.x.length + gridlines.y.length > 0;
  return (
    <fieldset className="taped">
      <legend>{name}</legend>
      {hasLines ? (
        (['x', 'y'] as const).map((axis, i) => (
          <TapeRow key={axis} axis={axis} name={name} drawn={drawn} value={value} onChange={onChange}>
            drawn {setOutWords(gridlines[axis], on[i]!, units)}
          </TapeRow>
        ))
      ) : (
        <PlaceFields label="from the origin" value={value} onChange={onChange} />
      )}
      {hasLines && (
        <div className="tape-row tape-up">
          <LengthField label={`${name} up`} value={value[2]} onChange={(z) => onChange([value[0], value[1], z])} />
          <span className="quiet small">drawn {nearestInch(drawn[2], units)}</span>
        </div>
      )}
      {hasLines && (
        <details className="tape-site">
          <summary>x, y and z of the {name}</summary>
          <PlaceFields label={`${name} as built`} value={value} onChange={onChange} />
        </details>
      )}
    </fieldset>
  );
}

interface RowProps extends TapedProps {
  readonly axis: TapeAxis;
  readonly children: React.ReactNode;
}

/** One measure: the gridline it is taken from, which side of it, how far. Another line reads the same place anew. */
function TapeRow({ axis, name, drawn, value, onChange, children }: RowProps) {
  const id = useId();
  const gridlines = useDocument((state) => state.site.gridlines);
  const records = useDocument((state) => state.site.records);
  const lines = tapeLines(gridlines, records)[axis];
  const [chosen, choose] = useState<number | null>(null);
  const [sideAtLine, setSideAtLine] = useState<1 | -1>(1);
  const line = lines[chosen ?? -1] ?? settingOutLine(gridlines, drawn, axis);
  const offset = tapedFrom(gridlines, value, axis, line);
  // On the line itself either side may be meant.
  const side = Math.abs(offset) < 1e-9 ? sideAtLine : offset < 0 ? -1 : 1;
  const put = (next: number): void => onChange(placeTaped(gridlines, value, axis, line, next));
  const label = `${name} ${WAYS[axis]}`;
  return (
    <div className="tape-row">
      <span className="tape-name" id={id}>
        {WAYS[axis]}
      </span>
      {line && (
        <>
          <select
            aria-label={`${label}, measured from`}
            value={lines.findIndex(({ label, at }) => label === line.label && at === line.at)}
            onChange={(event) => choose(Number(event.target.value))}
          >
            {lines.map((each, i) => (
              <option key={`${each.label} ${each.at}`} value={i}>
                {each.own ? each.label : `line ${each.label}`}
              </option>
            ))}
          </select>
          <select
            aria-label={`${label}, side of the line`}
            value={side}
            onChange={(event) => {
              const next = Number(event.target.value) as 1 | -1;
              setSideAtLine(next);
              if (next !== side && Math.abs(offset) >= 1e-9) put(-offset);
            }}
          >
            <option value={1}>past</option>
            <option value={-1}>before</option>
          </select>
        </>
      )}
      <LengthField
        label={label}
        value={line ? Math.abs(offset) : offset}
        onChange={(next) => put(line ? side * next : next)}
      />
      <span className="quiet small">{children}</span>
    </div>
  );
}
