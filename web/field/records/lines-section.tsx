import { useState } from 'react';
import { tapeLines } from '../../../calc/field/tape-lines.ts';
import { gridlineWords } from '../../../routing/site/place/gridline-words.ts';
import { placeTaped, type TapeAxis } from '../../../routing/site/place/taped-place.ts';
import type { Point3 } from '../../../routing/site/site.ts';
import { useDocument } from '../../document/use-document.tsx';
import { ChoiceField, LengthField, TextField } from '../../parts/fields.tsx';
import { useMarks } from './use-marks.ts';

const AXES = { x: 'as lines 1, 2, 3 do', y: 'as lines A, B, C do' } as const;
const ORIGIN: Point3 = [0, 0, 0];

/** Lines of the field's own to measure from: a column face, a curb, a chalk line; each taped once from a line that is known. */
export function LinesSection() {
  const site = useDocument((state) => state.site);
  const { registers, write } = useMarks();
  const own = [...registers.values()].flatMap(({ what, now }) => (what === 'line' && now?.line ? [now] : []));
  const [name, setName] = useState('');
  const [axis, setAxis] = useState<TapeAxis>('x');
  const [from, setFrom] = useState('');
  const [offset, setOffset] = useState(0);
  const lines = tapeLines(site.gridlines, site.records)[axis];
  const line = lines.find(({ label }) => label === from) ?? lines[0] ?? null;
  const add = (): void => {
    const at = placeTaped(site.gridlines, ORIGIN, axis, line, offset);
    write(`Measure from ${name}`, { of: name, what: 'line', line: { axis, at } });
    setName('');
    setOffset(0);
  };
  return (
    <section aria-label="Lines to measure from" className="fields">
      <h3>Lines to measure from, beside the gridlines</h3>
      {own.map(({ of, line: held }) => (
        <p key={of} className="records-line">
          <span>
            <b>{of}</b> {gridlineWords(held!.at, site.gridlines, site.units).split(', ')[held!.axis === 'x' ? 0 : 1]}
          </span>
          <button type="button" onClick={() => write(`Take back ${of}`, { of, what: 'line', gone: true })}>
            Take back
          </button>
        </p>
      ))}
      <TextField label="name of the line" value={name} check={nameFault} onChange={setName} />
      <ChoiceField
        label="it counts"
        value={axis}
        onChange={setAxis}
        choices={['x', 'y']}
        words={(each) => AXES[each]}
      />
      {lines.length > 0 && (
        <ChoiceField
          label="taped from"
          value={line?.label ?? ''}
          onChange={setFrom}
          choices={lines.map(({ label }) => label)}
          words={(label) => (lines.find((each) => each.label === label)?.own ? label : `line ${label}`)}
        />
      )}
      <LengthField
        label={lines.length > 0 ? 'so far past it' : 'so far past the origin'}
        value={offset}
        onChange={setOffset}
      />
      <div className="records-acts">
        <button type="button" disabled={name === ''} onClick={add}>
          Measure from it
        </button>
      </div>
    </section>
  );
}

const nameFault = (text: string): string | null => (text.length <= 64 ? null : 'a name of 64 letters or fewer');
