import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { plan } from '../../../calc/plan/plan.ts';
import type { Device } from '../../../calc/plan-file/supply.ts';
import type { TakeoffRow } from '../../../calc/plan-file/takeoff.ts';
import { INVENTED_LIST } from '../../../calc/prices/invented-list.ts';
import { costOf } from '../../../calc/takeoff/bid/cost.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { fleetYard } from '../../bench/samples/fleet-yard.ts';
import { anySupply } from '../supply/devices/any-supply.ts';
import { siteOf } from '../supply/small-site.ts';

/** Rows in which a device is bought: its own, or that of the equipment whose main it is. */
function rowsOf(device: Device, rows: readonly TakeoffRow[]): readonly TakeoffRow[] {
  const { at, of, poles, amps } = device;
  const kinds = ['switchboard', 'panelboard', 'disconnect', 'service'];
  return rows.filter(
    (row) =>
      row.of.includes(of) &&
      (of === at ? kinds.includes(row.item) : row.item === 'breaker' && row.spec === `${poles}-pole ${amps} A`),
  );
}

describe('every device of a plan', () => {
  test('that has a rating and does not stand already is bought once', () => {
    let bought = 0;
    fc.assert(
      fc.property(anySupply, (parts) => {
        const { devices, takeoff } = plan(siteOf(parts));
        const wanted = devices.filter(({ amps, existing }) => amps !== null && !existing);
        for (const device of wanted) expect(rowsOf(device, takeoff).length, device.id).toBe(1);
        const breakers = takeoff.filter(({ item }) => item === 'breaker');
        const count = breakers.reduce((sum, { quantity }) => sum + quantity, 0);
        expect(count).toBe(wanted.filter(({ of, at }) => of !== at).length);
        bought += count;
      }),
      { numRuns: 40 },
    );
    expect(bought).toBeGreaterThan(100);
  });
});

test('the yard buys the breakers of its feeders and of its lighting, each at a price of its size', () => {
  const site = toSite(fleetYard());
  const { takeoff } = plan(site);
  const breakers = takeoff.filter(({ item }) => item === 'breaker').map(({ spec, quantity }) => [spec, quantity]);
  // Lighting of 2,400 VA on two lines: 11.5 A, 125% of it 14.4 A. F1 stands already; F2 ends in the main of SB1.
  expect(breakers).toEqual([
    ['2-pole 15 A', 1],
    ['2-pole 40 A', 48],
    ['3-pole 200 A', 2],
  ]);
  const prices = costOf(takeoff, INVENTED_LIST, 48).rows.filter(({ item }) => item === 'breaker');
  const each = prices.map(({ material, quantity }) => material / quantity);
  expect(each).toEqual([...each].sort((a, b) => a - b));
});
