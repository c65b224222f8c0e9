import { copied } from '../../routing/kept/changed-places.ts';
import { keptLists } from '../../routing/kept/kept-list.ts';
import type { Reach } from '../../routing/reach/reach-result.ts';
import type { Direction } from '../../routing/site/schema/vocabulary.ts';
import type { Site } from '../../routing/site/site.ts';
import { branchDropLimit } from '../circuits/branch-size.ts';
import { worstDrops } from './circuits.ts';
import { branchAt, chargerPlaces, chargersAnew } from './compared/plan-difference.ts';
import type { UncountedPlan } from './plan-shape.ts';

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

/** Voltage drop against its limit, of the branch or from the source in all, whichever leaves less. Percent. */
export interface VoltsMargin extends Margin {
  readonly of: 'branch' | 'total';
}

/** The three margins of one charger; null where the plan has no such figure, as without a run. */
export interface Margins {
  readonly charger: string;
  readonly cord: CordMargin | null;
  /** Conductor length against the branch limit, feet. */
  readonly branch: Margin | null;
  readonly volts: VoltsMargin | null;
}

/** A margin's name. */
export const MARGIN_KINDS = ['cord', 'branch', 'volts'] as const;
export type MarginKind = (typeof MARGIN_KINDS)[number];

/** The margins of all chargers of a plan. */
export interface MarginTable {
  readonly get: (charger: string) => Margins | undefined;
  /** In the order of the site's chargers. */
  readonly values: () => readonly Margins[];
}

interface Worked {
  readonly plan: UncountedPlan;
  readonly site: Site;
  readonly margins: readonly Margins[];
  readonly table: MarginTable;
  /** Where the cords of each charger, by its place, stand in the plan. */
  readonly cords: readonly (readonly number[])[];
}

// The plan holds the objects of the last one wherever nothing changed: only what belongs to the others is worked anew.
const workedBy = keptLists({
  anew: (
    [[plan], [site]]: readonly [readonly [UncountedPlan], readonly [Site]],
    _: readonly [Site['chargers'], Site['rules']],
  ): Worked => anew(plan, site),
  after: ({ answer }, _, [[plan], [site]]) => after(answer, plan, site),
});

const workedOf = (plan: UncountedPlan, site: Site): Worked => workedBy([[plan], [site]], [site.chargers, site.rules]);

/** The three margins of each charger of a plan. */
export const marginsOf = (plan: UncountedPlan, site: Site): MarginTable => workedOf(plan, site).table;

/** The cords of one charger of a plan, in the order of the stalls that it serves; none where it is not there. */
export function cordsOf(plan: UncountedPlan, site: Site, charger: string): readonly Reach[] {
  const { cords } = workedOf(plan, site);
  return cords[chargerPlaces(site.chargers).get(charger) ?? -1]?.map((place) => plan.reach[place]!) ?? [];
}

/** The margins after a change of the plan; null where it changed so much that they are as soon worked anew. */
function after(last: Worked, plan: UncountedPlan, site: Site): Worked | null {
  const changed = chargersAnew(plan, last.plan, site.chargers);
  if (!changed) return null;
  // When a run comes or goes the volts at every box are other ones, most often by less than their branch decides.
  const all = plan.boxSupply.state !== last.plan.boxSupply.state;
  if (changed.size === 0 && !all) return { ...last, plan, site };
  const margins = last.margins.slice();
  const places: number[] = [];
  const volts = voltsOf(plan, site);
  for (const at of all ? site.chargers.keys() : [...changed].sort((a, b) => a - b)) {
    const own = volts(at);
    if (!changed.has(at) && sameVolts(own, margins[at]!.volts)) continue;
    margins[at] = marginsAt(plan, site, at, last.cords[at]!, own);
    places.push(at);
  }
  return worked(plan, site, copied(margins, last.margins, places), last.cords);
}

function anew(plan: UncountedPlan, site: Site): Worked {
  const places = chargerPlaces(site.chargers);
  const cords = site.chargers.map((): number[] => []);
  plan.reach.forEach(({ charger }, i) => {
    cords[places.get(charger)!]!.push(i);
  });
  const volts = voltsOf(plan, site);
  const margins = site.chargers.map((_, at) => marginsAt(plan, site, at, cords[at]!, volts(at)));
  return worked(plan, site, margins, cords);
}

function worked(plan: UncountedPlan, site: Site, margins: readonly Margins[], cords: Worked['cords']): Worked {
  const places = chargerPlaces(site.chargers);
  const get = (charger: string): Margins | undefined => margins[places.get(charger) ?? -1];
  return { plan, site, margins, table: { get, values: () => margins }, cords };
}

const sameVolts = (a: VoltsMargin | null, b: VoltsMargin | null): boolean => a?.of === b?.of && a?.used === b?.used;

type VoltsAt = (at: number) => VoltsMargin | null;

/** What is left of both limits on the drop of the charger at a place: the one that leaves less. */
function voltsOf(plan: UncountedPlan, { chargers, rules }: Site): VoltsAt {
  const worst = worstDrops(plan);
  return (at) => {
    const branch = branchAt(plan, chargers, at)?.branchDropPercent;
    if (branch === undefined) return null;
    const total = worst(at) ?? branch;
    const { dropLimit } = rules;
    const limit = branchDropLimit(rules, chargers[at]!);
    const left = { branch: limit - branch, total: dropLimit.total - total };
    return left.total < left.branch
      ? { of: 'total', left: left.total, used: total, limit: dropLimit.total }
      : { of: 'branch', left: left.branch, used: branch, limit };
  };
}

function marginsAt(
  plan: UncountedPlan,
  site: Site,
  at: number,
  cords: readonly number[],
  volts: VoltsMargin | null,
): Margins {
  const { id, branchLimit } = site.chargers[at]!;
  // Runs stand in the order of the chargers.
  const length = plan.runs[at]?.conductorLength ?? null;
  const limit = branchLimit ?? site.rules.branchLimit;
  let cord: CordMargin | null = null;
  for (const place of cords) {
    const { stall, worst } = plan.reach[place]!;
    const { direction, inlet, needed, available, margin } = worst;
    // A cord that cannot get there at all is worse than any that is short.
    const left = margin ?? Number.NEGATIVE_INFINITY;
    if (!cord || left < cord.left)
      cord = { left, used: needed ?? Number.POSITIVE_INFINITY, limit: available, stall, direction, inlet };
  }
  return {
    charger: id,
    cord,
    branch: length === null ? null : { left: limit - length, used: length, limit },
    volts,
  };
}

/** The charger with the least left of a kind, or undefined where none has such a margin. */
export function leastMargin(margins: MarginTable, kind: MarginKind): Margins | undefined {
  let worst: Margins | undefined;
  for (const each of margins.values()) {
    const left = each[kind]?.left;
    if (left !== undefined && (worst === undefined || left < worst[kind]!.left)) worst = each;
  }
  return worst;
}
