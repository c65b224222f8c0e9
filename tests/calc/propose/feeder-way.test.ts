import { describe, expect, test } from 'vitest';
import { alternativeOf } from '../../../calc/plan/compared/alternative.ts';
import { plan } from '../../../calc/plan/plan.ts';
import { INVENTED_LIST } from '../../../calc/prices/invented-list.ts';
import { feederWaySite } from '../../../calc/propose/feeder-way.ts';
import { coreWatts } from '../../../calc/supply/feeders/feeder-losses.ts';
import { type FeederProspect, feederProspects } from '../../../calc/supply/feeders/feeder-prospects.ts';
import { NEC_2023 } from '../../../calc/tables/nec-2023/nec-2023.ts';
import { readSiteValue } from '../../../routing/site/file/read.ts';
import type { SiteFile } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';

/**
 * An invented lot: 16 stalls in a row with a charger of 32 A each, line to line, on one board; its feeder of 4/0 copper
 * stands already, 225 A at 208 V three-phase, in a conduit that holds no more.
 */
const LOT: SiteFile = JSON.parse(
  JSON.stringify({
    format: 'overrow/site',
    version: 1,
    units: 'ft',
    name: 'sixteen',
    stalls: Array.from({ length: 16 }, (_, i) => ({
      id: `S${i}`,
      at: [4.5 + 9 * i, 18],
      width: 9,
      depth: 18,
      heading: 270,
    })),
    members: [{ id: 'M1', from: [-6, 9, 12], to: [150, 9, 12] }],
    equipment: [
      {
        id: 'SVC',
        kind: 'source',
        at: [-60, 0],
        size: [6, 4, 6],
        entry: [-60, 0, 0],
        volts: 208,
        phases: 3,
        faultAmps: 10_000,
      },
      {
        id: 'P1',
        kind: 'panelboard',
        at: [-6, 0],
        size: [3, 1, 6],
        entry: [-6, 0, 6],
        volts: 208,
        phases: 3,
        busAmps: 225,
        mainAmps: 225,
        spaces: 42,
      },
    ],
    feeders: [
      {
        id: 'F1',
        from: 'SVC',
        to: 'P1',
        conductor: { size: '4/0', metal: 'copper', sets: 1, insulation: 'THWN-2' },
        raceway: 'PVC40',
        length: 60,
        breakerAmps: 225,
        existing: true,
      },
    ],
    raceways: [
      {
        id: 'R1',
        path: [
          [-6, 0, 6],
          [-6, 0, 11],
          [-6, 9, 11],
          [150, 9, 11],
        ],
        method: 'EMT',
        place: 'overhead',
      },
    ],
    drops: Array.from({ length: 16 }, (_, i) => ({ id: `D${i}`, box: [4.5 + 9 * i, 9, 11], cord: 25 })),
    chargers: Array.from({ length: 16 }, (_, i) => ({
      id: `EV${i}`,
      drop: `D${i}`,
      stalls: [`S${i}`],
      from: 'P1',
      amps: 32,
      volts: 208,
      phases: 1,
    })),
    rules: { ambientC: 30 },
  }),
);

function waysOf(file: SiteFile): { readonly ways: readonly FeederProspect[]; readonly length: number } {
  const [prospects] = feederProspects(toSite(file));
  if (!prospects?.ok) throw new Error(prospects?.says);
  return prospects;
}
const { ways, length } = waysOf(LOT);
const at = (volts: number, kva: number | null): FeederProspect =>
  ways.find((way) => way.volts === volts && way.kva === kva)!;
const opened = (way: FeederProspect, file = LOT): { readonly file: SiteFile; readonly says: readonly string[] } => {
  const site = feederWaySite(file, 'F1', way, length);
  if (!site.ok) throw new Error(site.says);
  return site;
};
const OVER = [
  'feeder-overload',
  'feeder-conductor',
  'main-overload',
  'bus-overload',
  'transformer-overload',
  'transformer-protection',
  'voltage-mismatch',
  'supply-tree',
  'supply-source',
  'no-feeder-route',
];
const over = (file: SiteFile): readonly string[] =>
  plan(toSite(file)).findings.flatMap(({ rule, severity, says }) =>
    OVER.includes(rule) && severity !== 'note' ? [`${rule}: ${says}`] : [],
  );

// All figures by hand: 4/0 copper carries 230 A at 75 C, 225 A its breaker, 80% of it 180 A; 16 x 32 A x 208 V are
// 106,496 VA, 295.6 A on each line at 208 V and 128.1 A at 480 V.
describe('sixteen chargers on a feeder of 4/0 that stands', () => {
  test('line to line they draw 296 A a line, of 180 A continuous', () => {
    const { fullRateAmps, steadyAmps } = at(208, null);
    expect(fullRateAmps.mean).toBeCloseTo(295.6, 1);
    // Six lie on one pair and five on each other: the line between the six and five carries more.
    expect(fullRateAmps.worst).toBeCloseTo(Math.sqrt(192 ** 2 + 160 ** 2 + 192 * 160), 0);
    expect(steadyAmps).toBeCloseTo(180, 9);
  });

  test('nine run at full rate; all sixteen under a shared limit of 180 A', () => {
    const way = at(208, null);
    expect(way).toMatchObject({ asItIs: true, atFullRate: 9, allAtFullRate: false, managedAmps: 180 });
    expect(way.shared!.amps).toBeGreaterThan(18);
    expect(way.shared!.amps).toBeLessThan(19.5);
  });

  test('all sixteen at full rate at 480 V: 128 A, behind 112.5 kVA loaded to 95% or 150 kVA with room', () => {
    const [tight, roomy] = [at(480, 112.5), at(480, 150)];
    expect(tight.fullRateAmps.mean).toBeCloseTo(128.1, 1);
    expect(tight).toMatchObject({ allAtFullRate: true, managedAmps: null });
    expect(tight.transformerKvaPercent).toBeCloseTo(94.66, 1);
    expect(roomy).toMatchObject({ allAtFullRate: true, managedAmps: null });
    expect(roomy.transformerKvaPercent).toBeCloseTo(71, 0);
    expect(at(480, 75).allAtFullRate).toBe(false);
  });

  test('conductors, ambient and length that are really there decide', () => {
    const hot = waysOf({ ...LOT, rules: { ambientC: 50 } }).ways.find(({ asItIs }) => asItIs)!;
    // THWN-2 at 50 C: 260 x 0.82 = 213.2 A by 90 C, so a 225 A device still; its own load counts once.
    expect(hot.steadyAmps).toBeCloseTo(180, 9);
    const small = { ...LOT.feeders![0]!, conductor: { ...LOT.feeders![0]!.conductor, size: '1/0' } };
    expect(waysOf({ ...LOT, feeders: [small] }).ways[0]!.steadyAmps).toBeCloseTo(120, 9);
    const far = { ...LOT.feeders![0]!, length: 400 };
    expect(waysOf({ ...LOT, feeders: [far] }).ways[0]!.worstDropPercent).toBeGreaterThan(ways[0]!.worstDropPercent);
  });
});

describe('a way opens into a site', () => {
  test('as it is, with load management at 180 A: nothing of the supply is over', () => {
    expect(over(LOT).length).toBeGreaterThan(0);
    const { file, says } = opened(at(208, null));
    expect(readSiteValue(file).ok).toBe(true);
    expect(file.equipment!.find(({ id }) => id === 'P1')!.managedAmps).toBe(180);
    expect(says).toEqual(['Load management holds the chargers of P1 to 180 A.']);
    expect(over(file)).toEqual([]);
  });

  test.each([112.5, 150])('at 480 V behind %d kVA: drawn, planned without an overload, and priced', (kva) => {
    const way = at(480, kva);
    const { file, says } = opened(way);
    expect(readSiteValue(file).ok).toBe(true);
    const transformer = file.equipment!.find(({ kind }) => kind === 'transformer')!;
    expect(transformer).toMatchObject({ kva, primaryVolts: 480, secondaryVolts: 208 });
    const [primary, secondary] = file.feeders!;
    expect(primary).toMatchObject({
      id: 'F1',
      to: transformer.id,
      breakerAmps: way.transformerBreakerAmps,
      length: 60,
    });
    expect(secondary).toMatchObject({ from: transformer.id, to: 'P1', breakerAmps: kva === 112.5 ? 400 : 600 });
    expect(says.join(' ')).toMatch(/^SVC at 480 V: .* fault current asked anew/);
    expect(file.equipment![0]).not.toHaveProperty('faultAmps');
    expect(over(file)).toEqual([]);
    const planned = plan(toSite(file));
    const percent = planned.supply.transformers[0]!.percentLoaded;
    // The plan solves the volts, which are a few percent under nominal, and so are the kVA.
    expect(percent / way.transformerKvaPercent!).toBeGreaterThan(0.95);
    expect(percent / way.transformerKvaPercent!).toBeLessThanOrEqual(1);
    const [before, after] = [LOT, file].map((one) => alternativeOf(one.name, toSite(one), INVENTED_LIST).cost.price);
    expect(after).not.toBe(before);
  });

  test('at a smaller transformer the ceiling keeps it within its rating', () => {
    const { file } = opened(at(480, 75));
    expect(file.equipment!.find(({ id }) => id === 'P1')!.managedAmps).toBe(at(480, 75).managedAmps);
    expect(over(file)).toEqual([]);
  });

  test('where its board feeds other things the voltage is not changed, and it is said why', () => {
    const file = {
      ...LOT,
      loads: [{ id: 'L', from: 'SVC', name: 'Lights', volts: 120, phases: 1, va: 500, continuous: true }],
    };
    const site = feederWaySite(file as SiteFile, 'F1', at(480, 150), length);
    expect(site).toEqual({
      ok: false,
      says: 'SVC feeds other things at 208 V: a system of 480 V beside it is to be drawn by hand.',
    });
  });
});

// By hand from the table: 112.5 kVA may lose 502 W at 35% load, half of it in the core: 251 W, 2,199 kWh in 8,760 h.
test('the core of a transformer is lost all the year', () => {
  expect(coreWatts(NEC_2023, 112.5)).toBeCloseTo(251, 6);
  expect((coreWatts(NEC_2023, 112.5) * 8760) / 1000).toBeCloseTo(2199, 0);
  expect(coreWatts(NEC_2023, null)).toBe(0);
});

test('losses of each way are the squares of its currents through its resistances', () => {
  const [low, high] = [at(208, null), at(480, 150)];
  const { shared, losses } = low;
  const pairs = [6, 5, 5].map((count) => count * shared!.amps);
  const squares = [0, 1, 2].reduce((sum, i) => {
    const [a, b] = [pairs[i]!, pairs[(i + 1) % 3]!];
    return sum + a * a + b * b + a * b;
  }, 0);
  const ohms = losses.feeder / squares;
  // 60 ft of 4/0 copper in PVC: 0.062 ohm a 1,000 ft (Chapter 9 Table 9).
  expect(ohms).toBeCloseTo((0.062 * 60) / 1000, 5);
  expect(low.losses).toMatchObject({ windings: 0, core: 0 });
  expect(high.losses.core).toBeCloseTo(311, 6);
  expect(high.losses.windings).toBeGreaterThan(0);
});
