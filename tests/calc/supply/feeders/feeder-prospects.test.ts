import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { feederOptionsSheet } from '../../../../calc/sheets/schedules/feeder-options-sheet.ts';
import { feederProspects, notableWays } from '../../../../calc/supply/feeders/feeder-prospects.ts';
import { toSite } from '../../../../routing/site/to-site.ts';
import { chargers, feeder, load, panel, siteOf, source, transformer } from '../small-site.ts';

const only = (site: Parameters<typeof feederProspects>[0]) => {
  const [prospects, ...others] = feederProspects(site);
  expect(others).toEqual([]);
  if (!prospects?.ok) throw new Error(prospects?.says ?? 'no feeder');
  return prospects;
};

const twelve = (more: Parameters<typeof feeder>[2] = {}) =>
  siteOf({
    equipment: [source(208), panel('P1')],
    feeders: [feeder('SVC', 'P1', { existing: true, length: 300, ...more })],
    chargers: chargers('P1', 12),
  });

describe('what the existing feeders of a site can carry', () => {
  // Common practice: twelve 32 A chargers do not fit at full rate on a 200 A, 208 V feeder, and do at 480 V through 150 kVA.
  test('is asked for all that hangs beyond it', () => {
    const { wish, ways } = only(twelve());
    expect(wish).toMatchObject({ chargers: 12, amps: 32, panelVolts: 208, otherVa: 0 });
    expect(ways.find(({ asItIs }) => asItIs)).toMatchObject({ volts: 208, kva: null, allAtFullRate: false });
    expect(ways.find(({ volts, kva }) => volts === 480 && kva === 150)).toMatchObject({
      asItIs: false,
      allAtFullRate: true,
    });
  });

  test('is not asked of feeders that are yet to be installed', () => {
    expect(feederProspects(twelve({ existing: false }))).toEqual([]);
  });

  test('counts what panels farther out draw, and three-phase chargers and loads beside', () => {
    const site = siteOf({
      equipment: [source(480), transformer('T1'), panel('P1'), panel('P2'), panel('P9', { volts: 480 })],
      feeders: [feeder('SVC', 'T1', { existing: true }), feeder('T1', 'P1'), feeder('P1', 'P2'), feeder('SVC', 'P9')],
      chargers: [
        ...chargers('P1', 3),
        ...chargers('P2', 4, { amps: 40 }),
        ...chargers('P9', 1, { id: 'DC', volts: 480, phases: 3 }),
        ...chargers('P2', 1, { id: 'BIG', phases: 3, amps: 48 }),
      ],
      loads: [load('P2', 'L1', { va: 5000 }), load('P1', 'PV', { va: 9000, generation: true })],
    });
    const { wish, ways } = only(site);
    expect(wish).toMatchObject({ chargers: 7, amps: 40 });
    // 48 A three-phase at 208 V is 17.29 kVA; what generates is no load.
    expect(wish.otherVa).toBeCloseTo(Math.sqrt(3) * 208 * 48 + 5000, 6);
    expect(ways.filter(({ asItIs }) => asItIs)).toMatchObject([{ volts: 480, kva: 150 }]);
  });

  test('puts no charger on 480 V without a transformer', () => {
    const { ways } = only(
      siteOf({ equipment: [source(480), transformer('T1')], feeders: [feeder('SVC', 'T1', { existing: true })] }),
    );
    expect(ways.length).toBeGreaterThan(0);
    expect(ways.filter(({ kva }) => kva === null)).toEqual([]);
    for (const { chargerVolts } of ways) expect([208, 240]).toContain(chargerVolts);
  });

  test('is said not to be known where it is not', () => {
    const says = (site: Parameters<typeof feederProspects>[0]): string => {
      const [prospects] = feederProspects(site);
      return prospects?.ok === false ? prospects.says : '';
    };
    const conductor = { size: '7', metal: 'copper', sets: 1, insulation: 'XHHW-2' } as const;
    expect(says(twelve({ conductor }))).toContain('no 7 copper');
    const { length: _, ...unmeasured } = feeder('SVC', 'P1', { existing: true });
    const site = siteOf({ equipment: [source(208), panel('P1')], feeders: [unmeasured] });
    expect(says(site)).toContain('length');
    const single = siteOf({
      equipment: [{ ...source(240), phases: 1 }, panel('P1', { volts: 240, phases: 1 })],
      feeders: [feeder('SVC', 'P1', { existing: true })],
    });
    expect(says(single)).toContain('not three-phase');
  });

  test('is shown by the smallest transformer at each voltage that carries all at full rate, the way in use, and those without', () => {
    const { ways } = only(twelve());
    // Twelve take 79.9 kVA: 75 is too small, 112.5 the next standard size; 240 V, 200 A carries 66.5 kVA and does not do.
    expect(notableWays(ways).map(({ volts, kva, allAtFullRate }) => [volts, kva, allAtFullRate])).toEqual([
      [208, null, false],
      [240, null, false],
      [240, 75, false],
      [480, 112.5, true],
      [600, 112.5, true],
    ]);
  });

  test('stands in the sheet, a row for each way, as wide as its head', () => {
    const site = toSite(JSON.parse(readFileSync('samples/fleet-yard.site.json', 'utf8')));
    const [head, ...rows] = feederOptionsSheet(site);
    const { ways } = only(site);
    const own = rows.slice(0, ways.length);
    for (const row of own) expect(row).toHaveLength(head!.length);
    expect(own.map((row) => row[head!.indexOf('at full rate')])).toEqual(ways.map(({ atFullRate }) => atFullRate));
    expect(own.filter((row) => row[head!.indexOf('now')] === 'now')).toHaveLength(1);
  });

  test('a site without an existing feeder says so in the sheet', () => {
    expect(feederOptionsSheet(twelve({ existing: false }))).toContainEqual([
      'No feeder of the site is marked as existing.',
    ]);
  });
});
