import { expect } from 'vitest';
import { reachFindings } from '../../../routing/checks/reach-findings.ts';
import type { Finding } from '../../../routing/site/rules/finding.ts';
import type { SiteFile } from '../../../routing/site/site.ts';
import { CAR, charger, drop, siteOf, stall } from '../reach/sites.ts';

export const lot = (more: Partial<SiteFile> = {}): SiteFile => ({
  format: 'overrow/site',
  version: 1,
  units: 'ft',
  name: 'test',
  vehicles: { car: CAR },
  stalls: [stall('S1', [0, 0])],
  drops: [drop('D1', [4.5, 9, 11])],
  chargers: [charger('C1', 'D1', ['S1'])],
  ...more,
});

export const found = (rule: string, more: Partial<SiteFile> = {}): Finding[] =>
  reachFindings(siteOf(lot(more))).filter((finding) => finding.rule === rule);

export const only = (findings: readonly Finding[]): Finding => {
  expect(findings).toHaveLength(1);
  return findings[0]!;
};
