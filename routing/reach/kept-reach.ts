import { copied } from '../kept/changed-places.ts';
import type { Box } from '../plane/box.ts';
import { chargersMoved, type Hanging, hangingOf } from '../site/hanging.ts';
import type { Finding } from '../site/rules/finding.ts';
import type { Charger, Drop, Stall } from '../site/site.ts';
import { placeOf } from './by-id.ts';
import { chargerReach } from './charger-reach.ts';
import type { Now } from './now.ts';
import type { Reach } from './reach-result.ts';

/**
 * The reach of a list of chargers, with what each was worked from, side by side in flat lists: holding 20,000 chargers
 * against a changed site then goes through a few arrays and opens none of the chargers.
 */
export interface KeptReach {
  readonly chargers: readonly Charger[];
  /** The site that the results hold on. */
  now: Now;
  /** By charger: its drop. */
  readonly drops: (Drop | undefined)[];
  /** How they hung when the drops were last looked at; null before. */
  hanging: Hanging | null;
  /** By charger: where its stalls begin in the two lists after; one more at the end. */
  readonly first: Int32Array;
  readonly stallPlace: Int32Array;
  readonly stalls: (Stall | undefined)[];
  /** The list of which `stalls` are known to be; null where they are to be looked up. */
  stallsOf: readonly Stall[] | null;
  /** By charger: the box that had a say in its result, four numbers. */
  readonly seen: Float64Array;
  /** By charger: 1 where its result stands. */
  readonly known: Uint8Array;
  /** Side by side with `stalls`: the reach of its charger to each. */
  readonly reach: Reach[];
  /** By charger. */
  readonly findings: (readonly Finding[])[];
  /** What was last given out, the chargers worked since, and whether any of them has or had findings. */
  given: Given | null;
  readonly worked: Set<number>;
  saidAnew: boolean;
}

/** The results of all chargers, as they are given out. */
export interface Given {
  readonly reach: readonly Reach[];
  readonly findings: readonly Finding[];
}

/** The one list that stands for no findings. */
const NO_FINDINGS: readonly Finding[] = [];

// A stall touches the box of its own cords; this much more keeps rounding from setting them apart.
const MARGIN = 1e-6;

const kept = new WeakMap<readonly Charger[], KeptReach>();
let latest: KeptReach | null = null;

/** What is known of the reach of a site's chargers: a result stands where all that had a say in it is as it was. */
export function keptReach(now: Now): KeptReach {
  const { chargers } = now.site;
  let run = kept.get(chargers);
  if (!run) {
    run = laidOut(now, latest);
    kept.set(chargers, run);
  }
  latest = run;
  if (run.now.site !== now.site) bringUp(run, now);
  return run;
}

/** Works charger i where its result does not stand. */
export function work(run: KeptReach, i: number): void {
  if (run.known[i] === 1) return;
  const { field, shared } = run.now;
  const places = run.stallPlace.subarray(run.first[i]!, run.first[i + 1]!);
  const stalls = Array.from(places, (at) => ({ stall: field.stalls[at]!, vehicle: field.vehicles[at]! }));
  const result = chargerReach({ charger: run.chargers[i]!, drop: run.drops[i]!, stalls, field, shared });
  const { minX, minY, maxX, maxY } = result.seen;
  run.seen.set([minX - MARGIN, minY - MARGIN, maxX + MARGIN, maxY + MARGIN], 4 * i);
  for (let k = 0; k < places.length; k++) run.reach[run.first[i]! + k] = result.reach[k]!;
  run.saidAnew ||= result.findings.length > 0 || run.findings[i]!.length > 0;
  run.findings[i] = result.findings.length === 0 ? NO_FINDINGS : result.findings;
  run.known[i] = 1;
  run.worked.add(i);
}

/** Works every charger whose result does not stand. What is given out is the same where none was worked. */
export function workAll(run: KeptReach): Given {
  for (let i = run.known.indexOf(0); i >= 0; i = run.known.indexOf(0, i + 1)) work(run, i);
  const { given: last, worked, first } = run;
  if (last !== null && worked.size === 0) return last;
  const places = [...worked].sort((a, b) => a - b);
  const reach = run.reach.slice();
  if (last !== null)
    copied(
      reach,
      last.reach,
      places.flatMap((i) => between(first[i]!, first[i + 1]!)),
    );
  const findings = last === null || run.saidAnew ? run.findings.flat() : last.findings;
  run.given = { reach, findings };
  run.saidAnew = false;
  worked.clear();
  return run.given;
}

const between = (from: number, to: number): readonly number[] => Array.from({ length: to - from }, (_, k) => from + k);

/** The flat lists of a new list of chargers, with what an earlier one knew of those that are in both. */
function laidOut(now: Now, before: KeptReach | null): KeptReach {
  const { chargers } = now.site;
  const first = new Int32Array(chargers.length + 1);
  for (let i = 0; i < chargers.length; i++) first[i + 1] = first[i]! + chargers[i]!.stalls.length;
  const run: KeptReach = {
    chargers,
    now: before?.now ?? now,
    hanging: null,
    drops: new Array(chargers.length).fill(undefined),
    first,
    stallPlace: new Int32Array(first[chargers.length]!).fill(-1),
    stalls: new Array(first[chargers.length]!).fill(undefined),
    stallsOf: null,
    seen: new Float64Array(4 * chargers.length),
    known: new Uint8Array(chargers.length),
    reach: new Array(first[chargers.length]!),
    findings: new Array(chargers.length).fill(NO_FINDINGS),
    given: null,
    worked: new Set(),
    saidAnew: false,
  };
  if (before) {
    const places = new Map(before.chargers.map((charger, j) => [charger, j]));
    for (let i = 0; i < chargers.length; i++) {
      const j = places.get(chargers[i]!);
      if (j !== undefined) takeOver(run, i, before, j);
    }
  }
  bringUp(run, now);
  return run;
}

function takeOver(run: KeptReach, i: number, before: KeptReach, j: number): void {
  run.drops[i] = before.drops[j];
  run.known[i] = before.known[j]!;
  run.findings[i] = before.findings[j]!;
  run.seen.set(before.seen.subarray(4 * j, 4 * j + 4), 4 * i);
  for (let k = run.first[i]!, m = before.first[j]!; k < run.first[i + 1]!; k++, m++) {
    run.stallPlace[k] = before.stallPlace[m]!;
    run.stalls[k] = before.stalls[m];
    run.reach[k] = before.reach[m]!;
  }
}

/** Holds the results against a site, and forgets those that something has changed for. */
function bringUp(run: KeptReach, now: Now): void {
  const { chargers, known, first, stallPlace } = run;
  const { drops, stalls } = now.site;
  const hanging = hangingOf(chargers, drops);
  const moved = chargersMoved(hanging, run.hanging);
  run.hanging = null;
  for (const i of moved ?? chargers.keys()) {
    const at = hanging.at[i]!;
    if (at < 0) throw missing(chargers[i]!.drop);
    if (drops[at] === run.drops[i]) continue;
    run.drops[i] = drops[at];
    known[i] = 0;
  }
  run.hanging = hanging;
  for (let i = 0; run.stallsOf !== stalls && i < chargers.length; i++) {
    for (let k = first[i]!; k < first[i + 1]!; k++) {
      if (stallPlace[k]! >= 0 && stalls[stallPlace[k]!] === run.stalls[k]) continue;
      const at = placeNow(stalls, chargers[i]!.stalls[k - first[i]!]!, stallPlace[k]!);
      stallPlace[k] = at;
      if (stalls[at] === run.stalls[k]) continue;
      run.stalls[k] = stalls[at];
      known[i] = 0;
    }
  }
  run.stallsOf = stalls;
  if (run.now.shared !== now.shared) known.fill(0);
  else if (run.now.field !== now.field) forgetNear(run, now.changesSince(run.now.field));
  run.now = now;
}

function forgetNear({ known, seen }: KeptReach, changes: readonly Box[] | null): void {
  if (!changes) {
    known.fill(0);
    return;
  }
  for (const { minX, minY, maxX, maxY } of changes)
    for (let i = 0; i < known.length; i++)
      if (seen[4 * i]! <= maxX && seen[4 * i + 1]! <= maxY && seen[4 * i + 2]! >= minX && seen[4 * i + 3]! >= minY)
        known[i] = 0;
}

function placeNow(list: readonly { readonly id: string }[], id: string, before: number): number {
  const at = placeOf(list, id, before);
  if (at < 0) throw missing(id);
  return at;
}

const missing = (id: string): RangeError =>
  new RangeError(`no element "${id}": a site's references are checked when it is read`);
