import { describe, expect, test } from 'vitest';
import { feederAmpacity } from '../../../../calc/supply/feeders/feeder-ampacity.ts';
import { feederConduits } from '../../../../calc/supply/feeders/feeder-conduit.ts';
import { feederOptions } from '../../../../calc/supply/feeders/feeder-options.ts';
import { feederProspects } from '../../../../calc/supply/feeders/feeder-prospects.ts';
import { NEC_2023 } from '../../../../calc/tables/nec-2023/nec-2023.ts';
import { whyFeeder } from '../../../../calc/why/why-supply.ts';
import type { Feeder, Raceway, SiteFile } from '../../../../routing/site/site.ts';
import { chargers, feeder, load, type Parts, panel, siteOf, source, supplied } from '../small-site.ts';
import { conductor, of } from './feeder-lies-parts.ts';

/** A feeder that follows a raceway drawn from the source to a panel 100 ft away. */
function along(raceway: Partial<Raceway>, of: Partial<Feeder> = {}, rules: SiteFile['rules'] = {}): Parts {
  const { length: _, raceway: __, ...drawn } = feeder('SVC', 'P', { conductor: conductor('3/0'), ...of });
  return {
    equipment: [source(208), panel('P', { at: [100, 0], entry: [100, 0, 0] })],
    feeders: [drawn],
    raceways: [
      {
        id: 'R',
        path: [
          [0, 0, 0],
          [100, 0, 0],
        ],
        method: 'EMT',
        place: 'surface',
        ...raceway,
      },
    ],
    chargers: chargers('P', 3),
    rules,
  };
}

// Table 310.16: 3/0 copper 200 A at 75 C, 225 A at 90 C. Table 310.15(B)(1): 90 C column 0.91 to 40 C, 0.71 to 60 C,
// 0.50 to 75 C; 75 C column 0.88 to 40 C, 1.05 to 25 C.
describe('a feeder is worked where it lies', () => {
  test('a raceway close above a roof in the sun is 33 C warmer: 225 x 0.50 = 112.5 A', () => {
    const finding = of(along({ aboveRoof: 0.02 }), 'feeder-conductor')!;
    expect(finding).toMatchObject({ severity: 'fail', value: 200, limit: 125 });
    expect(finding.says).toContain('73 °C');
    expect(of(along({ aboveRoof: 0.2 }), 'feeder-conductor')).toBeUndefined();
  });

  test('the roof does not count for XHHW-2: 310.15(B)(2) exception', () => {
    expect(
      of(along({ aboveRoof: 0.02 }, { conductor: conductor('3/0', 'XHHW-2') }), 'feeder-conductor'),
    ).toBeUndefined();
  });

  test('the ambient of the raceway itself: 225 x 0.71 = 159.75 A, at most a 175 A device', () => {
    expect(of(along({ ambientC: 60 }), 'feeder-conductor')).toMatchObject({ value: 200, limit: 175 });
  });

  test('the ambient of its place, and the hottest stretch of several', () => {
    const rules = { placeAmbientC: { underground: 25, surface: 60 } };
    expect(of(along({ place: 'underground' }, {}, rules), 'feeder-conductor')).toBeUndefined();
    expect(of(along({}, {}, rules), 'feeder-conductor')!.limit).toBe(175);
    const two = along({ place: 'underground' }, {}, rules);
    const [first] = two.raceways!;
    const half = {
      ...first!,
      path: [
        [0, 0, 0],
        [50, 0, 0],
      ],
    } as Raceway;
    const rest = {
      ...first!,
      id: 'R2',
      place: 'surface',
      path: [
        [50, 0, 0],
        [100, 0, 0],
      ],
    } as Raceway;
    expect(of({ ...two, raceways: [half, rest] }, 'feeder-conductor')!.limit).toBe(175);
  });

  test('steps tell the ambient and where it is from', () => {
    const steps = whyFeeder(siteOf(along({ ambientC: 60 })), 'F-P');
    expect(steps.find(({ find }) => find === 'ambient')).toMatchObject({ result: 60, values: { hottest: 'R' } });
    expect(steps.find(({ find }) => find === 'ambient factor')!.result).toBe(0.71);
  });

  test('what an existing feeder can carry follows', () => {
    const prospects = (parts: Parts) => {
      const [one] = feederProspects(siteOf(parts));
      if (!one?.ok) throw new Error('not known');
      return one;
    };
    expect(prospects(along({ ambientC: 60 }, { existing: true })).wish.ambientC).toBe(60);
    const hot = prospects(along({ aboveRoof: 0.02 }, { existing: true })).ways[0]!;
    // 112.5 A, of which a 125 A breaker gives 100 A continuous: 4 chargers (legs 2, 1, 1 make 84.7 A), 5 make 110.9 A.
    expect(hot.atFullRate).toBe(4);
  });
});

// 215.2(A)(1): 125% of continuous load within the ampacity before correction, the load itself within that after it.
describe('the conductors of a feeder against its load', () => {
  const wet = conductor('3/0', 'THWN');
  const steady = (va: number): Parts => ({
    equipment: [source(208), panel('P')],
    feeders: [feeder('SVC', 'P', { conductor: wet })],
    loads: [load('P', 'L', { volts: 208, phases: 3, va })],
  });

  test('150 A continuous on 3/0 THWN at 40 C with 200 A passes: 200 >= 187.5, 176 >= 150, 200 is next above 176', () => {
    expect(supplied(siteOf(steady(Math.sqrt(3) * 208 * 150))).findings.map(({ rule }) => rule)).not.toContain(
      'feeder-conductor',
    );
  });

  test('load after correction: 177 A that is not continuous is over 176 A', () => {
    const parts = steady(Math.sqrt(3) * 208 * 177);
    const once = { ...parts, loads: parts.loads!.map((one) => ({ ...one, continuous: false })) };
    const finding = of(once, 'feeder-conductor')!;
    expect(finding.limit).toBeCloseTo(176, 9);
    expect(finding.value).toBeCloseTo(177, 6);
  });

  test('125% at the terminals: 4/0 THWN-2 of 230 A on 250 A, 185 A continuous asks for 231 A', () => {
    const parts: Parts = {
      ...steady(Math.sqrt(3) * 208 * 185),
      feeders: [feeder('SVC', 'P', { conductor: conductor('4/0'), breakerAmps: 250 })],
    };
    const finding = of(parts, 'feeder-conductor')!;
    expect(finding).toMatchObject({ limit: 230 });
    expect(finding.value).toBeCloseTo(231.25, 6);
  });

  test('24 chargers on 150 ft of 3/0 at 480 V through 150 kVA: THWN does what THWN-2 does', () => {
    const ways = (['THWN', 'THWN-2'] as const).map((insulation) =>
      feederOptions(
        { conductor: conductor('3/0', insulation), raceway: 'PVC', length: 150, breakerAmps: 200, volts: 480 },
        {
          chargers: 24,
          amps: 32,
          panelVolts: 208,
          powerFactor: 0.99,
          otherVa: 0,
          branch: { r: 0.08, x: 0.006 },
          ambientC: 40,
          terminalC: 75,
          chargingHours: 1500,
        },
        NEC_2023,
      ).find(({ volts, kva }) => volts === 480 && kva === 150),
    );
    expect(ways[0]).toEqual(ways[1]);
    // 160 A continuous at 480 V are 369.2 A at 208 V: 8 chargers on each pair, 369.2 / (8 sqrt 3) = 26.65 A each.
    expect(ways[0]).toMatchObject({ atFullRate: 18, atPilotFloor: 105 });
    expect(ways[0]!.shared!.amps).toBe(26.64);
  });
});

describe('a raceway that several circuits share', () => {
  // Table 310.15(C)(1): 0.80 for 4 to 6, 0.70 for 7 to 9. 3/0 THWN-2 copper: 225 A at 90 C, 200 A at 75 C.
  test.each([
    [undefined, 200, 200],
    [6, 180, 200],
    [9, 157.5, 175],
  ])('%s conductors with current: %s A, a device of %s A at most', (currentCarrying, amps, device) => {
    const made = { ...conductor('3/0'), ...(currentCarrying === undefined ? {} : { currentCarrying }) };
    const carried = feederAmpacity(NEC_2023, made, 30, 75)!;
    expect(carried.ampacity).toBeCloseTo(amps, 9);
    expect(carried.atTerminals).toBe(200);
    const finding = of(along({}, { conductor: made }, { ambientC: 30 }), 'feeder-conductor');
    if (device >= 200) expect(finding).toBeUndefined();
    else expect(finding).toMatchObject({ severity: 'fail', value: 200, limit: device });
  });

  test('is filled by all of them', () => {
    const sizeOf = (currentCarrying: number) => {
      const site = siteOf(along({}, { conductor: { ...conductor('3/0'), currentCarrying } }));
      return feederConduits(site, NEC_2023)[0]!;
    };
    expect([sizeOf(3).tradeSize, sizeOf(6).tradeSize]).toEqual(['2', '2-1/2']);
    // What is taken off is what is its own.
    expect(sizeOf(6).conductors).toEqual(sizeOf(3).conductors);
  });
});

describe('feeders side by side in the ground', () => {
  const trench = (apart: number, sets = 1, long = 60): Parts => ({
    equipment: [
      source(208),
      ...[0, 1, 2].map((i) => panel(`P${i}`, { at: [long, i * apart], entry: [long, i * apart, -2] })),
    ],
    feeders: [0, 1, 2].map((i) => {
      const {
        length: _,
        raceway: __,
        ...drawn
      } = feeder('SVC', `P${i}`, { conductor: conductor('3/0', 'THWN-2', sets) });
      return drawn;
    }),
    raceways: [0, 1, 2].map((i) => ({
      id: `R${i}`,
      path: [
        [0, 0, -2],
        [0.1, i * apart, -2],
        [long, i * apart, -2],
      ],
      method: 'PVC40',
      place: 'underground',
    })),
  });

  test('three warm one another, and that is told once; farther apart than 3 ft, or short of 10 ft, it is not', () => {
    expect(of(trench(1), 'duct-bank')).toMatchObject({ severity: 'warn', value: 3, limit: 2 });
    const all = supplied(siteOf(trench(1))).findings.filter(({ rule }) => rule === 'duct-bank');
    expect(all).toHaveLength(1);
    expect(of(trench(3.5), 'duct-bank')).toBeUndefined();
    expect(of(trench(3.5, 3), 'duct-bank')).toMatchObject({ value: 3 });
  });

  test('one on a wall is none; three sets whose way is not drawn may be', () => {
    const parts = trench(1);
    const up = { ...parts, raceways: parts.raceways!.map((one) => ({ ...one, place: 'surface' as const })) };
    expect(of(up, 'duct-bank')).toBeUndefined();
    const given = (sets: number, more: object = {}): Parts => ({
      equipment: [source(208), panel('P')],
      feeders: [feeder('SVC', 'P', { conductor: conductor('3/0', 'THWN-2', sets), ...more })],
    });
    expect(of(given(3), 'duct-bank')).toMatchObject({ severity: 'note', about: ['F-P'] });
    expect(of(given(2), 'duct-bank')).toBeUndefined();
    expect(of(given(3, { outdoors: false }), 'duct-bank')).toBeUndefined();
    expect(of(given(3, { raceway: 'EMT' }), 'duct-bank')).toBeUndefined();
  });
});
