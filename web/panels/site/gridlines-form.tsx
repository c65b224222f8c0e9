import { lineLetter, lineNumber } from '../../../routing/propose/rows/gridline-labels.ts';
import type { Gridline, Gridlines } from '../../../routing/site/site.ts';
import { setGridlines } from '../../document/edits/set.ts';
import { useDocument, useDocumentStore } from '../../document/use-document.tsx';
import { DegreesField, LengthField, TextField } from '../../parts/fields.tsx';

/** The reference lines that field dimensions are taken from. */
export function GridlinesForm() {
  const document = useDocumentStore();
  const gridlines = useDocument((state) => state.site.gridlines);
  const put = (axis: 'x' | 'y', lines: readonly Gridline[]): void => {
    const { file, apply } = document.getState();
    const next = { ...gridlines, [axis]: lines };
    apply(setGridlines(file, next.x.length + next.y.length > 0 ? next : null));
  };
  const lay = (patch: Pick<Gridlines, 'rotation' | 'origin'>): void => {
    const { file, apply } = document.getState();
    const { rotation = 0, origin = [0, 0], x, y } = { ...gridlines, ...patch };
    const turn = rotation % 360 === 0 ? {} : { rotation };
    apply(setGridlines(file, { x, y, ...turn, ...(origin.some((at) => at !== 0) && { origin }) }));
  };
  const { rotation = 0, origin = [0, 0] } = gridlines;
  return (
    <details className="site-form">
      <summary>Gridlines</summary>
      <Lines axis="x" words="lines up the sheet" lines={gridlines.x} onChange={(lines) => put('x', lines)} />
      <Lines axis="y" words="lines across it" lines={gridlines.y} onChange={(lines) => put('y', lines)} />
      {gridlines.x.length + gridlines.y.length > 0 && (
        <section className="fields" aria-label="how they lie">
          <p className="quiet">how they lie: turned about their origin, from which each line is measured</p>
          <DegreesField
            label="turned by"
            value={rotation}
            decimals={6}
            onChange={(degrees) => lay({ rotation: degrees })}
          />
          <LengthField label="origin x" value={origin[0]} onChange={(at) => lay({ origin: [at, origin[1]] })} />
          <LengthField label="origin y" value={origin[1]} onChange={(at) => lay({ origin: [origin[0], at] })} />
        </section>
      )}
    </details>
  );
}

interface LinesProps {
  readonly axis: 'x' | 'y';
  readonly words: string;
  readonly lines: readonly Gridline[];
  readonly onChange: (lines: readonly Gridline[]) => void;
}

function Lines({ axis, words, lines, onChange }: LinesProps) {
  const change = (index: number, patch: Partial<Gridline>): void =>
    onChange(lines.map((line, i) => (i === index ? { ...line, ...patch } : line)));
  const free = (): string => {
    const name = axis === 'x' ? lineNumber : lineLetter;
    let n = 0;
    while (lines.some(({ label }) => label === name(n))) n++;
    return name(n);
  };
  return (
    <section className="fields" aria-label={words}>
      <p className="quiet">{words}</p>
      {lines.map((line, index) => (
        <div key={index} className="line-row">
          <TextField
            label="name"
            value={line.label}
            check={(text) => (text === '' ? 'a name is needed' : null)}
            onChange={(label) => change(index, { label })}
          />
          <LengthField label={axis} value={line.at} onChange={(at) => change(index, { at })} />
          <button type="button" className="plain" onClick={() => onChange(lines.filter((_, i) => i !== index))}>
            Take away
          </button>
        </div>
      ))}
      <button
        type="button"
        className="plain"
        onClick={() => onChange([...lines, { label: free(), at: (lines.at(-1)?.at ?? -27) + 27 }])}
      >
        Add a line
      </button>
    </section>
  );
}
