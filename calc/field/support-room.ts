import type { Site } from '../../routing/site/site.ts';
import type { Plan } from '../plan/plan-shape.ts';
import type { Lay } from '../steel/place-supports.ts';
import type { RacewaySupports } from '../steel/raceway-supports.ts';
import { lotSupports } from './set-out-points.ts';
import { FARTHEST } from './tolerance.ts';

/** Why a support may go no farther: a conduit would span too far, or no member is there to hang it from. */
export type SupportStop = 'spacing' | 'steel';

/** How far along its raceway a support may be off, feet, the others being where they are planned. */
export interface SupportRoom {
  readonly back: { readonly feet: number; readonly stop: SupportStop | null };
  readonly on: { readonly feet: number; readonly stop: SupportStop | null };
}

/** Steps in which it is looked for, feet: 1/8 in. */
const STEP = 1 / 96;
const SLIP = 1e-6;

/** What stops a support that stands so far along its raceway from where it is planned; null where all is held as it must be. */
export function supportStop(supports: RacewaySupports, number: number, by: number): SupportStop | null {
  const { lays, zones, supports: own } = supports;
  const places = own.map(({ along }, i) => (i === number - 1 ? along + by : along));
  const moved = places[number - 1]!;
  // What hangs from a stringer hangs from it wherever in its gap it stands.
  const wasHeld = zones?.some(
    ([from, to]) => own[number - 1]!.along >= from - SLIP && own[number - 1]!.along <= to + SLIP,
  );
  if (wasHeld && !zones!.some(([from, to]) => moved >= from - SLIP && moved <= to + SLIP)) return 'steel';
  return lays.some((lay) => !isHeld(lay, places)) ? 'spacing' : null;
}

/** Whether a conduit has a support no farther from each end, and from the next, than it may. */
function isHeld({ from, to, first, last, spacing, isNipple }: Lay, places: readonly number[]): boolean {
  if (isNipple) return true;
  const own = places.filter((at) => at >= from - SLIP && at <= to + SLIP).sort((a, b) => a - b);
  const [begin, end] = [own[0], own.at(-1)];
  if (begin === undefined || end === undefined) return false;
  return (
    begin <= from + first + SLIP &&
    end >= to - last - SLIP &&
    own.every((at, i) => i === 0 || at - own[i - 1]! <= spacing + SLIP)
  );
}

/** The room of a support along its raceway, looked for in steps of 1/8 in. to 3 ft; null where there is no such support. */
export function supportRoom(
  site: Site,
  plan: Pick<Plan, 'branches'>,
  raceway: string,
  number: number,
): SupportRoom | null {
  const supports = lotSupports(site, plan).find((each) => each.raceway.id === raceway);
  if (!supports?.supports[number - 1]) return null;
  const along = (sign: 1 | -1): SupportRoom['on'] => {
    for (let step = 1; step * STEP <= FARTHEST + SLIP; step++) {
      const stop = supportStop(supports, number, sign * step * STEP);
      if (stop) return { feet: (step - 1) * STEP, stop };
    }
    return { feet: FARTHEST, stop: null };
  };
  return { back: along(-1), on: along(1) };
}
