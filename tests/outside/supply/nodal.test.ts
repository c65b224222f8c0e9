import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { LineAmps, LineVolts } from '../../../calc/plan-file/supply.ts';
import { type NodalSite, workedOut } from './nodal-site.ts';

interface NodalResult {
  equipment: Record<string, { volts: Partial<LineVolts>; amps: Partial<LineAmps>; share: number }>;
  boxes: Record<string, number>;
  feeders: Record<string, { amps: Partial<LineAmps>; lossWatts: number }>;
}
interface Case {
  seed: number;
  site: NodalSite;
  full: NodalResult;
  withoutGeneration: NodalResult | null;
  /** Least volts at a box whose charger alone runs at its rating, the rest under its ceilings keeping them. */
  atRating: Record<string, number>;
}

const { cases, powerFactor } = JSON.parse(readFileSync(new URL('nodal.json', import.meta.url), 'utf8')) as {
  cases: Case[];
  powerFactor: number;
};

/** Largest disagreement of any figure, of the figure or of one volt or ampere where it is smaller. */
function disagreement(got: ReturnType<typeof workedOut>['full'], want: NodalResult): number {
  let most = 0;
  const compare = (a: number | undefined, b: number): void => {
    most = Math.max(most, Math.abs((a ?? Number.NaN) - b) / Math.max(1, Math.abs(b)));
    if (a === undefined || Number.isNaN(a)) most = Infinity;
  };
  const each = (a: object | undefined, b: object): void => {
    for (const [key, value] of Object.entries(b)) compare((a as Record<string, number> | undefined)?.[key], value);
  };
  for (const [id, row] of Object.entries(want.equipment)) {
    const mine = got.equipment.find((one) => one.id === id);
    each(mine?.volts, row.volts);
    each(mine?.amps, row.amps);
    compare(mine?.chargerShare, row.share);
  }
  for (const [id, row] of Object.entries(want.feeders)) {
    const mine = got.feeders.find((one) => one.id === id);
    each(mine?.amps, row.amps);
    compare(mine?.lossWatts, row.lossWatts);
  }
  for (const [id, volts] of Object.entries(want.boxes)) compare(got.boxes.get(id), volts);
  return most;
}

describe('supplies agree with a nodal solution by numpy and scipy to 1e-6', () => {
  test('twenty trees are held, with every kind of element among them', () => {
    expect(cases).toHaveLength(20);
    const sites = cases.map(({ site }) => site);
    const some = (claim: (site: NodalSite) => boolean): boolean => sites.some(claim);
    expect(some(({ equipment }) => equipment.some((one) => one.kind === 'transformer' && one.phases === 3))).toBe(true);
    expect(some(({ equipment }) => equipment.some((one) => one.kind === 'transformer' && one.phases === 1))).toBe(true);
    expect(some(({ equipment }) => equipment.some((one) => one.kind === 'panelboard' && one.phases === 1))).toBe(true);
    expect(some(({ equipment }) => equipment.some((one) => one.managedAmps !== undefined))).toBe(true);
    expect(some(({ loads }) => loads.some(({ lines }) => lines.length === 1))).toBe(true);
    expect(some(({ loads }) => loads.some(({ generation }) => generation === true))).toBe(true);
    expect(some(({ chargers }) => chargers.some(({ phases }) => phases === 3))).toBe(true);
    expect(some(({ chargers }) => chargers.some(({ hasRun }) => !hasRun))).toBe(true);
  });

  test.each(cases)('tree $seed', ({ site, full, withoutGeneration }) => {
    const got = workedOut(site, powerFactor);
    expect(disagreement(got.full, full)).toBeLessThan(1e-6);
    expect(got.withoutGeneration === null).toBe(withoutGeneration === null);
    if (got.withoutGeneration !== null && withoutGeneration !== null)
      expect(disagreement(got.withoutGeneration, withoutGeneration)).toBeLessThan(1e-6);
  });

  test.each(cases.filter(({ atRating }) => Object.keys(atRating).length > 0))(
    'tree $seed, each charger by itself at its rating, to 0.02%',
    ({ site, atRating }) => {
      const { full } = workedOut(site, powerFactor);
      for (const [id, volts] of Object.entries(atRating)) {
        const { percent, nominal } = full.worst.get(id)!;
        // What hangs beside its way keeps its currents in ours, and follows the volts in theirs.
        expect(Math.abs(percent - (100 * (nominal - volts)) / nominal)).toBeLessThan(0.02);
      }
    },
  );
});
