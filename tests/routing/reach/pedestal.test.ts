import { describe, expect, test } from 'vitest';
import { reachFindings } from '../../../routing/checks/reach-findings.ts';
import { reachOf } from '../../../routing/reach/reach.ts';
import type { Drop, SiteFile } from '../../../routing/site/site.ts';
import { charger, drop, inlet, siteOf, stall } from './sites.ts';

const CAR = { length: 14, width: 6, height: 5, inlets: [inlet('nose', 'front', 0, 3)] };

/** A car nose in, its inlet 3 ft up in the middle of the bumper at [0, 16], and a drop so far ahead of it. */
const ahead = (feet: number, height: number, more: Partial<Drop>, parts: Partial<SiteFile> = {}) => {
  const site = siteOf({
    vehicles: { car: CAR },
    stalls: [stall('S1', [0, 0], { parking: 'nose-in' })],
    drops: [drop('D1', [0, 16 + feet, height], more)],
    chargers: [charger('C1', 'D1', ['S1'])],
    ...parts,
  });
  return { reach: reachOf(site), findings: reachFindings(site) };
};

describe('a pedestal', () => {
  // Box at 4 ft, inlet at 3 ft, 12 ft off: 4 + 12 + 3 = 19 ft along the ground, where 12.04 would do through the air.
  test('lays its cord along the ground from its foot', () => {
    const [reach] = ahead(12, 4, { mount: 'pedestal', cord: 20.9 }).reach;
    expect(reach!.worst.needed).toBeCloseTo(19, 12);
    expect(reach!.worst.margin).toBeCloseTo(-0.1, 12);
    expect(reach!.coverage).toBe(0);
    expect(reach!.worst.hang).toBeNull();
    const [long] = ahead(12, 4, { mount: 'pedestal', cord: 21 }).reach;
    expect(long!.coverage).toBe(1);
    expect(long!.worst.hang).toMatchObject({ low: 0, lowAt: [0, 28], strip: { length: 12 } });
  });

  test('beside it, a wall box and a drop overhead keep the straight way', () => {
    for (const mount of ['wall', 'overhead'] as const)
      expect(ahead(12, 4, { mount }).reach[0]!.worst.needed).toBeCloseTo(Math.hypot(12, 1), 12);
  });

  test('is told the cord that would reach', () => {
    const { findings } = ahead(12, 4, { mount: 'pedestal', cord: 20.5 });
    const says = findings.find(({ rule }) => rule === 'reach')!.says;
    expect(says).toMatch(/needs 19' 0", 0' 6" more than the 18' 6" there is/);
    expect(says).toMatch(/A cord of 21' 0" would reach/);
    // Half a foot nearer, its cord is long enough.
    expect(says).toMatch(/move the drop 0' 6" toward/);
  });

  test('whose cord lies through a low keep-out is told, and not where the keep-out is over the cord', () => {
    const keepout = (from: number, to: number) => ({
      keepouts: [
        {
          id: 'K1',
          outline: [
            [-5, 20],
            [5, 20],
            [5, 22],
            [-5, 22],
          ] as [number, number][],
          from,
          to,
          blocks: ['cord' as const],
        },
      ],
    });
    const crossed = (from: number, to: number): boolean =>
      ahead(12, 4, { mount: 'pedestal', cord: 25 }, keepout(from, to)).findings.some(
        ({ rule }) => rule === 'keepout-crossed',
      );
    expect(crossed(-1, 0.5)).toBe(true);
    // A straight cord would hang at 3.6 ft there.
    expect(crossed(3, 4)).toBe(false);
  });

  test('whose cord lies over a walk is told as lying there', () => {
    const { findings } = ahead(
      12,
      4,
      { mount: 'pedestal', cord: 25 },
      {
        aisles: [
          {
            id: 'A1',
            outline: [
              [-5, 20],
              [5, 20],
              [5, 25],
              [-5, 25],
            ],
          },
        ],
      },
    );
    const low = findings.find(({ rule }) => rule === 'low-cord')!;
    expect(low.value).toBeCloseTo(5, 9);
    expect(low.says).toMatch(/lies on the ground over 5' 0" of A1/);
  });
});

describe('the height of a box that stands', () => {
  const heights = (mount: Drop['mount'], height: number, rules: SiteFile['rules'] = {}) =>
    ahead(12, height, { ...(mount && { mount }), cord: 60 }, { rules }).findings.filter(
      ({ rule }) => rule === 'pedestal-height',
    );

  test('of a pedestal fails over the rule, 4 ft; of a wall box it is worth a look', () => {
    expect(heights('pedestal', 4)).toEqual([]);
    expect(heights('pedestal', 11)).toMatchObject([
      { severity: 'fail', about: ['D1'], value: 11, limit: 4, unit: 'ft' },
    ]);
    expect(heights('wall', 4.5)).toMatchObject([{ severity: 'warn', value: 4.5 }]);
    expect(heights(undefined, 11)).toEqual([]);
    expect(heights('overhead', 11)).toEqual([]);
  });

  test('is held against the site’s own rule', () => {
    expect(heights('pedestal', 5, { pedestalHeight: 5 })).toEqual([]);
    expect(heights('pedestal', 3.5, { pedestalHeight: 3 })).toMatchObject([{ value: 3.5, limit: 3 }]);
  });
});
