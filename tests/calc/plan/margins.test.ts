import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { leastMargin, marginsOf } from '../../../calc/plan/margins.ts';
import { plan } from '../../../calc/plan/plan.ts';
import { servedStalls } from '../../../calc/plan/served.ts';
import { readSite } from '../../../routing/site/file/read.ts';
import { toSite } from '../../../routing/site/to-site.ts';

function worked(name: string) {
  const read = readSite(readFileSync(`samples/${name}.site.json`, 'utf8'));
  if (!read.ok) throw new Error('the sample is not valid');
  const site = toSite(read.file);
  return { site, plan: plan(site) };
}

const { site, plan: hospital } = worked('hospital-lot');
const margins = marginsOf(hospital, site);

test('every charger has its margins, in the order of the site', () => {
  expect(margins.values().map(({ charger }) => charger)).toEqual(site.chargers.map(({ id }) => id));
});

test('a cord margin is the least of all cases in all the stalls that the charger serves', () => {
  for (const { charger, cord } of margins.values()) {
    const cases = hospital.reach.filter((reach) => reach.charger === charger).flatMap((reach) => reach.cases);
    const least = Math.min(...cases.map(({ margin }) => margin ?? Number.NEGATIVE_INFINITY));
    expect(cord?.left ?? Number.POSITIVE_INFINITY).toBe(cases.length > 0 ? least : Number.POSITIVE_INFINITY);
  }
});

test('left, used and limit of a branch add up, and a charger without a run has no branch margin', () => {
  for (const run of hospital.runs) {
    const branch = margins.get(run.charger)?.branch;
    if (run.conductorLength === null) expect(branch).toBeNull();
    else {
      expect(branch!.left + branch!.used).toBeCloseTo(branch!.limit, 9);
      expect(branch!.left >= 0).toBe(run.ok);
    }
  }
});

test('the worst of the lot is the least of each kind', () => {
  for (const kind of ['cord', 'branch', 'volts'] as const) {
    const all = [...margins.values()].flatMap((each) => each[kind]?.left ?? []);
    expect(leastMargin(margins, kind)?.[kind]?.left).toBe(Math.min(...all));
  }
});

test('a stall is served where a charger with a run within its limit covers it', () => {
  const served = servedStalls(hospital, site.rules);
  const failing = hospital.reach.filter(({ coverage }) => coverage < site.rules.coverage).map(({ stall }) => stall);
  const others = new Set(hospital.reach.filter(({ coverage }) => coverage >= 1).map(({ stall }) => stall));
  for (const stall of failing) if (!others.has(stall)) expect(served.has(stall)).toBe(false);
  expect(served.size).toBeGreaterThan(200);
});
