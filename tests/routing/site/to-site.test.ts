import { describe, expect, it, test } from 'vitest';
import { writeSite } from '../../../routing/site/file/write.ts';
import { ELEMENT_LISTS } from '../../../routing/site/kinds/kinds.ts';
import { fromFeet, toFeet } from '../../../routing/site/numbers/units.ts';
import { DEFAULT_RULES } from '../../../routing/site/rules/rules.ts';
import type { SiteFile } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { BUILT_IN_VEHICLES } from '../../../routing/site/vehicles.ts';
import { feetFile, metricFile } from './numbers/metric.ts';

const BARE: SiteFile = { format: 'overrow/site', version: 1, units: 'ft', name: 'Bare' };

/** Every number in a value, by its place. */
function numbersIn(value: unknown, place = ''): ReadonlyMap<string, number> {
  if (typeof value === 'number') return new Map([[place, value]]);
  if (value instanceof Map) return numbersIn(Object.fromEntries(value), place);
  if (typeof value !== 'object' || value === null) return new Map();
  return new Map(Object.entries(value).flatMap(([name, inner]) => [...numbersIn(inner, `${place}/${name}`)]));
}

describe('a site out of a file in feet', () => {
  const site = toSite(feetFile);

  it('has the very elements of the file', () => {
    for (const list of ELEMENT_LISTS) {
      if (list !== 'feeders') expect(site[list], list).toBe(feetFile[list]);
    }
    expect(site.georef).toBe(feetFile.georef);
    expect(site.vehicles.get('lift van')).toBe(feetFile.vehicles?.['lift van']);
    expect(site.asBuilt.get('D01')).toBe(feetFile.asBuilt?.D01);
  });

  it('says the metals in words', () => {
    expect(site.feeders.map((feeder) => feeder.conductor.metal)).toEqual(['aluminum', 'copper']);
    expect(site.feeders[1]).toBe(feetFile.feeders?.[1]);
    expect(site.rules.metal).toBe('copper');
  });

  it('has every list, the default rules and the built-in classes where the file has nothing', () => {
    const bare = toSite(BARE);
    for (const list of ELEMENT_LISTS) expect(bare[list]).toEqual([]);
    expect(bare.gridlines).toEqual({ x: [], y: [] });
    expect(bare.rules).toBe(DEFAULT_RULES);
    expect(bare.vehicles).toBe(BUILT_IN_VEHICLES);
    expect(bare.asBuilt.size).toBe(0);
    expect('georef' in bare).toBe(false);
  });

  it("puts the file's rules over the defaults, one by one", () => {
    const { rules } = toSite({
      ...BARE,
      rules: { cordSlack: 3, allowance: { box: 2 }, pilot: { sourcePicofarads: 0 } },
    });
    expect(rules).toEqual({
      ...DEFAULT_RULES,
      cordSlack: 3,
      allowance: { equipment: 5, box: 2, electrode: 20 },
      pilot: { ...DEFAULT_RULES.pilot, sourcePicofarads: 0 },
    });
  });

  it("puts the file's vehicle classes over the built-in ones", () => {
    const van = { length: 20, width: 7, height: 9, inlets: [] };
    const { vehicles } = toSite({ ...BARE, vehicles: { van, tram: van } });
    expect([...vehicles.keys()]).toEqual([...BUILT_IN_VEHICLES.keys(), 'tram']);
    expect(vehicles.get('van')).toBe(van);
    expect(vehicles.get('sedan')).toBe(BUILT_IN_VEHICLES.get('sedan'));
  });
});

describe('a site out of a metric file', () => {
  it('has the lengths of the same lot in feet to 1e-9, and nothing else changed', () => {
    const inFeet = numbersIn(toSite(feetFile));
    const fromMetres = numbersIn(toSite(metricFile));
    expect([...fromMetres.keys()]).toEqual([...inFeet.keys()]);
    for (const [place, value] of fromMetres) {
      expect(Math.abs(value - (inFeet.get(place) ?? Number.NaN)), place).toBeLessThanOrEqual(1e-9);
    }
  });

  it('converts what is a length and nothing that is not', () => {
    const { drops, rules, loads, georef } = toSite({
      ...BARE,
      units: 'm',
      drops: [{ id: 'D1', box: [3.048, -0.3048, 3.81], cord: 7.62 }],
      loads: [{ id: 'L1', from: 'P1', name: 'x', volts: 120, phases: 1, va: 1, continuous: true }],
      rules: { cordSlack: 0.6096, coverage: 0.5, bendLimit: 180, pilot: { cordPicofaradsPerFoot: 40 } },
      georef: { lon: 1, lat: 2, bearing: 3 },
    });
    expect(drops).toEqual([{ id: 'D1', box: [10, -1, 12.5], cord: 25 }]);
    expect(rules).toMatchObject({ cordSlack: 2, cordLimit: 25, coverage: 0.5, bendLimit: 180 });
    expect(rules.pilot.cordPicofaradsPerFoot).toBe(40);
    expect(loads[0]).toMatchObject({ volts: 120, va: 1 });
    expect(georef).toEqual({ lon: 1, lat: 2, bearing: 3 });
  });

  it('leaves the file as it was, to be written back in metres', () => {
    const before = JSON.stringify(metricFile);
    toSite(metricFile);
    expect(JSON.stringify(metricFile)).toBe(before);
    expect(JSON.parse(writeSite(metricFile))).toStrictEqual(metricFile);
  });

  it('the foot is 0.3048 m exactly (international foot, 1959)', () => {
    expect([toFeet(0.3048, 'm'), fromFeet(1, 'm')]).toEqual([1, 0.3048]);
    expect([toFeet(7, 'ft'), fromFeet(7, 'ft')]).toEqual([7, 7]);
  });
});

describe('what did not change is the same object again', () => {
  test.each([
    ['feet', feetFile],
    ['metres', metricFile],
  ])('in a file in %s', (_, file) => {
    const before = toSite(file);
    expect(toSite(file)).toBe(before);

    const [first, second] = file.drops ?? [];
    if (first === undefined || second === undefined) throw new Error('the file has two drops');
    const after = toSite({ ...file, drops: [first, { ...second, cord: 6 }] });
    expect(after).not.toBe(before);
    for (const list of ELEMENT_LISTS) if (list !== 'drops') expect(after[list], list).toBe(before[list]);
    expect(after.drops[0]).toBe(before.drops[0]);
    expect(after.drops[1]).not.toBe(before.drops[1]);
    expect(after.rules).toBe(before.rules);
    expect(after.vehicles).toBe(before.vehicles);
    expect(after.gridlines).toBe(before.gridlines);
    expect(after.asBuilt).toBe(before.asBuilt);
  });

  it('feeders with the other spelling of a metal are', () => {
    const before = toSite(feetFile);
    const after = toSite({ ...feetFile, feeders: [...(feetFile.feeders ?? [])].reverse() });
    expect(after.feeders).toEqual([...before.feeders].reverse());
    expect(after.feeders[1]).toBe(before.feeders[0]);
  });

  it('lists without an element are', () => {
    expect(toSite({ ...BARE, name: 'one' }).drops).toBe(toSite({ ...BARE, name: 'two' }).drops);
  });

  it('but the same list in a file of other units is not', () => {
    const drops = [{ id: 'D1', box: [1, 1, 1], cord: 1 }] as const;
    const rules = { cordSlack: 1 };
    const vehicles = { cart: { length: 1, width: 1, height: 1, inlets: [] } };
    const gridlines = { x: [{ label: '1', at: 1 }] };
    const parts = { drops, rules, vehicles, gridlines, asBuilt: { D1: { box: [1, 1, 1] } } } as const;
    const feet = toSite({ ...BARE, ...parts });
    const metres = toSite({ ...BARE, ...parts, units: 'm' });
    expect([feet.drops[0]?.cord, metres.drops[0]?.cord]).toEqual([1, 1 / 0.3048]);
    expect([feet.rules.cordSlack, metres.rules.cordSlack]).toEqual([1, 1 / 0.3048]);
    expect([feet.vehicles.get('cart')?.width, metres.vehicles.get('cart')?.width]).toEqual([1, 1 / 0.3048]);
    expect([feet.gridlines.x[0]?.at, metres.gridlines.x[0]?.at]).toEqual([1, 1 / 0.3048]);
    expect([feet.asBuilt.get('D1')?.box?.[0], metres.asBuilt.get('D1')?.box?.[0]]).toEqual([1, 1 / 0.3048]);
  });
});
