import type { Finding } from '../../routing/site/finding.ts';
import type { Site } from '../../routing/site/site.ts';

/** A plan in which nothing fails says what was looked at. Null where something fails. */
export function soundFinding(site: Site, findings: readonly Finding[]): Finding | null {
  if (findings.some(({ severity }) => severity === 'fail')) return null;
  const warnings = findings.filter(({ severity }) => severity === 'warn').length;
  return {
    severity: 'note',
    rule: 'sound',
    about: [],
    says: `Nothing fails: runs and their lengths, reach and coverage of every cord, cord lengths and rest heights, clear heights, keep-outs, working space, breakers, conductors, voltage drop, conduit fill, bends and pulls, and the supply's loading were checked against the rules of the site and ${site.rules.code}.${warnings === 0 ? '' : ` ${warnings} ${warnings === 1 ? 'matter is' : 'matters are'} worth a look.`}`,
    source: `rules of the site, ${site.rules.code}`,
  };
}
