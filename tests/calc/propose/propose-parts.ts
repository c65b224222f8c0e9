import { plan } from '../../../calc/plan/plan.ts';
import { INVENTED_LIST } from '../../../calc/prices/invented-list.ts';
import { propose, type What } from '../../../calc/propose/propose.ts';
import type { SiteFile } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';

export const proposed = (file: SiteFile, what: What, cordsADrop = 1): ReturnType<typeof propose> =>
  propose(file, { what, cordsADrop, prices: INVENTED_LIST });

/** What stands on the ground, and nothing that is installed but the source. */
export function bare({ drops, chargers, raceways, pullpoints, feeders, loads, asBuilt, ...file }: SiteFile): SiteFile {
  return { ...file, equipment: (file.equipment ?? []).filter(({ kind }) => kind === 'source') };
}

export const failing = (file: SiteFile): string[] =>
  plan(toSite(file)).findings.flatMap(({ severity, says }) => (severity === 'fail' ? [says] : []));
