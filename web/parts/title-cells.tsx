import { SeveritySign } from './severity-sign.tsx';

export interface TitleCell {
  readonly label: string;
  readonly value: string;
  /** What is in the figure, where its name alone does not say. */
  readonly says?: string;
  readonly state?: 'pass' | 'warn' | 'fail';
  /** What a press opens or shuts, and whether it is open. */
  readonly opens?: { readonly open: boolean; readonly toggle: () => void };
}

/** Figures in ruled cells, each under its name, as in the title block of a drawing. */
export function TitleCells({ cells }: { readonly cells: readonly TitleCell[] }) {
  return (
    <dl className="cells">
      {cells.map(({ label, value, says, state, opens }) => {
        const figure = (
          <>
            {state && state !== 'pass' && <SeveritySign severity={state} />}
            {value}
          </>
        );
        return (
          <div key={label} className="cell" data-state={state}>
            <dt title={says}>{label}</dt>
            <dd>
              {opens ? (
                <button
                  type="button"
                  className="cell-button"
                  aria-expanded={opens.open}
                  aria-label={`${value} ${label}: what was looked at`}
                  onClick={opens.toggle}
                >
                  {figure}
                </button>
              ) : (
                figure
              )}
            </dd>
          </div>
        );
      })}
    </dl>
  );
}
