import { describe, expect, test } from 'vitest';
import { feederConduits } from '../../../../calc/supply/feeders/feeder-conduit.ts';
import { NEC_2023 } from '../../../../calc/tables/nec-2023/nec-2023.ts';
import { whyFeeder } from '../../../../calc/why/why-supply.ts';
import type { Feeder, SiteFile } from '../../../../routing/site/site.ts';
import { feeder, panel, siteOf, source } from '../small-site.ts';
import { conductor } from './feeder-lies-parts.ts';

describe('the grounding conductor of a feeder: 250.122(B)', () => {
  const ground = (of: Partial<Feeder>, rules: SiteFile['rules'] = {}): string => {
    const site = siteOf({ equipment: [source(208), panel('P')], feeders: [feeder('SVC', 'P', of)], rules });
    return feederConduits(site, NEC_2023)[0]!.conductors.find(({ use }) => use === 'grounding')!.size;
  };

  test.each([
    // Table 250.122: 200 A 6 AWG (26,240 cmil), 100 A 8 AWG (16,510), 600 A 1 AWG (83,690). Needed: 3/0, 3 AWG, 2 x 350.
    [200, '3/0', 1, '6', 'as needed'],
    [200, '250', 1, '4', '26,240 x 250 / 167.8 = 39,094'],
    [200, '500', 1, '1', '26,240 x 500 / 167.8 = 78,188'],
    [100, '3/0', 1, '3', '16,510 x 167.8 / 52.62 = 52,649, by a hair 52,620'],
    [600, '350', 2, '1', 'as needed'],
    [600, '350', 3, '2/0', '83,690 x 1,050 / 700 = 125,535'],
    [600, '3/0', 3, '1', 'three sets that are no more than needed'],
    [200, '1/0', 2, '6', 'the smallest that may be in parallel'],
  ] as const)('%i A on %s x %i: %s AWG (%s)', (breakerAmps, size, sets, wanted, _) => {
    expect(ground({ breakerAmps, conductor: conductor(size, 'THWN-2', sets) })).toBe(wanted);
  });

  test('conductors that heat asks for are no growth: 310.15', () => {
    // At 60 C 3/0 THWN-2 carries 159.75 A and 250 kcmil 205.9 A: needed, not grown.
    expect(ground({ conductor: conductor('250') }, { ambientC: 60 })).toBe('6');
  });

  test('steps tell it', () => {
    const site = siteOf({
      equipment: [source(208), panel('P')],
      feeders: [feeder('SVC', 'P', { conductor: conductor('500') })],
    });
    expect(whyFeeder(site, 'F-P').at(-1)).toMatchObject({
      result: '1',
      values: { table: '6', installed: '500', needed: '3/0' },
    });
  });
});
