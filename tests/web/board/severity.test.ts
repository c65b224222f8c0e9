import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Finding, Severity } from '../../../routing/site/rules/finding.ts';
import type { Charger } from '../../../routing/site/site.ts';
import { renewIndex, severityAmong } from '../../../web/board/scene/severity.ts';

const CHARGERS = ['EV1', 'EV2', 'EV3', 'EV4', 'EV5'].map((id) => ({ id })) as unknown as readonly Charger[];
const THINGS = [...CHARGERS.map(({ id }) => id), 'D1', 'PM1', 'nowhere'];
const RANK = { note: 0, warn: 1, fail: 2 } as const;

/** The rule in plain words: the worst finding about a thing, one about more than three chargers marking no charger. */
function plainly(findings: readonly Finding[], id: string): Severity | null {
  const isCharger = (each: string): boolean => each.startsWith('EV');
  const own = findings.filter(
    ({ about }) => about.includes(id) && !(isCharger(id) && about.filter(isCharger).length > 3),
  );
  return own.map(({ severity }) => severity).sort((a, b) => RANK[b] - RANK[a])[0] ?? null;
}

const finding = fc.record({
  severity: fc.constantFrom<Severity>('note', 'warn', 'fail'),
  about: fc.uniqueArray(fc.constantFrom(...THINGS.slice(0, -1)), { maxLength: 6 }),
  rule: fc.constant('any'),
  says: fc.constant(''),
}) as unknown as fc.Arbitrary<Finding>;

test('how a thing fares is the same from an old index, a new one, or going through all findings', () => {
  const steps = fc.array(
    fc.record({ gone: fc.nat(), come: fc.array(finding, { maxLength: 3 }), renew: fc.boolean() }),
    {
      maxLength: 8,
    },
  );
  fc.assert(
    fc.property(fc.array(finding, { maxLength: 12 }), steps, (first, rest) => {
      let findings: readonly Finding[] = first;
      for (const { gone, come, renew } of [{ gone: 0, come: [] as Finding[], renew: true }, ...rest]) {
        findings = [...findings.filter((_, i) => i !== gone % (findings.length + 1)), ...come];
        if (renew) renewIndex(findings, CHARGERS);
        for (const id of THINGS) expect(severityAmong(findings, CHARGERS, id)).toBe(plainly(findings, id));
      }
    }),
    { numRuns: 300 },
  );
});
