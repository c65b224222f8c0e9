import type { Finding } from '../../../../routing/site/rules/finding.ts';
import type { Feeder } from '../../../../routing/site/site.ts';
import { type Parts, siteOf, supplied } from '../small-site.ts';

export const conductor = (size: string, insulation: Feeder['conductor']['insulation'] = 'THWN-2', sets = 1) =>
  ({ size, metal: 'copper', sets, insulation }) as const;

export const of = (parts: Parts, rule: string): Finding | undefined =>
  supplied(siteOf(parts)).findings.find((finding) => finding.rule === rule);
