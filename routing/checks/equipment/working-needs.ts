import { direction } from '../../plane/direction.ts';
import type { WorkingSpace } from '../../site/place/working-space.ts';
import type { Equipment } from '../../site/site.ts';

/** What the room in front of a piece of equipment has to be: worked out where its volts and amperes are known. Feet. */
export interface WorkingNeeds {
  /** Depth with nothing grounded opposite (condition 1), grounded parts (2), live parts (3); null where no table says. */
  readonly depths: readonly [clear: number, grounded: number, live: number] | null;
  /** It is so large and wide that its space is to be entered from both ends. */
  readonly twoEntrances: boolean;
  /** Least width of each of those entrances. */
  readonly entranceWidth: number;
  /** Where the depths are from, and for what volts to ground. */
  readonly source: string;
  /** The sections of the code, and when it asks for two entrances. */
  readonly cites: {
    readonly space: string;
    readonly depth: string;
    readonly size: string;
    readonly entrances: string;
  };
}

/** What the working spaces of a site have to be. */
export interface NeedsOf {
  /** Whatever the equipment. */
  readonly least: WorkingSpace;
  /** By the id of the equipment, as far as its volts and amperes are known. */
  readonly by: ReadonlyMap<string, WorkingNeeds>;
}

/** Of equipment of which nothing more is known: the least depth, whatever is opposite. */
export const leastNeeds = ({ depth }: WorkingSpace): WorkingNeeds => ({
  depths: [depth, depth, depth],
  twoEntrances: false,
  entranceWidth: 0,
  source: 'the least depth, as nothing more is known',
  cites: { space: 'code', depth: 'code', size: 'code', entrances: 'code' },
});

export type Condition = 1 | 2 | 3;

/** Equipment whose front opens on live parts; a transformer stands in a grounded case. */
const LIVE_FRONT: ReadonlySet<Equipment['kind']> = new Set([
  'source',
  'service',
  'panelboard',
  'switchboard',
  'disconnect',
  'inverter',
]);

/** Cosine of the angle past which two fronts do not look at one another. */
const FACING = -0.5;

/** Condition that other equipment in front of a piece of equipment makes: 3 where its face looks back, else 2. */
export function conditionBefore(own: Equipment, other: Equipment): Condition {
  const [ux, uy] = direction(own.rotation ?? 0);
  const [vx, vy] = direction(other.rotation ?? 0);
  return LIVE_FRONT.has(other.kind) && ux * vx + uy * vy < FACING ? 3 : 2;
}
