import { guestsOf, type Hosted } from '../../plane/kept-hosts.ts';
import type { Finding } from '../../site/rules/finding.ts';

/** So many places are told one by one; the rest in one sentence. */
const MOST_TOLD = 50;
/** So many ids of one place are named. */
const MOST_NAMED = 4;

/** `S02`, `S02 and S03`, `S02, S03, S04 and 7 more`. */
export function fewNamed(ids: readonly string[]): string {
  if (ids.length <= MOST_NAMED) return ids.length < 2 ? ids.join() : `${ids.slice(0, -1).join(', ')} and ${ids.at(-1)}`;
  return `${ids.slice(0, MOST_NAMED - 1).join(', ')} and ${ids.length - MOST_NAMED + 1} more`;
}

/**
 * One finding for each item that others lie on, up to fifty, and one for all the rest: never one for every pair. `tell`
 * makes the finding of a host and its guests, `rest` that of so many guests elsewhere, both by places in the list.
 */
export function toldOverlaps(
  hosts: Hosted<unknown>,
  tell: (host: number, guests: readonly number[]) => Finding,
  rest: (guests: readonly number[], places: number) => Finding,
): readonly Finding[] {
  const all = [...guestsOf(hosts)].sort(([a], [b]) => a - b);
  const findings = all.slice(0, MOST_TOLD).map(([host, guests]) => tell(host, guests));
  const left = all.slice(MOST_TOLD);
  return left.length === 0
    ? findings
    : [
        ...findings,
        rest(
          left.flatMap(([, guests]) => guests),
          left.length,
        ),
      ];
}
