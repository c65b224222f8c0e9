import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { plan } from '../../../calc/plan/plan.ts';
import { askedRows } from '../../../calc/sheets/pdf/report/asked-table.ts';
import { arcFlashSheet } from '../../../calc/sheets/schedules/arc-flash-sheet.ts';
import { coordinationSheet } from '../../../calc/sheets/schedules/coordination-sheet.ts';
import { devicesOf } from '../../../calc/supply/devices/devices.ts';
import { aheadOf, seriesPairs } from '../../../calc/supply/study/series-pairs.ts';
import { treeOf } from '../../../calc/supply/tree/supply-lines.ts';
import { NEC_2023 } from '../../../calc/tables/nec-2023/nec-2023.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { changed, lotChanged, lotWith, SMALL_LOT } from '../checks/faults/small-lot.ts';
import { anySupply } from './devices/any-supply.ts';
import { chargers, equipment, feeder, type Parts, panel, siteOf, source, transformer } from './small-site.ts';

const pairsOf = (parts: Parts): readonly string[] => {
  const site = siteOf(parts);
  return seriesPairs(treeOf(site), devicesOf(site, NEC_2023)).map(
    ({ ahead, device, of, across }) =>
      `${ahead.id} > ${device.id} x ${of.length}${across === null ? '' : ` across ${across}`}`,
  );
};

const BEHIND: Parts = {
  equipment: [
    { ...source(480), faultAmps: 30_000 },
    equipment('SE', 'service', { volts: 480, mainAmps: 200 }),
    transformer('T1', { kva: 75, impedancePercent: 4, xr: 2 }),
    panel('P1', { mainAmps: 225 }),
  ],
  feeders: [
    feeder('SVC', 'SE', { breakerAmps: 200 }),
    feeder('SE', 'T1', { breakerAmps: 125 }),
    feeder('T1', 'P1', { breakerAmps: 225, length: 10 }),
  ],
  chargers: chargers('P1', 4),
};

describe('devices in series', () => {
  test('each has the next one ahead, across a transformer too; breakers alike are one pair', () => {
    expect(pairsOf(BEHIND)).toEqual([
      'SE.main > F-T1.from x 1',
      'F-T1.from > P1.main x 1 across T1',
      'P1.main > EV-P1-1 x 4',
    ]);
  });

  test('a board of main lugs has the head of its feeder, a tap without a device what is ahead of it', () => {
    const lugs = { ...BEHIND, equipment: [source(208), panel('P1', { mainAmps: 200 }), panel('P2')] };
    const parts = {
      ...lugs,
      feeders: [feeder('SVC', 'P1'), feeder('P1', 'P2', { breakerAmps: 100 })],
      chargers: chargers('P2', 2),
    };
    expect(pairsOf(parts)).toEqual(['P1.main > F-P2.from x 1', 'F-P2.from > EV-P2-1 x 2']);
    const [into, , out] = BEHIND.feeders!;
    const tapped = { ...BEHIND, feeders: [into!, feeder('SE', 'T1', { device: 'none', breakerAmps: 200 }), out!] };
    expect(pairsOf(tapped)[0]).toBe('SE.main > P1.main x 1 across T1');
  });

  test('of any supply, going from each to the next ahead ends, and never at one that nobody drew', () => {
    fc.assert(
      fc.property(anySupply, (parts) => {
        const site = siteOf(parts);
        const [tree, devices] = [treeOf(site), devicesOf(site, NEC_2023)];
        for (const device of devices) {
          const seen = new Set([device]);
          for (let at = aheadOf(tree, devices, device); at !== null; at = aheadOf(tree, devices, at.ahead)) {
            expect(seen.has(at.ahead)).toBe(false);
            expect(at.ahead.known).not.toBe('missing');
            seen.add(at.ahead);
          }
        }
      }),
    );
  });
});

test('the coordination table compares ratings at one voltage', () => {
  const site = siteOf(BEHIND);
  const rows = coordinationSheet(site, plan(site));
  const [, , across, branches] = rows;
  // 125 A at 480 V are 288.5 A at 208 V: 1.28 times 225 A.
  expect(across!.slice(0, 6)).toEqual(['F-T1', 'SE', 125, 3, 'T1', 'P1']);
  expect(across![10]).toBe(1.28);
  expect(branches!.slice(5, 11)).toEqual(['EV-P1-1 to EV-P1-4', 'P1', 4, 40, 2, 5.63]);
  expect(branches![12]).toContain('700.32');
});

test('the arc-flash table has both extremes of the bolted fault, the devices, distances and the label', () => {
  const site = siteOf(BEHIND);
  const planned = plan(site);
  const rows = arcFlashSheet(site, planned);
  const of = (id: string) => rows.find(([first]) => first === id)!;
  const fault = planned.supply.equipment.find(({ id }) => id === 'P1')!.fault!;
  expect(of('P1').slice(0, 3)).toEqual(['P1', 'panelboard', '208Y/120 V']);
  expect(of('P1')[3]).toBe(Math.round(fault.most));
  // Two lines: sqrt 3 / 2 of three.
  expect(Number(of('P1')[4]) * (Math.sqrt(3) / 2)).toBeCloseTo(fault.least.lineToLine, -1);
  expect(Number(of('P1')[4])).toBeLessThan(Number(of('P1')[3]));
  expect(of('P1').slice(7, 12)).toEqual(['F-T1 at SE', 125, 225, 18, 'to be set by the study']);
  expect(of('SE').slice(7, 11)).toEqual(['none drawn', null, 200, 24]);
  expect(of('P1')[12]).toMatch(/^WARNING: .*study required/);
  expect(of('P1')[12]).not.toContain('110.16(B)');
  expect(rows.some(([id]) => id === 'T1' || id === 'SVC')).toBe(false);
  const large = siteOf({
    ...BEHIND,
    equipment: BEHIND.equipment.map((one) => (one.id === 'SE' ? { ...one, busAmps: 1000 } : one)),
  });
  expect(arcFlashSheet(large, plan(large)).find(([id]) => id === 'SE')![12]).toContain('110.16(B)');
});

test('what is asked of authority and equipment touches what the site has of it, and nothing else', () => {
  const of = (file: Parameters<typeof toSite>[0]) => {
    const site = toSite(file);
    return askedRows(site, plan(site)).map(([, what, touches]) => `${what.slice(0, 24)}: ${touches}`);
  };
  const plain = of(SMALL_LOT);
  expect(plain.some((row) => row.startsWith('Emergency shutoff') && row.endsWith('2 chargers, from P1'))).toBe(true);
  expect(plain.some((row) => row.startsWith('A plaque') || row.startsWith('Energy management'))).toBe(false);
  expect(of(lotChanged('chargers', 'EV1', { amps: 80 }))).toContainEqual(expect.stringMatching(/^A plaque.*: EV1$/));
  const managed = of(lotWith({ equipment: changed('equipment', 'P1', { managedAmps: 40, seriesAmps: 65_000 }) }));
  expect(managed).toContainEqual(expect.stringMatching(/^Energy management.*: P1 at 40 A$/));
  expect(managed).toContainEqual(expect.stringMatching(/^P1: CAUTION.*: P1$/));
  expect(of({ ...SMALL_LOT, rules: { boxLocation: 'damp' } })).toContainEqual(
    expect.stringMatching(/^Whether boxes.*boxes$/),
  );
  expect(of({ format: 'overrow/site', version: 1, units: 'ft', name: 'empty' })).toEqual([]);
});
