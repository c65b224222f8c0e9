import type { SiteFile } from '../../routing/site/site.ts';
import { toSite } from '../../routing/site/to-site.ts';
import { plan } from '../plan/plan.ts';

/** Each round gives feeders with too much drop one set of conductors more. */
const ROUNDS = 6;

/**
 * The file with more conductors in parallel in those of some feeders at whose end the drop, from nominal to a box, is past
 * its limit: the breaker fixed their size, and a feeder that is long wants more. Says which were widened.
 */
export function withWiderFeeders(
  file: SiteFile,
  feeders: ReadonlySet<string>,
): { readonly file: SiteFile; readonly widened: readonly string[] } {
  let next = file;
  const widened = new Set<string>();
  for (let round = 0; round < ROUNDS; round++) {
    const over = new Set(
      plan(toSite(next)).findings.flatMap(({ rule, about }) => (rule === 'total-drop' ? about.slice(-1) : [])),
    );
    const wants = ({ id, to }: FileFeeder): boolean => feeders.has(id) && over.has(to);
    if (!next.feeders?.some(wants)) break;
    for (const one of next.feeders) if (wants(one)) widened.add(one.id);
    next = { ...next, feeders: next.feeders.map((one) => (wants(one) ? withOneSetMore(one) : one)) };
  }
  return { file: next, widened: [...widened] };
}

type FileFeeder = NonNullable<SiteFile['feeders']>[number];

const withOneSetMore = (feeder: FileFeeder): FileFeeder => ({
  ...feeder,
  conductor: { ...feeder.conductor, sets: feeder.conductor.sets + 1 },
});
