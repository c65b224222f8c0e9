import { describe, expect, it, test } from 'vitest';
import { readSiteValue } from '../../../../routing/site/file/read.ts';
import { RULE_NOTES } from '../../../../routing/site/rules/rule-notes.ts';
import { DEFAULT_RULES } from '../../../../routing/site/rules/rules.ts';
import { rulesSchema } from '../../../../routing/site/schema/rules-schema.ts';
import { schemaNode } from '../../../../routing/site/schema/schema-node.ts';

type Plain = Readonly<Record<string, unknown>>;

const leaves = (value: Plain, prefix = ''): readonly string[] =>
  Object.entries(value).flatMap(([name, inner]) =>
    typeof inner === 'object' ? leaves(inner as Plain, `${prefix}${name}.`) : [`${prefix}${name}`],
  );

describe('the rules', () => {
  it('have the defaults that the site file promises', () => {
    expect(DEFAULT_RULES).toMatchObject({
      code: 'NEC 2023',
      branchLimit: 250,
      cordLimit: 25,
      cordSlack: 2,
      tapLimit: 6,
      hangReach: 3,
      joinTolerance: 0.25,
      headClearance: 2,
      coverage: 1.0,
      allowance: { equipment: 5, box: 1 },
      ambientC: 40,
      terminalC: 75,
      dropLimit: { branch: 3, total: 5 },
      powerFactor: 0.99,
      thirdHarmonic: 0.3,
      chargingHours: 1500,
      bendLimit: 360,
      pullLimit: 200,
      waste: { conductor: 0.05, raceway: 0.05 },
      restHeight: { low: 2, high: 4 },
      pedestalHeight: 4,
      clearHeight: { aisle: 13.5, stall: 7, van: 8.17, walk: 6.67 },
      circuitsPerConduit: 3,
      undergroundTradeSize: '1',
      pilot: { budgetPicofarads: 3100 },
    });
  });

  it('are the ones a file may set, all of them', () => {
    const node = schemaNode(rulesSchema);
    expect(node.kind === 'object' && [...node.fields.keys()]).toEqual(Object.keys(DEFAULT_RULES));
    const file = { format: 'overrow/site', version: 1, units: 'ft', name: 'x', rules: DEFAULT_RULES };
    expect(readSiteValue(file).ok).toBe(true);
  });

  it('each have a note with their default', () => {
    expect(RULE_NOTES.map((note) => note.path)).toEqual(leaves(DEFAULT_RULES as unknown as Plain));
    expect(RULE_NOTES.find((note) => note.path === 'clearHeight.van')?.default).toBe(8.17);
  });

  test.each(RULE_NOTES)(
    '$path says what it decides and where its default comes from',
    ({ meaning, source, default: value }) => {
      expect(meaning.length).toBeGreaterThan(8);
      expect(source).toMatch(
        /the electrical code|ADA Standards|IEC|pF\/ft|common practice, no source|a convention of this planner/,
      );
      expect(['string', 'number']).toContain(typeof value);
    },
  );

  it('leave a pilot 31 ft of branch with a 25 ft cord, as the capacitance budget is commonly worked', () => {
    // (3100 - 300 - 50 x 25) / 50, at the upper end of 30 to 50 pF/ft; computed, the capacitances are a guess
    const { sourcePicofarads, cordPicofaradsPerFoot, branchPicofaradsPerFoot, budgetPicofarads } = DEFAULT_RULES.pilot;
    expect((budgetPicofarads - sourcePicofarads - 25 * cordPicofaradsPerFoot) / branchPicofaradsPerFoot).toBe(31);
  });
});
