import { describe, expect, test, vi } from 'vitest';
import { plan } from '../../../calc/plan/plan.ts';
import type { Plan } from '../../../calc/plan/plan-shape.ts';
import { transformerSize } from '../../../calc/propose/panels/panel-source.ts';
import { criteriaTable } from '../../../calc/sheets/pdf/cover/criteria.ts';
import { feederOptions } from '../../../calc/supply/feeders/feeder-options.ts';
import { tablesFor } from '../../../calc/tables/editions.ts';
import { whyCircuit, whyConduit } from '../../../calc/why/why.ts';
import { whyBox, whyEquipment, whyFeeder } from '../../../calc/why/why-supply.ts';
import type { Finding } from '../../../routing/site/rules/finding.ts';
import type { RuleWord } from '../../../routing/site/rules/rule-words.ts';
import type { Site, SiteFile } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { fleetYard } from '../../bench/samples/fleet-yard.ts';
import { FAULTS } from '../checks/faults/index.ts';

/** Production has no door to put an edition in by: its list is a file, and here another stands in the place of it. */
vi.mock('../../../calc/tables/held.ts', async (original) => {
  const { HELD } = await original<typeof import('../../../calc/tables/held.ts')>();
  const { INVENTED_2099 } = await import('./invented-2099.ts');
  return { HELD: [...HELD, INVENTED_2099] };
});

const NEC = 'NEC 2023';
const INVENTED = 'Invented 2099';

const siteUnder = (file: SiteFile, code: string): Site => toSite({ ...file, rules: { ...file.rules, code } });
const planUnder = (rule: RuleWord, code: string): Plan => plan(siteUnder(FAULTS[rule], code));
const found = (rule: RuleWord, code: string): Finding =>
  planUnder(rule, code).findings.find((finding) => finding.rule === rule)!;

test('both editions are held, and the older stays the default', () => {
  expect(tablesFor(INVENTED)?.edition).toBe(INVENTED);
  expect(plan(toSite(FAULTS.cover)).findings).toEqual(planUnder('cover', NEC).findings);
});

describe('each figure that the editions differ in is seen in what cites it:', () => {
  /** What a finding of this rule has under each: limit, a part of its words, its source. */
  const cases: readonly (readonly [
    figure: string,
    rule: RuleWord,
    nec: readonly [string, string],
    other: readonly [string, string],
  ])[] = [
    [
      'least height of a coupling',
      'rest-height',
      ['lower than the 2\' 0"', 'NEC 625.50, 24 in outdoors; site rule "lowest rest of a connector"'],
      ['lower than the 2\' 0"', 'Invented 925.50, 30 in outdoors; site rule "lowest rest of a connector"'],
    ],
    [
      'section of the longest cord',
      'cord-limit',
      ['longer than', 'NEC 625.17(C); site rule "longest cord"'],
      ['longer than', 'Invented 925.17; site rule "longest cord"'],
    ],
    [
      'depth and least width of a working space',
      'working-space',
      ['3\' 0" deep', 'NEC 110.26(A): depth as the site gives it for P1; width and height (A)(2), (A)(3) from memory'],
      [
        '5\' 0" deep and 5\' 0" wide',
        'Invented 910.26: Invented 2099 Table 110.26(A)(1), 120 V to ground, condition 2; width and height (A)(2), (A)(3) from memory',
      ],
    ],
    [
      'smallest parallel conductor',
      'parallel-size',
      ['1/0 or larger', 'NEC 2023 310.10(G), from memory'],
      ['2/0 or larger', 'Invented 2099 931.10, from memory'],
    ],
    [
      'cover under traffic',
      'cover',
      ['2\' 0" of cover is asked for', 'NEC 2023 Table 300.5(A)'],
      ['3\' 0" of cover is asked for', 'Invented 2099 Table 300.5(A)'],
    ],
    [
      'continuous load',
      'feeder-overload',
      ['counted 125%', 'NEC 2023 215.3, 625.42'],
      ['counted 150%', 'Invented 2099 915.3, 625.42'],
    ],
  ];
  test.each(cases)('%s', (_, rule, nec, other) => {
    for (const [code, [says, source]] of [
      [NEC, nec],
      [INVENTED, other],
    ] as const) {
      const finding = found(rule, code);
      expect(finding.says).toContain(says);
      expect(finding.source).toBe(source);
    }
  });

  test('change at which a fitting is needed', () => {
    expect([found('expansion', NEC).limit, found('expansion', INVENTED).limit]).toEqual([0.25, 0.5]);
  });

  test('breaker, smallest conductor, ambient factor and grounding of a circuit', () => {
    const of = (code: string) => planUnder('cord-limit', code).circuits[0]!;
    // 32 A: x 1.25 = 40 A, x 1.5 = 48 A, the next standard rating 50 A
    expect(of(NEC)).toMatchObject({
      breakerAmps: 40,
      conductor: { size: '8' },
      factors: { ambient: 0.91 },
      grounding: { size: '10' },
    });
    expect(of(INVENTED)).toMatchObject({
      breakerAmps: 50,
      conductor: { size: '6' },
      factors: { ambient: 0.8 },
      grounding: { size: '8' },
    });
  });

  test('volume of a box, and the section that it is sized by, whichever was planned first', () => {
    const of = (code: string) => {
      const { boxes, takeoff } = planUnder('cord-limit', code);
      const row = takeoff.find(({ item, spec }) => item === 'junction box' && !spec.includes('pull box'))!;
      return { volume: Math.max(...boxes.map(({ volume }) => volume ?? 0)), basis: row.basis };
    };
    const nec = of(NEC);
    const other = of(INVENTED);
    expect(other.volume).toBeGreaterThan(nec.volume);
    expect(nec.basis).toContain('size by 314.16');
    expect(other.basis).toContain('size by 914.16');
    expect(of(NEC)).toEqual(nec);
  });
});

describe('what is counted by the factors of the edition:', () => {
  const both = <T>(of: (code: string) => T): readonly [T, T] => [of(NEC), of(INVENTED)];

  test('generation behind a busbar, and what the busbar may have from its two ends', () => {
    // 40 kVA at 208 V is 111.03 A: with the device of 200 A 338.8 A, and 361.0 A; of a 225 A busbar 120% and 130%.
    const [nec, other] = both((code) => found('back-feed', code));
    expect([nec.value, other.value].map((amps) => Math.round(10 * (amps as number)) / 10)).toEqual([338.8, 361]);
    expect([nec.limit, other.limit]).toEqual([270, 292.5]);
    expect([nec.says.slice(0, 15), other.says.slice(0, 15)]).toEqual(['139 A, 125% of ', '161 A, 145% of ']);
  });

  test('the largest motor of a board', () => {
    const va = Math.sqrt(3) * 208 * 20;
    const motor = {
      id: 'M1',
      from: 'P1',
      name: 'Pump',
      volts: 208,
      phases: 3,
      va,
      continuous: false,
      motor: true,
    } as const;
    const demand = (code: string, more: Partial<SiteFile>): number =>
      plan(siteUnder({ ...FAULTS.cover, ...more }, code)).supply.equipment.find(({ id }) => id === 'P1')!.demandAmps;
    const [nec, other] = both((code) => demand(code, { chargers: [], loads: [motor] }));
    expect(nec).toBeCloseTo(25, 6);
    expect(other).toBeCloseTo(28, 6);
  });

  test('the device ahead of a transformer: the next standard rating at one percentage alone', () => {
    const [nec, other] = both((code) => found('transformer-protection', code));
    const rated = (other.limit as number) / 2;
    expect(nec.limit).toBeGreaterThanOrEqual(1.25 * rated);
    expect(tablesFor(NEC)!.standardRatings.rows).toContain(nec.limit);
    expect(tablesFor(INVENTED)!.standardRatings.rows).not.toContain(other.limit);
  });

  test('rods of an electrode, and what a breaker is bought by', () => {
    const row = (code: string, wanted: string) =>
      planUnder('cord-limit', code).takeoff.find(({ item }) => item === wanted)!;
    expect(both((code) => row(code, 'ground rod').quantity)).toEqual([2, 3]);
    const [nec, other] = both((code) => row(code, 'breaker').basis);
    expect(nec).toContain('125%');
    expect(other).toContain('150%');
  });
});

test('voltages that an existing feeder may be moved to', () => {
  const feeder = { raceway: 'steel', length: 100, breakerAmps: 100, volts: 208 } as const;
  const conductor = { size: '1', metal: 'copper', sets: 1, insulation: 'THWN-2' } as const;
  const wish = { chargers: 4, amps: 32, panelVolts: 208, powerFactor: 0.99, otherVa: 0, branch: { r: 0, x: 0 } };
  const volts = (code: string): ReadonlySet<number> =>
    new Set(
      feederOptions(
        { ...feeder, conductor },
        { ...wish, ambientC: 40, terminalC: 75, chargingHours: 1500 },
        tablesFor(code)!,
      ).map((way) => way.volts),
    );
  expect([...volts(NEC)]).toEqual([208, 240, 480, 600]);
  expect([...volts(INVENTED)]).toEqual([208, 240, 480, 690]);
});

test('breaker of a proposed transformer', () => {
  // Three chargers of 32 A, one on each pair of lines.
  const of = (code: string) => transformerSize(tablesFor(code)!, 32 * Math.sqrt(3), 480);
  // 30 kVA at 480 V is 36.1 A: 125% is 45.1 A, the next standard rating 50 A; 200% is 72.2 A, the next 80 A.
  expect(of(NEC)).toMatchObject({ kva: 30, breakerAmps: 50 });
  expect(of(INVENTED)).toMatchObject({ kva: 30, breakerAmps: 80 });
});

describe('no text under the other edition names NEC 2023', () => {
  const files: readonly (readonly [string, SiteFile])[] = [
    ...Object.entries(FAULTS).filter(([rule]) => rule !== 'code-edition'),
    ['the yard', fleetYard()],
  ];
  test.each(files)('%s', (_, file) => {
    const site = siteUnder(file, INVENTED);
    const made = plan(site);
    // That the site goes by another edition than the usual is told by both their names.
    const findings = made.findings.filter(({ rule }) => rule !== 'rules-changed');
    const some = made.circuits.slice(0, 2).map(({ charger }) => charger);
    const texts = JSON.stringify([
      findings,
      made.circuits,
      made.conduits,
      made.boxes,
      made.supply,
      made.takeoff,
      made.checks,
      made.withheld,
      made.notChecked,
      some.map((id) => [whyCircuit(site, id), whyBox(site, id)]),
      made.conduits.slice(0, 2).map(({ id }) => whyConduit(site, id)),
      site.equipment.map(({ id }) => whyEquipment(site, id)),
      site.feeders.map(({ id }) => whyFeeder(site, id)),
      criteriaTable(site, 400).rows.slice(1),
    ]);
    expect(texts).toContain(INVENTED);
    expect(texts.match(/.{0,60}\bNEC\b.{0,40}/g)).toBeNull();
    // Nor does any have the factor that continuous load, motors, measured demand and generation have there.
    expect(texts.match(/.{0,60}(\b125 ?%|\b1\.25 x|\bx 1\.25\b).{0,40}/g)).toBeNull();
  });
});
