import type { CardCell, CardCircuit, CardRow } from '../../../calc/supply/panels/panel-card.ts';
import type { MovingHand } from '../use-moving.ts';

/** What a cell has to know of the schedule around it. */
export interface CellWorld {
  readonly isChosen: (circuit: CardCircuit) => boolean;
  readonly choose: (circuit: CardCircuit) => void;
  readonly hand: MovingHand<number>;
  /** The circuit that is held, and the spaces it would take. */
  readonly held: string | undefined;
  readonly over: ReadonlySet<number>;
}

interface SideProps {
  readonly number: number;
  readonly cell: CardCell;
  readonly world: CellWorld;
}

/** A row of a schedule: two spaces on one line. */
export function ScheduleRow({
  row: { line, left, right },
  world,
}: {
  readonly row: CardRow;
  readonly world: CellWorld;
}) {
  return (
    <tr>
      <Serves {...left} world={world} />
      <Breaker {...left} world={world} />
      <Va {...left} world={world} />
      <SpaceNumber {...left} world={world} />
      <td className="on-line">{line}</td>
      <SpaceNumber {...right} world={world} />
      <Va {...right} world={world} />
      <Breaker {...right} world={world} />
      <Serves {...right} world={world} />
    </tr>
  );
}

const firstOf = (cell: CardCell): CardCircuit | null =>
  cell.kind === 'circuit' && cell.pole === 0 ? cell.circuit : null;

function Serves({ number, cell, world }: SideProps) {
  const circuit = firstOf(cell);
  return (
    <td className="serves" data-space={number} data-over={world.over.has(number)}>
      {circuit ? (
        <button
          type="button"
          className="circuit"
          data-circuit={circuit.id}
          aria-pressed={world.isChosen(circuit)}
          data-held={world.held === circuit.id}
          onPointerDown={(event) => world.hand.press(event, [circuit.id])}
          onClick={() => {
            if (!world.hand.hasDragged()) world.choose(circuit);
          }}
        >
          {circuit.words}
          <span className="heard">
            {' '}
            in {circuit.spaces.join(', ')} on {circuit.lines}
          </span>
          {circuit.issued && <span className="issued"> kept</span>}
        </button>
      ) : cell.kind === 'circuit' ? (
        <span className="pole" data-held={world.held === cell.circuit.id} aria-hidden="true" />
      ) : (
        <span className="quiet">
          {cell.kind === 'space' ? 'space' : cell.pole === 0 ? `spare, was ${cell.was}` : ''}
        </span>
      )}
    </td>
  );
}

function Breaker({ number, cell, world }: SideProps) {
  const circuit = firstOf(cell);
  return (
    <td data-space={number} data-over={world.over.has(number)}>
      {circuit && `${circuit.breakerAmps === null ? '–' : `${circuit.breakerAmps} A`} ${circuit.lines.length}P`}
    </td>
  );
}

function Va({ number, cell, world }: SideProps) {
  const circuit = firstOf(cell);
  return (
    <td className="numeric va" data-space={number} data-over={world.over.has(number)}>
      {circuit?.va.toLocaleString('en-US', { maximumFractionDigits: 0 })}
    </td>
  );
}

const SpaceNumber = ({ number, world }: SideProps) => (
  <td className="numeric no" data-space={number} data-over={world.over.has(number)}>
    {number}
  </td>
);
