import type { Site } from '../routing/site/site.ts';
import type { Direction } from '../routing/site/vocabulary.ts';
import { remembered } from './memo.ts';
import type { Plan } from './plan-shape.ts';

/** What is left of a limit; negative is what is missing. */
export interface Margin {
  readonly left: number;
  readonly used: number;
  readonly limit: number;
}

/** The worst of a charger's cords: the stall, and the car and inlet in it, that decide. Feet. */
export interface CordMargin extends Margin {
  readonly stall: string;
  readonly direction: Direction;
  readonly inlet: string;
}

/** The three margins of one charger; null where the plan has no such figure, as without a run. */
export interface Margins {
  readonly charger: string;
  readonly cord: CordMargin | null;
  /** Conductor length against the branch limit, feet. */
  readonly branch: Margin | null;
  /** Voltage drop of the branch against its limit, percent. */
  readonly volts: Margin | null;
}

/** A margin's name. */
export const MARGIN_KINDS = ['cord', 'branch', 'volts'] as const;
export type MarginKind = (typeof MARGIN_KINDS)[number];

/** The three margins of each charger of a plan, in the order of the site's chargers. */
export const marginsOf = remembered((plan: Plan, site: Site): ReadonlyMap<string, Margins> => {
  const cords = new Map<string, CordMargin>();
  for (const { charger, stall, worst } of plan.reach) {
    const { direction, inlet, needed, available, margin } = worst;
    // A cord that cannot get there at all is worse than any that is short.
    const left = margin ?? Number.NEGATIVE_INFINITY;
    const so = cords.get(charger);
    if (!so || left < so.left)
      cords.set(charger, { left, used: needed ?? Number.POSITIVE_INFINITY, limit: available, stall, direction, inlet });
  }
  const runs = new Map(plan.runs.map((run) => [run.charger, run]));
  const circuits = new Map(plan.circuits.map((circuit) => [circuit.charger, circuit]));
  return new Map(
    site.chargers.map(({ id, branchLimit }) => {
      const length = runs.get(id)?.conductorLength ?? null;
      const limit = branchLimit ?? site.rules.branchLimit;
      const drop = circuits.get(id)?.branchDropPercent;
      const margins: Margins = {
        charger: id,
        cord: cords.get(id) ?? null,
        branch: length === null ? null : { left: limit - length, used: length, limit },
        volts:
          drop === undefined
            ? null
            : { left: site.rules.dropLimit.branch - drop, used: drop, limit: site.rules.dropLimit.branch },
      };
      return [id, margins];
    }),
  );
});

/** The charger with the least left of a kind, or undefined where none has such a margin. */
export function worstOf(margins: ReadonlyMap<string, Margins>, kind: MarginKind): Margins | undefined {
  let worst: Margins | undefined;
  for (const each of margins.values()) {
    const left = each[kind]?.left;
    if (left !== undefined && (worst === undefined || left < worst[kind]!.left)) worst = each;
  }
  return worst;
}
