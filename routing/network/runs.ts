import { copied } from '../kept/changed-places.ts';
import { LENGTH_SLACK } from '../plane/space.ts';
import { chargersMoved, type Hanging, hangingOf } from '../site/hanging.ts';
import { byId } from '../site/look-up.ts';
import type { Finding } from '../site/rules/finding.ts';
import type { Charger, Drop, Equipment, Site } from '../site/site.ts';
import { networkOf } from './network.ts';
import type { Run } from './run.ts';
import { branchLimitFinding, noRunFinding, pedestalFeedFinding } from './run-findings.ts';
import { closestTap } from './taps.ts';
import { shortestWay } from './way.ts';
import { type Ways, waysFrom } from './ways.ts';

export interface Runs {
  readonly runs: readonly Run[];
  readonly findings: readonly Finding[];
}

/** A run with all that it was worked out from: while these are the same objects, the run is the same object. */
interface Entry {
  readonly drop: Drop;
  readonly ways: Ways;
  readonly rules: Site['rules'];
  readonly units: Site['units'];
  readonly run: Run;
  readonly findings: readonly Finding[];
}

/** The one list that stands for no findings. */
const NOTHING: readonly Finding[] = [];

/**
 * What the last call with one list of chargers found. The next one looks at the chargers whose drop or ways are others,
 * so that moving one drop of thousands costs one run.
 */
interface Book {
  /** The equipment that feeds any charger, and for each charger its place among these. */
  readonly feeding: readonly string[];
  readonly feedingAt: Int32Array;
  readonly said: (readonly Finding[])[];
  /** Null while what is in the book is not of one site. */
  hanging: Hanging | null;
  ways: readonly Ways[];
  rules: Site['rules'] | null;
  units: Site['units'] | null;
  last: Runs | null;
}

const books = new WeakMap<readonly Charger[], Book>();
const entries = new WeakMap<Charger, Entry>();

/**
 * The run of every charger, in the order of the chargers: the shortest path from the entry of the equipment that feeds
 * it to the box of its drop, tap + raceway + tap, measured in space (site file, section 3). Findings: `no-run` where a
 * tap would be longer than `tapLimit`, `branch-limit` where the conductors are longer than allowed, `pedestal-feed` where
 * a pedestal is tapped from overhead. Feet and degrees.
 *
 * Equal lengths are decided by fewer bends, then by the raceways' ids read from the box back to the equipment. A run
 * whose charger, drop, rules, equipment and raceways are the same objects as before is returned as the same object.
 */
export function runsOf(site: Site): Runs {
  const network = networkOf(site.raceways, site.rules.joinTolerance);
  const { chargers, drops, rules, units } = site;
  const book = bookOf(chargers);
  const equipment = book.feeding.map((id) => feedingEquipment(site, id));
  const ways = equipment.map((from) => waysFrom(network, from, rules.tapLimit));
  const { last } = book;
  const hanging = hangingOf(chargers, drops);
  const alike = last !== null && book.rules === rules && book.units === units;
  const moved = alike ? chargersMoved(hanging, book.hanging) : null;
  const stale = moved && withNewWays(moved, book, ways);
  book.hanging = null;
  let runs: Run[] | null = null;
  const changed: number[] = [];
  let saidChanged = last === null;
  for (const i of stale ?? chargers.keys()) {
    const place = book.feedingAt[i]!;
    const charger = chargers[i]!;
    const drop = dropOf(charger, hanging, i);
    let entry = entries.get(charger);
    if (!entry || !isCurrent(entry, drop, ways[place]!, rules, units)) {
      entry = workOut(site, charger, drop, equipment[place]!, ways[place]!);
      entries.set(charger, entry);
    }
    if (last?.runs[i] === entry.run && book.said[i] === entry.findings) continue;
    saidChanged ||= book.said[i] !== entry.findings;
    book.said[i] = entry.findings;
    runs ??= last?.runs.slice() ?? new Array<Run>(chargers.length);
    runs[i] = entry.run;
    changed.push(i);
  }
  Object.assign(book, { ways, rules, units, hanging });
  if (last && runs === null) return last;
  const findings = saidChanged || !last ? book.said.flat() : last.findings;
  book.last = { runs: runs === null ? [] : last ? copied(runs, last.runs, changed) : runs, findings };
  return book.last;
}

/** Some chargers, and those that equipment feeds whose ways are others, by their places. */
function withNewWays(some: readonly number[], { feedingAt, ways }: Book, now: readonly Ways[]): readonly number[] {
  const isNew = now.map((one, k) => one !== ways[k]);
  if (!isNew.includes(true)) return some;
  const places = new Set(some);
  feedingAt.forEach((feeding, i) => {
    if (isNew[feeding]) places.add(i);
  });
  return [...places].sort((a, b) => a - b);
}

function dropOf(charger: Charger, { drops, at }: Hanging, i: number): Drop {
  const place = at[i]!;
  if (place < 0) throw new RangeError(`charger ${charger.id} hangs at drop ${charger.drop}, which is not in the site`);
  return drops[place]!;
}

const isCurrent = (entry: Entry, drop: Drop, ways: Ways, rules: Site['rules'], units: Site['units']): boolean =>
  entry.drop === drop && entry.ways === ways && entry.rules === rules && entry.units === units;

function bookOf(chargers: readonly Charger[]): Book {
  let book = books.get(chargers);
  if (book) return book;
  const feeding: string[] = [];
  const places = new Map<string, number>();
  const feedingAt = new Int32Array(chargers.length);
  chargers.forEach(({ from }, i) => {
    let place = places.get(from);
    if (place === undefined) {
      place = feeding.push(from) - 1;
      places.set(from, place);
    }
    feedingAt[i] = place;
  });
  book = {
    feeding,
    feedingAt,
    hanging: null,
    said: new Array(chargers.length).fill(NOTHING),
    ways: [],
    rules: null,
    units: null,
    last: null,
  };
  books.set(chargers, book);
  return book;
}

function feedingEquipment(site: Site, id: string): Equipment {
  const found = byId(site.equipment).get(id);
  if (!found) throw new RangeError(`${id} feeds a charger and is not in the site`);
  return found;
}

function workOut(site: Site, charger: Charger, drop: Drop, from: Equipment, ways: Ways): Entry {
  const { rules, units } = site;
  const run = runOf(ways, charger, drop, rules);
  const said =
    run.length === null
      ? [noRunFinding(site, charger, drop, from, ways)]
      : [branchLimitFinding(site, charger, run), pedestalFeedFinding(site, charger, drop, run)];
  const findings = said.filter((finding) => finding !== null);
  return { drop, ways, rules, units, run, findings: findings.length === 0 ? NOTHING : findings };
}

function runOf(ways: Ways, charger: Charger, drop: Drop, rules: Site['rules']): Run {
  const tap = closestTap(ways.network, drop.box, rules.tapLimit, (component) => ways.parts.has(component));
  const way = tap && shortestWay(ways, [tap], drop.box);
  const conductorLength = way && way.length + rules.allowance.equipment + rules.allowance.box;
  // Written out in full, every run with the same fields in the same order: there are many.
  return {
    charger: charger.id,
    drop: drop.id,
    from: charger.from,
    length: way ? way.length : null,
    conductorLength,
    taps: way && { equipment: way.taps.start, box: way.taps.end },
    path: way ? way.path : [],
    raceways: way ? way.raceways : [],
    legs: way ? way.legs : [],
    bends: way ? way.bends : 0,
    bendDegrees: way ? way.bendDegrees : 0,
    ok: conductorLength !== null && conductorLength <= (charger.branchLimit ?? rules.branchLimit) + LENGTH_SLACK,
  };
}
