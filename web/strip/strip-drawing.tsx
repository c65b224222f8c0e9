import type { Units } from '../../routing/site/schema/vocabulary.ts';
import { counted } from '../../routing/words/counted.ts';
import type { LineColor } from '../board/scene/mark.ts';
import { nearestInch } from '../words/lengths.ts';
import { labelThatFits, patchOf, stripLabels } from './strip-labels.ts';
import type { Unrolled, UnrolledPoint } from './unrolled.ts';

interface StripDrawingProps {
  readonly flat: Unrolled;
  readonly width: number;
  readonly units: Units;
  readonly from: string;
  readonly equipmentHeight: number;
  readonly drop: string;
  readonly retractorUp: number | undefined;
  readonly restsAt: number | undefined;
  readonly colors: readonly LineColor[];
  readonly onPlace: (along: number) => void;
}

const HEIGHT = 138;
const LEFT = 64;
const RIGHT = 150;
const TOP = 36;
const BOTTOM = 18;
/** Where the sizes of the conduits stand, over the highest leg. */
const SPAN = 18;

/** The strip itself. Elevation is drawn larger than distance where the run is long; both are labelled. */
export function StripDrawing(props: StripDrawingProps) {
  const { flat, width, units, from, equipmentHeight, drop, retractorUp, restsAt, colors, onPlace } = props;
  const low = Math.min(0, flat.low);
  const high = Math.max(flat.high, equipmentHeight, 1);
  const perFootUp = (HEIGHT - TOP - BOTTOM) / (high - low);
  const perFoot = Math.min(perFootUp * 4, Math.max(40, width - LEFT - RIGHT) / (flat.along || 1));
  const x = ({ along }: Pick<UnrolledPoint, 'along'>): number => LEFT + along * perFoot;
  const y = (up: number): number => TOP + (high - up) * perFootUp;
  const path = flat.points.map((point, i) => `${i === 0 ? 'M' : 'L'}${x(point)} ${y(point.up)}`).join(' ');
  const end = flat.points.at(-1)!;
  const rest = restsAt ?? 0;
  const restWords = restsAt === undefined ? 'connector' : `rests at ${nearestInch(restsAt, units)}`;
  const labels = stripLabels(
    flat,
    { x: (along) => x({ along }), y, width, words: (length) => nearestInch(length, units) },
    [
      patchOf(from, LEFT - 20, y(equipmentHeight / 2) + 4, 'end'),
      patchOf(drop, x(end) + 10, y(end.up) + 4, 'start'),
      patchOf(restWords, x(end) + 30, y(rest) + 4, 'start'),
      { left: LEFT - 15, right: LEFT, top: y(equipmentHeight), bottom: y(0) },
    ],
  );
  return (
    // biome-ignore lint/a11y/useKeyWithClickEvents: the board and its keys show the same places
    <svg
      width={width}
      height={HEIGHT}
      role="img"
      aria-label={wordsFor(props)}
      onClick={(event) => {
        const at = (event.clientX - event.currentTarget.getBoundingClientRect().left - LEFT) / perFoot;
        onPlace(Math.min(flat.along, Math.max(0, at)));
      }}
    >
      <line className="grade" x1={8} x2={width - 8} y1={y(0)} y2={y(0)} />
      <text className="soft" x={10} y={y(0) + 13}>
        grade
      </text>
      <rect
        className="strip-box"
        x={LEFT - 15}
        y={y(equipmentHeight)}
        width={15}
        height={equipmentHeight * perFootUp}
      />
      <text className="strong" x={LEFT - 20} y={y(equipmentHeight / 2) + 4} textAnchor="end">
        {from}
      </text>
      <path className="strip-tube-edge" d={path} />
      <path className="strip-tube" d={path} />
      {colors.map((color, i) => (
        <path
          key={color}
          d={path}
          className={`strip-line line-${color}`}
          strokeDasharray={i === 0 ? undefined : `10 ${10 * colors.length - 10}`}
          strokeDashoffset={-10 * i}
        />
      ))}
      {labels.map(({ words, x: px, y: py, anchor }) => (
        <text key={`${words} ${px} ${py}`} className="soft" x={px} y={py} textAnchor={anchor}>
          {words}
        </text>
      ))}
      {flat.conduits.map(({ conduit, from: a, to: b }) => (
        <Conduit key={conduit.id} conduit={conduit} x1={x(a)} x2={x(b)} />
      ))}
      {flat.bends.map((at) => (
        <circle key={`${at.along} ${at.up}`} className="strip-bend" cx={x(at)} cy={y(at.up)} r={2.6} />
      ))}
      {flat.pullpoints.map(({ id, at }) => (
        <rect key={id} className="strip-pull" x={x(at) - 6} y={y(at.up) - 6} width={12} height={12} />
      ))}
      <path
        className="strip-cord"
        d={`M${x(end)} ${y(end.up)} C${x(end) + 2} ${y((end.up + rest) / 2)} ${x(end) + 6} ${y(rest)} ${x(end) + 24} ${y(rest)}`}
      />
      {retractorUp !== undefined && <circle className="strip-drop" cx={x(end)} cy={y(retractorUp)} r={5} />}
      <rect className="strip-pull" x={x(end) - 5} y={y(end.up) - 5} width={10} height={10} />
      <text className="strong" x={x(end) + 10} y={y(end.up) + 4}>
        {drop}
      </text>
      <text className="soft" x={x(end) + 30} y={y(rest) + 4}>
        {restWords}
      </text>
    </svg>
  );
}

interface ConduitProps {
  readonly conduit: Unrolled['conduits'][number]['conduit'];
  readonly x1: number;
  readonly x2: number;
}

/** The size of a conduit over the stretch that it lies along, in one line above the whole run. */
function Conduit({ conduit, x1, x2 }: ConduitProps) {
  const { tradeSize, method, circuits } = conduit;
  if (x2 - x1 < 6) return null;
  const size = `${tradeSize ? `${tradeSize}" ` : ''}${method}`;
  const who = counted(circuits.length, 'circuit');
  const words = labelThatFits([`${size}, ${who}`, size, ...(tradeSize ? [`${tradeSize}"`] : [])], x2 - x1 - 4);
  return (
    <g>
      <path
        className="strip-span"
        d={`M${x1 + 1} ${SPAN - 4} V${SPAN + 4} M${x1 + 1} ${SPAN} H${x2 - 1} M${x2 - 1} ${SPAN - 4} V${SPAN + 4}`}
      />
      {words && (
        <text className="soft" x={(x1 + x2) / 2} y={SPAN - 5} textAnchor="middle">
          {words}
        </text>
      )}
    </g>
  );
}

function wordsFor({ flat, units, from, drop }: StripDrawingProps): string {
  const legs = flat.legs.map(({ kind, length, to }) =>
    kind === 'riser'
      ? `${kind} of ${nearestInch(length, units)}`
      : `${nearestInch(length, units)} to an elevation of ${nearestInch(to.up, units)}`,
  );
  return `Run from ${from} to ${drop}: ${legs.join(', ')}.`;
}
