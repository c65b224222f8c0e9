import { plan } from '../../../calc/plan/plan.ts';
import { INVENTED_LIST } from '../../../calc/prices/invented-list.ts';
import { propose, type What } from '../../../calc/propose/propose.ts';
import type { SiteFile } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';

const known = new Map<string, ReturnType<typeof propose>>();

/**
 * Answers that are priced of each search for raceways where a test asks for what holds of any proposal, however long it
 * was sought: a seventh of what is usual for a small lot.
 */
export const FEW_ANSWERS = 40;

/** What is proposed for a lot: worked once for all tests of a file that ask for the same. */
export function proposed(
  file: SiteFile,
  what: What,
  cordsADrop = 1,
  search: { readonly answers?: number } = {},
): ReturnType<typeof propose> {
  const asked = JSON.stringify([what, cordsADrop, search, file]);
  const proposal = known.get(asked) ?? propose(file, { what, cordsADrop, prices: INVENTED_LIST, ...search });
  known.set(asked, proposal);
  return proposal;
}

/** What stands on the ground, and nothing that is installed but the source. */
export function bare({ drops, chargers, raceways, pullpoints, feeders, loads, asBuilt, ...file }: SiteFile): SiteFile {
  return { ...file, equipment: (file.equipment ?? []).filter(({ kind }) => kind === 'source') };
}

export const failing = (file: SiteFile): string[] =>
  plan(toSite(file)).findings.flatMap(({ severity, says }) => (severity === 'fail' ? [says] : []));
