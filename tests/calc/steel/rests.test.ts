import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { memberStatics } from '../../../calc/steel/member-statics.ts';
import { restsOf } from '../../../calc/steel/rests.ts';
import type { SpanLoad } from '../../../calc/steel/simple-span.ts';
import { simpleSpan } from '../../../calc/steel/simple-span.ts';
import { spanChain } from '../../../calc/steel/span-chain.ts';
import type { Column, Member } from '../../../routing/site/site.ts';

const beam = (x: number, id: string): Member => ({ id, from: [x, -18, 12], to: [x, 18, 12] });
const purlin = (y: number, more: Partial<Member> = {}): Member => ({
  id: `PU${y}`,
  from: [0, y, 12.5],
  to: [79, y, 12.5],
  ...more,
});
const column = (x: number, y = 0): Column => ({ id: `C${x}`, at: [x, y], size: [1, 1], height: 12 });
const BEAMS = [beam(0, 'B1'), beam(26, 'B2'), beam(53, 'B3'), beam(79, 'B4')];

describe('where members rest', () => {
  test('a purlin rests on each beam that it crosses, a beam on its column', () => {
    const rests = restsOf(
      [...BEAMS, purlin(9)],
      [0, 26, 53, 79].map((x) => column(x)),
    );
    expect(rests.get('PU9')).toEqual([
      { at: 0, on: 'B1', kind: 'member' },
      { at: 26, on: 'B2', kind: 'member' },
      { at: 53, on: 'B3', kind: 'member' },
      { at: 79, on: 'B4', kind: 'member' },
    ]);
    expect(rests.get('B2')).toEqual([{ at: 18, on: 'C26', kind: 'column' }]);
  });

  test('without columns what lies lower carries; at one level and without columns nothing is known', () => {
    const rests = restsOf([...BEAMS, purlin(9)], []);
    expect(rests.get('PU9')!.map(({ on }) => on)).toEqual(['B1', 'B2', 'B3', 'B4']);
    expect(rests.has('B1')).toBe(false);
    const level = purlin(9, { from: [0, 9, 12], to: [79, 9, 12] });
    expect(restsOf([...BEAMS, level], []).size).toBe(0);
    expect(
      restsOf([...BEAMS, level], [column(0), column(26)])
        .get('PU9')!
        .map(({ on }) => on),
    ).toEqual(['B1', 'B2']);
  });

  test('far under it, far off, too low a column and one alongside carry nothing', () => {
    const rests = (members: readonly Member[], columns: readonly Column[] = []) => restsOf(members, columns);
    expect(rests([{ ...beam(26, 'B2'), from: [26, -18, 8], to: [26, 18, 8] }, purlin(9)]).size).toBe(0);
    expect(rests([beam(26, 'B2'), purlin(25)]).size).toBe(0);
    expect(rests([purlin(9)], [{ ...column(26, 9), height: 8 }]).size).toBe(0);
    expect(rests([purlin(9), { ...purlin(9.2), id: 'X', from: [0, 9.2, 12], to: [79, 9.2, 12] }]).size).toBe(0);
  });
});

describe('a member over several rests', () => {
  const hung = (pounds: number, at: number) => ({
    member: 'PU9',
    pounds,
    points: [{ at: [at, 9, 12.5] as const, pounds, of: ['D1'], made: { box: pounds } }],
    runs: [],
  });

  test('a load in one span is carried by the beams beside it: 100 lb 13 ft into 26 ft', () => {
    const rests = restsOf(
      [...BEAMS, purlin(9)],
      [0, 26, 53, 79].map((x) => column(x)),
    );
    const statics = memberStatics(purlin(9), hung(100, 13), rests.get('PU9')!);
    expect(statics.rests.map(({ on, pounds }) => [on, pounds])).toEqual([
      ['B1', 50],
      ['B2', 50],
      ['B3', 0],
      ['B4', 0],
    ]);
    // P L / 4; as one span of 79 ft it would be 100 x 66 x 13 / 79 = 1086.
    expect(statics.moment).toBeCloseTo(650, 9);
    expect(statics.at).toBeCloseTo(13, 9);
  });

  test('a beam on one column stands out to both sides', () => {
    const own = { ...hung(100, 0), points: [{ ...hung(100, 0).points[0]!, at: [0, -18, 12] as const }] };
    const statics = memberStatics(beam(0, 'B1'), own, [{ at: 18, on: 'C0', kind: 'column' }]);
    expect(statics).toEqual({ rests: [{ at: 18, on: 'C0', pounds: 100 }], moment: 1800, at: 18 });
  });

  test('one rest near an end, or a crossing in mid-length, leaves the ends where they rest', () => {
    const place = (at: number, kind: 'column' | 'member') =>
      memberStatics(purlin(9), hung(79, 40), [{ at, on: 'X', kind }]).rests.map((rest) => rest.at);
    expect(place(2, 'column')).toEqual([2, 79]);
    expect(place(78, 'member')).toEqual([0, 78]);
    expect(place(40, 'member')).toEqual([0, 40, 79]);
    expect(memberStatics(purlin(9), hung(79, 40), []).rests.map(({ at, on }) => [at, on])).toEqual([
      [0, null],
      [79, null],
    ]);
  });

  test('an overhang by the handbook: uniform load on a span with one end out', () => {
    // Simple beam overhanging one support, AISC Manual Table 3-23: R1 = w (l2 - a2) / 2l, R2 = w (l + a)2 / 2l.
    const [l, a, w] = [20, 5, 6];
    const { reactions, moment } = spanChain(
      { length: l + a, inPlan: l + a },
      [0, l],
      [{ from: 0, to: l + a, poundsPerFoot: w }],
    );
    expect(reactions[0]).toBeCloseTo((w * (l * l - a * a)) / (2 * l), 9);
    expect(reactions[1]).toBeCloseTo((w * (l + a) ** 2) / (2 * l), 9);
    // M1 = w (l + a)2 (l - a)2 / 8 l2, sagging, is more than w a2 / 2 over the rest.
    expect(moment).toBeCloseTo((w * (l + a) ** 2 * (l - a) ** 2) / (8 * l * l), 9);
  });

  test('on any rests the reactions are the loads and turn nothing about the first end, and moments hold anywhere', () => {
    const load = fc.oneof(
      fc.record({ at: fc.double({ min: 0, max: 40, noNaN: true }), pounds: fc.integer({ min: 0, max: 200 }) }),
      fc
        .record({
          from: fc.double({ min: 0, max: 20, noNaN: true }),
          long: fc.double({ min: 0.1, max: 20, noNaN: true }),
          poundsPerFoot: fc.integer({ min: 0, max: 9 }),
        })
        .map(({ from, long, poundsPerFoot }) => ({ from, to: from + long, poundsPerFoot })),
    );
    const rests = fc
      .uniqueArray(fc.integer({ min: 0, max: 40 }), { minLength: 2, maxLength: 5 })
      .map((all) => all.sort((p, q) => p - q));
    fc.assert(
      fc.property(rests, fc.array(load, { minLength: 1, maxLength: 6 }), (places, loads) => {
        const { reactions, moment } = spanChain({ length: 40, inPlan: 40 }, places, loads);
        const all = loads.map(weigh);
        const total = all.reduce((sum, [pounds]) => sum + pounds, 0);
        expect(reactions.reduce((sum, pounds) => sum + pounds, 0)).toBeCloseTo(total, 6);
        const turning = all.reduce((sum, [pounds, at]) => sum + pounds * at, 0);
        expect(reactions.reduce((sum, pounds, i) => sum + pounds * places[i]!, 0)).toBeCloseTo(turning, 4);
        for (let at = 0; at <= 40; at += 0.5)
          expect(Math.abs(bending(at, places, reactions, loads))).toBeLessThanOrEqual(moment + 1e-6 * (1 + total));
      }),
    );
  });

  test('two rests at the ends are a simple span', () => {
    const loads = [
      { at: 4, pounds: 100 },
      { from: 2, to: 9, poundsPerFoot: 3 },
    ];
    const { reactions, moment, at } = spanChain({ length: 10, inPlan: 10 }, [0, 10], loads);
    const simple = simpleSpan({ length: 10, inPlan: 10 }, loads);
    expect([...reactions]).toEqual([...simple.reactions]);
    expect([moment, at]).toEqual([simple.moment, simple.at]);
  });
});

const weigh = (load: SpanLoad): readonly [number, number] =>
  'at' in load ? [load.pounds, load.at] : [load.poundsPerFoot * (load.to - load.from), (load.from + load.to) / 2];

/** Moment at a place, by all forces to the left of it. */
function bending(at: number, places: readonly number[], reactions: readonly number[], loads: readonly SpanLoad[]) {
  let moment = 0;
  places.forEach((place, i) => {
    if (place < at) moment += reactions[i]! * (at - place);
  });
  for (const load of loads) {
    if ('at' in load) moment -= load.at < at ? load.pounds * (at - load.at) : 0;
    else {
      const to = Math.min(at, load.to);
      if (to > load.from) moment -= load.poundsPerFoot * (to - load.from) * (at - (load.from + to) / 2);
    }
  }
  return moment;
}
