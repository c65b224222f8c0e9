import type { Box } from '../plane/box.ts';
import { type BoxIndex, boxIndex, positionsIn } from '../plane/box-index.ts';
import { printLength } from '../site/feet-inches.ts';
import type { Finding } from '../site/finding.ts';
import type { Charger, Drop, Point3 } from '../site/site.ts';
import type { Units } from '../site/vocabulary.ts';

/** Two boxes nearer than this are in one place: there is no room to mount both. Common practice, no source. */
const APART = 0.5;

const boxAt = ({ box: [x, y] }: Drop): Box => ({ minX: x, minY: y, maxX: x, maxY: y });

/** Pairs of drops whose boxes are in one place, as positions in the list; `built` are the pairs within the index's tree. */
interface Crowd {
  readonly drops: readonly Drop[];
  readonly index: BoxIndex<Drop>;
  readonly built: readonly (readonly [number, number])[];
}

let latest: Crowd | null = null;

function crowdOf(drops: readonly Drop[]): Crowd {
  if (latest?.drops === drops) return latest;
  const index = boxIndex(drops, boxAt, latest?.index);
  const kept = latest && index.tree === latest.index.tree ? latest.built : null;
  const built = kept ?? pairsOf(drops, index, drops.keys());
  latest = { drops, index, built };
  return latest;
}

/** The pairs that some of the drops are in. */
function pairsOf(drops: readonly Drop[], index: BoxIndex<Drop>, some: Iterable<number>): [number, number][] {
  const pairs: [number, number][] = [];
  for (const i of some) {
    const [x, y] = drops[i]!.box;
    const near = { minX: x - APART, minY: y - APART, maxX: x + APART, maxY: y + APART };
    for (const j of positionsIn(index, near))
      if (j !== i && apart(drops[i]!.box, drops[j]!.box) < APART) pairs.push(i < j ? [i, j] : [j, i]);
  }
  return pairs;
}

/** Two drops whose boxes are in one place. */
export function coincidingBoxes(drops: readonly Drop[], units: Units): Finding[] {
  const { index, built } = crowdOf(drops);
  const changed = new Set(index.changed);
  const pairs = built.filter(([i, j]) => !changed.has(i) && !changed.has(j));
  const all = [...pairs, ...pairsOf(drops, index, changed)].sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  const once = all.filter(([i, j], k) => k === 0 || all[k - 1]![0] !== i || all[k - 1]![1] !== j);
  return once.map(([i, j]) => {
    const a = drops[i]!;
    const b = drops[j]!;
    const gap = apart(a.box, b.box);
    return {
      severity: 'fail',
      rule: 'boxes-coincide',
      about: [b.id, a.id],
      says: `The boxes of ${a.id} and ${b.id} are ${printLength(gap, units)} apart: two boxes in one place. Move one, or let one drop hold both cords.`,
      value: gap,
      limit: APART,
      unit: 'ft',
      source: 'common practice, no source',
    };
  });
}

const apart = (a: Point3, b: Point3): number => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);

const idleDrops = (idle: readonly string[], of: number): Finding => ({
  severity: 'warn',
  rule: 'drop-idle',
  about: idle,
  says:
    idle.length === 1
      ? `No charger hangs at ${idle[0]}: it serves nothing. Hang one there, or delete the drop.`
      : `No charger hangs at ${idle.length} of ${of} drops: they serve nothing. Hang one at each, or delete them.`,
  value: idle.length,
  limit: 0,
  source: 'drops and chargers that are drawn',
});

/**
 * Drops from which more cords hang than they say they hold, one unless `holds` says otherwise, and those from which none
 * hangs. `places` has the position of each charger's drop.
 */
export function cordsPerDrop(drops: readonly Drop[], chargers: readonly Charger[], places: Int32Array): Finding[] {
  const cords = new Uint32Array(drops.length);
  for (let c = 0; c < places.length; c++) cords[places[c]!]!++;
  const findings: Finding[] = [];
  const idle: string[] = [];
  for (let i = 0; i < drops.length; i++) {
    // Every drop holds one.
    if (cords[i]! === 1) continue;
    if (cords[i]! === 0) {
      idle.push(drops[i]!.id);
      continue;
    }
    const { id, holds = 1 } = drops[i]!;
    if (cords[i]! <= holds) continue;
    const hung = chargers.filter((_, c) => places[c] === i).map((charger) => charger.id);
    findings.push({
      severity: 'warn',
      rule: 'cords-per-drop',
      about: [id, ...hung],
      says: `${id} holds ${holds} cord${holds === 1 ? '' : 's'} and ${hung.length} chargers hang from it: ${hung.join(', ')}.`,
      value: hung.length,
      limit: holds,
      source: 'cords that the drop is made for',
    });
  }
  if (idle.length > 0) findings.push(idleDrops(idle, drops.length));
  return findings;
}
