import { describe, expect, test } from 'vitest';
import { alternativeOf } from '../../../../calc/plan/compared/alternative.ts';
import { comparison } from '../../../../calc/plan/compared/comparison.ts';
import { INVENTED_LIST } from '../../../../calc/prices/invented-list.ts';
import { neutralAmps, toNeutralAmps } from '../../../../calc/supply/panels/neutral.ts';
import { yearlyLosses } from '../../../../calc/supply/transformers/yearly-losses.ts';
import { linesOf, treeOf } from '../../../../calc/supply/tree/supply-lines.ts';
import { NEC_2023 } from '../../../../calc/tables/nec-2023/nec-2023.ts';
import type { Site } from '../../../../routing/site/site.ts';
import { chargers, feeder, load, panel, siteOf, source, supplied, transformer } from '../small-site.ts';

const LIT = siteOf({
  equipment: [source(480), panel('M', { volts: 480 }), transformer('T'), panel('P')],
  feeders: [feeder('SVC', 'M'), feeder('M', 'T'), feeder('T', 'P')],
  chargers: chargers('P', 12),
  loads: ['A', 'B', 'C'].map((name) => load('P', `L${name}`, { va: 3600 })),
});
const neutrals = (site: Site): Record<string, number> => {
  const tree = treeOf(site);
  const amps = toNeutralAmps(tree, linesOf(site), site.loads);
  return Object.fromEntries(tree.nodes.map(({ equipment }, place) => [equipment.id, amps[place]!]));
};

describe('the neutral of a four-wire board', () => {
  // By hand: 3,600 VA at 120 V are 30 A on each line; balanced, nothing comes back at the frequency of the supply, and
  // 30% of third harmonic of each adds up to 27 A.
  test('third harmonics of balanced loads add up in it', () => {
    const { P } = neutrals(LIT);
    expect(P).toBeCloseTo((3 * 3600) / (208 / Math.sqrt(3)), 6);
    const { fundamental, third, rms } = neutralAmps(0, P!, 0.3);
    expect([fundamental, third, rms].map((one) => Number(one.toFixed(1)))).toEqual([0, 27, 27]);
    expect(neutralAmps(30, 30, 0.3).rms).toBeCloseTo(Math.sqrt(30 ** 2 + 9 ** 2), 9);
  });

  test('a delta keeps them from what is ahead, and chargers have none', () => {
    expect(neutrals(LIT)).toMatchObject({ SVC: 0, M: 0 });
    expect(neutrals({ ...LIT, loads: [] })).toEqual({ SVC: 0, M: 0, T: 0, P: 0 });
  });
});

describe('transformers that feed electronic loads', () => {
  const notes = (site: Site) => supplied(site).findings.filter(({ rule }) => rule === 'harmonics');

  // 12 x 6,656 VA are 79.9 kVA, 53% of 150 kVA; half as many are under half of it.
  test('most of whose rating feeds chargers: whether they are K-rated is asked', () => {
    const [note] = notes(LIT);
    expect(note).toMatchObject({ severity: 'note', about: ['T'] });
    expect(note!.value).toBeCloseTo((100 * 12 * 6.656) / 150, 6);
    expect(note!.says).toMatch(/K rating \(K-4, K-13\).* Loads to neutral add 27 A of third harmonic/);
    expect(notes({ ...LIT, chargers: LIT.chargers.slice(0, 6) })).toEqual([]);
  });
});

describe('losses of a year', () => {
  test('windings and feeders for the hours of charging, the core for all 8,760', () => {
    const { supply } = supplied(LIT);
    const { load: underLoad, core } = yearlyLosses(LIT, supply, NEC_2023);
    const watts = [...supply.feeders, ...supply.transformers].reduce((sum, one) => sum + one.lossWatts, 0);
    expect(underLoad).toBeCloseTo(1.5 * watts, 6);
    // 150 kVA may lose 622 W at 35% load, half of it in the core: 311 W.
    expect(core).toBeCloseTo(8.76 * 311, 6);
  });

  test('held to half their rate, chargers run twice as long at a quarter of the loss', () => {
    const bare = { ...LIT, loads: [] };
    const managed = {
      ...bare,
      equipment: bare.equipment.map((one) =>
        one.id === 'P' ? { ...one, managedAmps: (16 * 12) / Math.sqrt(3) } : one,
      ),
    };
    const [full, half] = [bare, managed].map((site) => yearlyLosses(site, supplied(site).supply, NEC_2023).load);
    // Volts rise a little as the load falls, so not quite.
    expect(half! / full!).toBeGreaterThan(0.45);
    expect(half! / full!).toBeLessThan(0.55);
  });

  test('they stand in the comparison of alternatives', () => {
    const facts = comparison([alternativeOf('a', LIT, INVENTED_LIST)]).map(({ fact }) => fact);
    expect(facts).toEqual(
      expect.arrayContaining(['lost a year in the supply under load', 'lost a year in transformer cores']),
    );
  });
});
