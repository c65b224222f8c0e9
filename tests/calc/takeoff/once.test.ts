import fc from 'fast-check';
import { expect, test } from 'vitest';
import { plan } from '../../../calc/plan/plan.ts';
import { INVENTED_LIST } from '../../../calc/prices/invented-list.ts';
import { costOf } from '../../../calc/takeoff/bid/cost.ts';
import type { Site } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { anyLot } from '../branches/lots.ts';
import { anySupply } from '../supply/devices/any-supply.ts';
import { siteOf } from '../supply/small-site.ts';

const GEAR = ['service equipment', 'switchboard', 'panelboard', 'transformer', 'disconnect', 'inverter'];
const AT_DROP = ['pedestal', 'junction box'];
const AT_PULL = ['pull point', 'conduit body', 'handhole', 'junction box'];

/** Every element that costs money is in exactly one row of the kind that it is, and in a quantity that is its own. */
function expectOnce(site: Site): number {
  const planned = plan(site);
  let looked = 0;
  const once = (what: string, id: string, items: readonly string[], quantity?: number): void => {
    const found = planned.takeoff.filter(({ item, of }) => items.includes(item) && of.includes(id));
    expect(found.length, `${what} ${id} among ${items.join(', ')}`).toBe(1);
    const own = found[0]!.parts.filter(({ of }) => of === id);
    if (quantity !== undefined)
      expect(
        own.reduce((sum, part) => sum + part.quantity, 0),
        id,
      ).toBeCloseTo(quantity, 6);
    looked++;
  };
  for (const { id, kind } of site.equipment) if (kind !== 'source') once(kind, id, GEAR, 1);
  for (const { id } of site.chargers) {
    once('charger', id, ['charging module'], 1);
    once('charger', id, ['label'], 2);
  }
  for (const { charger } of planned.circuits) once('circuit', charger, ['wire connector']);
  for (const { id, length, method } of planned.conduits) {
    once('conduit', id, ['raceway'], length);
    if (method !== 'LFMC') once('conduit', id, ['raceway stick']);
  }
  for (const { id } of site.drops) once('drop', id, AT_DROP, 1);
  for (const { id } of site.pullpoints) once('pull point', id, AT_PULL, 1);
  const junctions = planned.boxes.filter(({ kind, under }) => kind === 'junction' && under === null);
  for (const { id } of junctions) once('junction', id, ['junction box'], 1);
  for (const { id } of planned.handholes) once('handhole', id, ['handhole'], 1);
  for (const { id, length } of planned.supply.feeders) {
    const { existing, conductor } = site.feeders.find((feeder) => feeder.id === id)!;
    const rows = planned.takeoff.filter(({ item, of }) => item.startsWith('feeder ') && of.includes(id));
    if (existing === true) expect(rows, id).toEqual([]);
    else
      once(
        'feeder',
        id,
        ['feeder raceway', 'feeder over 1,000 V'],
        rows[0]!.item === 'feeder over 1,000 V' ? length : length * conductor.sets,
      );
  }
  const { missing } = costOf(planned.takeoff, INVENTED_LIST, 1);
  // Boards of no rating and boxes of no size are what nobody could price.
  expect(missing.filter(({ item }) => item !== 'feeder over 1,000 V' && item !== 'device over 1,000 V')).toEqual([]);
  return looked;
}

test('every element of any lot is in exactly one row', () => {
  let looked = 0;
  fc.assert(
    fc.property(anyLot({ mostChargers: 6 }), (file) => {
      const chargers = file.chargers!.map((charger, i) => ({ ...charger, pilot: i % 2 === 0 }));
      looked += expectOnce(toSite({ ...file, chargers }));
    }),
    { numRuns: 15 },
  );
  expect(looked).toBeGreaterThan(100);
});

test('every piece of any supply is in exactly one row', () => {
  let looked = 0;
  fc.assert(
    fc.property(anySupply, (parts) => {
      looked += expectOnce(siteOf(parts));
    }),
    { numRuns: 15 },
  );
  expect(looked).toBeGreaterThan(60);
});
