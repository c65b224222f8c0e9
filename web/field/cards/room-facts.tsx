import { useState } from 'react';
import type { MovablePoint } from '../../../calc/field/moved-point.ts';
import { tapeWords } from '../../../calc/field/set-out-words.ts';
import { FARTHEST, type Ray, rayEnd, type Tolerance } from '../../../calc/field/tolerance.ts';
import { gridWays } from '../../../routing/site/place/grid-frame.ts';
import type { Finding } from '../../../routing/site/rules/finding.ts';
import { useDocument } from '../../document/use-document.tsx';
import { useFieldAnswer } from '../ask-field.ts';

interface RoomProps {
  readonly points: readonly (MovablePoint & { readonly name: string })[];
}

/** How far off a point may be set and everything still passes, worked out when it is asked for. */
export function RoomFacts({ points }: RoomProps) {
  const [name, setName] = useState<string | null>(null);
  const point = points.find((each) => each.name === name) ?? null;
  const answer = useFieldAnswer(point && { kind: 'room', point: bare(point) }, point?.name ?? '');
  return (
    <section className="room" aria-label="Room to be off">
      <div className="room-acts">
        {points.map((each) => (
          <button
            key={each.name}
            type="button"
            aria-pressed={each.name === name}
            onClick={() => setName(each.name === name ? null : each.name)}
          >
            Room round {each.name}
          </button>
        ))}
      </div>
      {point && !answer.room && !answer.fault && (
        <p role="status" className="quiet">
          Planning with {point.name} elsewhere: {Math.round(100 * answer.share)}%
        </p>
      )}
      {answer.fault && <p role="alert">It could not be worked out: {answer.fault}</p>}
      {point && answer.room && <Room room={answer.room} name={point.name} />}
    </section>
  );
}

const bare = ({ list, id, part }: MovablePoint): MovablePoint => ({ list, id, ...(part && { part }) });

function Room({ room, name }: { readonly room: Tolerance; readonly name: string }) {
  const site = useDocument((state) => state.site);
  const checks = useDocument((state) => state.plan.checks);
  const { units, gridlines } = site;
  if (room.fails.length > 0)
    return (
      <p>
        {name} fails as drawn, so no room is told: {room.fails[0]!.says}
      </p>
    );
  const title = (stop: Finding | null): string =>
    stop === null ? '' : `, ${(checks.find(({ rule }) => rule === stop.rule)?.title ?? stop.rule).toLowerCase()}`;
  const far = (feet: number): string =>
    feet >= FARTHEST ? `${tapeWords(FARTHEST, units)} or more` : tapeWords(Math.max(0, feet), units);
  const [along, across] = gridWays(gridlines);
  const ways: readonly (readonly [string, Pick<Ray, 'feet' | 'stop'>])[] = [
    ['along, past', toward(room, along)],
    ['along, before', toward(room, [-along[0], -along[1]])],
    ['across, past', toward(room, across)],
    ['across, before', toward(room, [-across[0], -across[1]])],
    ['up', room.up],
    ['down', room.down],
  ];
  return (
    <div className="room-shape">
      <RoomPicture room={room} turn={-(gridlines.rotation ?? 0)} name={name} />
      <ul>
        {ways.map(([way, { feet, stop }]) => (
          <li key={way}>
            <span className="quiet">{way}</span> <b>{far(feet)}</b>
            {title(stop)}
          </li>
        ))}
      </ul>
    </div>
  );
}

/** The ray that points most nearly that way. */
function toward({ rays }: Tolerance, [x, y]: readonly [number, number]): Ray {
  const share = (ray: Ray): number => {
    const [rx, ry] = rayEnd({ ...ray, feet: 1 });
    return rx * x + ry * y;
  };
  return rays.reduce((best, ray) => (share(ray) > share(best) ? ray : best));
}

/** The shape as it is, laid along the gridlines, with a ring at each foot. */
function RoomPicture({ room, turn, name }: { readonly room: Tolerance; readonly turn: number; readonly name: string }) {
  const points = room.rays.map((ray) => {
    const [x, y] = rayEnd({ ...ray, degrees: ray.degrees + turn });
    return `${x.toFixed(3)},${(-y).toFixed(3)}`;
  });
  return (
    <svg
      viewBox="-3.3 -3.3 6.6 6.6"
      className="room-picture"
      role="img"
      aria-label={`Room round ${name}, a ring a foot`}
    >
      {[1, 2, 3].map((feet) => (
        <circle key={feet} r={feet} className="room-ring" />
      ))}
      <path d="M-3.2 0H3.2M0 -3.2V3.2" className="room-ring" />
      <polygon points={points.join(' ')} className="room-fill" />
      <circle r="0.09" className="room-point" />
    </svg>
  );
}
