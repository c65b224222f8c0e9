import type { Finding } from '../../../routing/site/rules/finding.ts';
import { chargers, feeder, type Parts, panel, siteOf, source, supplied, transformer } from './small-site.ts';

export const found = (parts: Parts, rule: string): Finding | undefined =>
  supplied(siteOf(parts)).findings.find((finding) => finding.rule === rule);

export const conductor = (size: string, sets = 1, metal: 'copper' | 'aluminum' = 'copper') =>
  ({ size, metal, sets, insulation: 'XHHW-2' }) as const;

/** A panel behind a transformer, between the breakers of its primary and its secondary. */
export const behind = (kva: number, primary: number, secondary: number, count = 3): Parts => ({
  equipment: [source(480), transformer('T', { kva }), panel('P')],
  feeders: [
    feeder('SVC', 'T', { breakerAmps: primary, conductor: conductor('500') }),
    feeder('T', 'P', { breakerAmps: secondary, conductor: conductor('500', 2) }),
  ],
  chargers: chargers('P', count),
});
