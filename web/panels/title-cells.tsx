import { SeveritySign } from './severity-sign.tsx';

export interface TitleCell {
  readonly label: string;
  readonly value: string;
  readonly state?: 'pass' | 'warn' | 'fail';
}

/** Figures in ruled cells, each under its name, as in the title block of a drawing. */
export function TitleCells({ cells }: { readonly cells: readonly TitleCell[] }) {
  return (
    <dl className="cells">
      {cells.map(({ label, value, state }) => (
        <div key={label} className="cell" data-state={state}>
          <dt>{label}</dt>
          <dd>
            {state && state !== 'pass' && <SeveritySign severity={state} />}
            {value}
          </dd>
        </div>
      ))}
    </dl>
  );
}
