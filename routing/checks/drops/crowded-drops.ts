import { kept } from '../../kept/kept.ts';
import { type Hosted, keptHosts } from '../../plane/kept-hosts.ts';
import { distance } from '../../plane/space.ts';
import { printLength } from '../../site/numbers/feet-inches.ts';
import type { Finding } from '../../site/rules/finding.ts';
import type { Units } from '../../site/schema/vocabulary.ts';
import type { Charger, Drop } from '../../site/site.ts';
import { counted } from '../../words/counted.ts';
import { fewNamed, toldOverlaps } from '../overlaps/told-overlaps.ts';

/** Two boxes nearer than this are in one place: there is no room to mount both. Common practice, no source. */
const APART = 0.5;

const boxHosts = keptHosts<Drop>(
  ({ box: [x, y] }) => ({ minX: x - APART, minY: y - APART, maxX: x + APART, maxY: y + APART }),
  (a, b) => distance(a.box, b.box) < APART,
  ({ box }) => box,
  APART,
);

/** Drops whose boxes are in one place: one finding for each place, with how many there are. */
export const coincidingBoxes = (drops: readonly Drop[], units: Units): readonly Finding[] =>
  coinciding(boxHosts(drops).told, units);

const coinciding = kept((hosts: Hosted<Drop>, units: Units): readonly Finding[] => {
  const { items: drops } = hosts;
  const base = { severity: 'fail', rule: 'boxes-coincide', source: 'common practice, no source' } as const;
  const ids = (places: readonly number[]): string[] => places.map((place) => drops[place]!.id);
  return toldOverlaps(
    hosts,
    (host, guests) => {
      const a = drops[host]!;
      const gap = Math.min(...guests.slice(0, 100).map((guest) => distance(a.box, drops[guest]!.box)));
      const names = ids(guests);
      return {
        ...base,
        about: [...names, a.id],
        says:
          guests.length === 1
            ? `The boxes of ${a.id} and ${names[0]} are ${printLength(gap, units)} apart: two boxes in one place. Move one, or let one drop hold both cords.`
            : `${guests.length + 1} boxes are in one place, within ${printLength(APART, units)} of that of ${a.id}: ${fewNamed(names)}. Move them apart, or let one drop hold the cords.`,
        value: gap,
        limit: APART,
        unit: 'ft',
      };
    },
    (guests, places) => ({
      ...base,
      about: ids(guests),
      says: `And ${guests.length} more boxes are in the place of others, at ${places} more places.`,
      value: guests.length,
    }),
  );
});

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

/** Places of the drops from which none or several cords hang, with how many: every drop holds one. */
const oddDrops = kept((places: Int32Array, drops: number): readonly (readonly [place: number, cords: number])[] => {
  const cords = new Uint32Array(drops);
  for (let c = 0; c < places.length; c++) cords[places[c]!]!++;
  const odd: (readonly [number, number])[] = [];
  cords.forEach((count, i) => {
    if (count !== 1) odd.push([i, count]);
  });
  return odd;
});

/**
 * Drops from which more cords hang than they say they hold, one unless `holds` says otherwise, and those from which none
 * hangs. `places` has the position of each charger's drop.
 */
export function cordsPerDrop(drops: readonly Drop[], chargers: readonly Charger[], places: Int32Array): Finding[] {
  const findings: Finding[] = [];
  const idle: string[] = [];
  for (const [i, cords] of oddDrops(places, drops.length)) {
    if (cords === 0) {
      idle.push(drops[i]!.id);
      continue;
    }
    const { id, holds = 1 } = drops[i]!;
    if (cords <= holds) continue;
    const hung = chargers.filter((_, c) => places[c] === i).map((charger) => charger.id);
    findings.push({
      severity: 'warn',
      rule: 'cords-per-drop',
      about: [id, ...hung],
      says: `${id} holds ${counted(holds, 'cord')} and ${hung.length} chargers hang from it: ${hung.join(', ')}.`,
      value: hung.length,
      limit: holds,
      source: 'cords that the drop is made for',
    });
  }
  if (idle.length > 0) findings.push(idleDrops(idle, drops.length));
  return findings;
}
