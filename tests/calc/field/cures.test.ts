import { describe, expect, test } from 'vitest';
import { deviationOf } from '../../../calc/field/cures.ts';
import { newFaults } from '../../../calc/field/new-faults.ts';
import { plan } from '../../../calc/plan/plan.ts';
import { INVENTED_LIST } from '../../../calc/prices/invented-list.ts';
import { dropAsBuilt } from '../../../routing/site/place/as-built.ts';
import type { AsBuilt, Site, SiteFile } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { libraryLot } from './start-lot.ts';

const withRecord = (file: SiteFile, found: AsBuilt): Site => toSite({ ...file, asBuilt: { D05: found } });
const built = (site: Site, patch: object = {}): Site => ({
  ...site,
  drops: site.drops.map((drop) =>
    drop.id === 'D05' ? { ...dropAsBuilt(drop, site.asBuilt.get('D05')), ...patch } : drop,
  ),
});

describe('a drop that was built elsewhere', () => {
  test('as drawn it changes nothing; half a foot along the row it takes so much wire and money, and needs no cure', () => {
    const file = libraryLot();
    expect(deviationOf(toSite(file), 'D05', INVENTED_LIST)).toBeNull();
    const site = withRecord(file, { box: [52.5, 9, 11] });
    const found = deviationOf(site, 'D05', INVENTED_LIST)!;
    expect(found.faults).toEqual([]);
    expect(found.cures).toEqual([]);
    // Each conductor of its circuit is as much longer or shorter as its run, with 5% of waste.
    const feet = (one: Site): number => plan(one).runs.find(({ drop }) => drop === 'D05')!.length!;
    const by = feet(built(site)) - feet(site);
    expect(by).not.toBe(0);
    expect(found.wire / (by * 1.05)).toBeCloseTo(Math.round(found.wire / (by * 1.05)), 6);
    expect(Math.sign(found.price.adds)).toBe(Math.sign(by));
  });

  test('too far for its cord, it is cured by a longer one or by moving back, and each cure passes', () => {
    const file = libraryLot();
    const site = withRecord(
      { ...file, drops: file.drops!.map((drop) => (drop.id === 'D05' ? { ...drop, cord: 22 } : drop)) },
      { box: [52, 7, 11] },
    );
    const found = deviationOf(site, 'D05', INVENTED_LIST)!;
    expect(found.faults.length).toBeGreaterThan(0);
    const [longer] = found.cures.filter(({ kind }) => kind === 'cord');
    const [back] = found.cures.filter(({ kind }) => kind === 'move');
    if (longer?.kind !== 'cord' || back?.kind !== 'move') throw new RangeError('both were due');
    expect(newFaults(built(site, { cord: longer.cord }), site)).toEqual([]);
    expect(newFaults(built(site, { cord: longer.cord - 1 }), site)).not.toEqual([]);
    expect(newFaults({ ...site, drops: site.drops.map((drop) => (drop.id === 'D05' ? back.to : drop)) }, site)).toEqual(
      [],
    );
    expect(back.feet).toBeGreaterThan(0);
    expect(back.feet).toBeLessThan(4);
  });

  test('past the longest tap it has no run, and a raceway that is led on to it gives it one', () => {
    // Four feet past the end of R6, where stubs may have three.
    const file = libraryLot();
    const site = withRecord({ ...file, rules: { ...file.rules, tapLimit: 3 } }, { box: [52, 13, 11] });
    const found = deviationOf(site, 'D05', INVENTED_LIST)!;
    expect(found.faults.length).toBeGreaterThan(0);
    const led = found.cures.find(({ kind }) => kind === 'extend');
    expect(led).toEqual({ kind: 'extend', raceway: 'R6', feet: 4 });
  });
});
