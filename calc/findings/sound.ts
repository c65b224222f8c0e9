import type { Finding } from '../../routing/site/finding.ts';
import type { Rules } from '../../routing/site/site.ts';
import { remembered } from '../memo.ts';
import { placeOf } from './in-order.ts';

const soundFinding = remembered(
  ({ code }: Rules, warnings: number): Finding => ({
    severity: 'note',
    rule: 'sound',
    about: [],
    says: `Nothing fails: runs and their lengths, reach and coverage of every cord, cord lengths and rest heights, clear heights, keep-outs, working space, breakers, conductors, voltage drop, conduit fill, bends and pulls, and the supply's loading were checked against the rules of the site and ${code}.${warnings === 0 ? '' : ` ${warnings} ${warnings === 1 ? 'matter is' : 'matters are'} worth a look.`}`,
    source: `rules of the site, ${code}`,
  }),
);

/** Sorted findings; where none fails, with the note that says what was looked at. */
export function withSound(rules: Rules, sorted: readonly Finding[]): readonly Finding[] {
  if (sorted[0]?.severity === 'fail' || sorted.some(({ rule }) => rule === 'unsupported')) return sorted;
  const sound = soundFinding(rules, firstNote(sorted));
  const place = placeOf(sorted, sound);
  return [...sorted.slice(0, place), sound, ...sorted.slice(place)];
}

/** How many sorted findings stand before the notes. */
function firstNote(sorted: readonly Finding[]): number {
  let low = 0;
  let high = sorted.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (sorted[middle]!.severity === 'note') high = middle;
    else low = middle + 1;
  }
  return low;
}
