import { describe, expect, test } from 'vitest';
import { runsOf } from '../../../routing/network/runs.ts';
import type { Site } from '../../../routing/site/site.ts';
import { box, charger, oneRun, panel, raceway, siteOf } from './sites.ts';

const first = (site: Site) => runsOf(site).runs[0]!;

describe('a charger without a run', () => {
  const far = raceway('R1', [
    [0, 0, 11],
    [100, 0, 11],
  ]);
  const said = (site: Site) => runsOf(site).findings[0]!;

  test('says how far its box is from the nearest connected raceway', () => {
    const site = oneRun([far], [0, 0, 11], [50, 8.5, 11]);
    const { runs } = runsOf(site);
    expect(runs[0]).toMatchObject({ length: null, conductorLength: null, taps: null, path: [], legs: [], ok: false });
    expect(said(site)).toMatchObject({
      severity: 'fail',
      rule: 'no-run',
      about: ['C1', 'D1', 'R1'],
      value: 8.5,
      limit: 6,
      unit: 'ft',
    });
    expect(said(site).says).toContain(`8' 6"`);
  });
  test('is told of a raceway within reach that is not joined to its equipment', () => {
    const site = oneRun(
      [
        far,
        raceway('R2', [
          [0, 30, 11],
          [100, 30, 11],
        ]),
      ],
      [0, 0, 11],
      [50, 29, 11],
    );
    expect(said(site).value).toBe(29);
    expect(said(site).says).toContain('R2 is 1\' 0" from it but is not joined to the raceways of P1');
  });
  test('says so too of one far overhead', () => {
    const overhead = [
      raceway('R1', [
        [0, 0, 0],
        [9, 0, 0],
        [9, 0, 500],
        [50, 0, 500],
      ]),
    ];
    expect(said(oneRun(overhead, [0, 0, 0], [50, 0, 3])).value).toBeCloseTo(Math.hypot(41, 0), 9);
    expect(
      said(
        oneRun(
          [
            raceway('R1', [
              [0, 0, 500],
              [9, 0, 500],
            ]),
          ],
          [0, 0, 0],
          [5, 0, 0],
        ),
      ).value,
    ).toBe(500);
  });
  test('says how far its equipment is from the nearest raceway', () => {
    const site = oneRun([far], [-30, 40, 11], [50, 0, 11]);
    expect(said(site)).toMatchObject({ rule: 'no-run', about: ['C1', 'P1', 'R1'], value: 50, limit: 6 });
  });
  test('says that there is no raceway at all', () => {
    const finding = said(oneRun([], [0, 0, 11], [50, 0, 11]));
    expect(finding).toMatchObject({ rule: 'no-run', about: ['C1', 'P1'] });
    expect(finding.says).toContain('no raceway');
    expect(finding.value).toBeUndefined();
  });
  test('in a metric file says it in metres', () => {
    const site = siteOf({
      units: 'm',
      raceways: [
        raceway('R1', [
          [0, 0, 3],
          [30, 0, 3],
        ]),
      ],
      equipment: [panel('P1', [0, 0, 3])],
      drops: [box('D1', [15, 4, 3])],
      chargers: [charger('C1', 'D1', 'P1')],
    });
    expect(said(site).value).toBeCloseTo(4 / 0.3048, 9);
    expect(said(site).says).toMatch(/\b4(\.0+)? m\b/);
  });
});

describe('the branch limit', () => {
  const long = raceway('R1', [
    [0, 0, 11],
    [400, 0, 11],
  ]);
  const at = (x: number, own?: number) =>
    siteOf({
      raceways: [long],
      equipment: [panel('P1', [0, 0, 11])],
      drops: [box('D1', [x, 0, 11])],
      chargers: [charger('C1', 'D1', 'P1', own === undefined ? {} : { branchLimit: own })],
    });
  test('is on the conductor length, allowances included', () => {
    expect(first(at(244)).ok).toBe(true);
    expect(runsOf(at(244)).findings).toEqual([]);
    expect(first(at(245)).ok).toBe(false);
    expect(runsOf(at(245)).findings[0]).toMatchObject({
      severity: 'fail',
      rule: 'branch-limit',
      value: 251,
      limit: 250,
      unit: 'ft',
    });
    expect(runsOf(at(245)).findings[0]!.says).toContain(`1' 0" over`);
  });
  test('is the charger’s own where it has one', () => {
    expect(first(at(300, 306)).ok).toBe(true);
    expect(runsOf(at(100, 90)).findings[0]).toMatchObject({ value: 106, limit: 90 });
  });
});
