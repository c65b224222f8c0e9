import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { INVENTED_LIST } from '../../../calc/prices/invented-list.ts';
import { atFullRate, dealtLine } from '../../../calc/study/at-full-rate.ts';
import { baseOf, withoutBoards } from '../../../calc/study/base.ts';
import { hoursADay } from '../../../calc/study/closed.ts';
import { FIGURE_NAMES, FIGURES, type WayFigures } from '../../../calc/study/figures.ts';
import { forcing } from '../../../calc/study/forced.ts';
import { beats, unbeatenOf } from '../../../calc/study/unbeaten.ts';
import type { Finding } from '../../../routing/site/rules/finding.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import '../../seed.ts';
import { chargers, feeder, panel, siteOf, source } from '../supply/small-site.ts';
import { hall } from './hall.ts';

const figures = fc.record(
  Object.fromEntries(FIGURE_NAMES.map((name) => [name, fc.option(fc.integer({ min: 0, max: 3 }))])),
) as unknown as fc.Arbitrary<WayFigures>;

describe('ways that nothing beats', () => {
  test('are those for which no other is as good on all counts and better on one', () => {
    fc.assert(
      fc.property(fc.array(figures, { minLength: 1, maxLength: 12 }), (all) => {
        const ways = all.map((one, i) => ({ id: String(i), figures: one }));
        const best = unbeatenOf(ways);
        expect(best.size).toBeGreaterThan(0);
        // Told by the definition, from the table of what is better alone.
        const worth = (one: WayFigures) =>
          FIGURE_NAMES.map((name) => (one[name] ?? Number.NaN) * (FIGURES[name].better === 'more' ? 1 : -1)).map((v) =>
            Number.isNaN(v) ? -1e9 : v,
          );
        for (const { id, figures: own } of ways) {
          const beaten = all.some((other) => {
            const [a, b] = [worth(other), worth(own)];
            return a.every((v, i) => v >= b[i]!) && a.some((v, i) => v > b[i]!);
          });
          expect(best.has(id)).toBe(!beaten);
        }
      }),
    );
  });

  test('none beats itself, and beating has one direction', () => {
    fc.assert(
      fc.property(figures, figures, (a, b) => {
        expect(beats(a, a)).toBe(false);
        expect(beats(a, b) && beats(b, a)).toBe(false);
      }),
    );
  });
});

describe('chargers at full rate at once', () => {
  // 32 A across two lines of a three-phase board: nine make 3 on each pair, 3 x 32 x sqrt 3 = 166.3 A a line; ten 194.6 A.
  test('are as many as the ceiling carries', () => {
    const ten = Array.from({ length: 10 }, () => ({ amps: 32, phases: 1 as const }));
    expect(dealtLine(ten.slice(1), 3)).toBeCloseTo(3 * 32 * Math.sqrt(3), 9);
    expect(dealtLine(ten, 3)).toBeCloseTo(32 * Math.sqrt(4 * 4 + 3 * 3 + 4 * 3), 9);
    expect(dealtLine(ten, 1)).toBe(320);
    const lot = (managedAmps?: number) =>
      siteOf({
        equipment: [source(208), panel('P1', managedAmps === undefined ? {} : { managedAmps })],
        feeders: [feeder('SVC', 'P1')],
        chargers: chargers('P1', 16),
      });
    expect([lot(), lot(180), lot(306), lot(30)].map(atFullRate)).toEqual([16, 9, 16, 0]);
  });

  test('of nested ceilings the tighter one decides', () => {
    const site = siteOf({
      equipment: [source(208), panel('P1', { managedAmps: 180 }), panel('P2', { managedAmps: 60 })],
      feeders: [feeder('SVC', 'P1'), feeder('P1', 'P2')],
      chargers: [...chargers('P1', 4), ...chargers('P2', 6)],
    });
    // P2 carries three, one on each pair (32 x sqrt 3 = 55.4 A; a fourth makes 84.7 A); with the four of P1 they are seven.
    expect(atFullRate(site)).toBe(7);
  });
});

describe('what a study begins with', () => {
  test('is the lot without what is drawn of the job, for the stalls that it serves', () => {
    const drawn = {
      ...hall(),
      drops: [{ id: 'D1', box: [9, 9, 11] as [number, number, number], cord: 25 }],
      chargers: [{ id: 'EV1', drop: 'D1', stalls: ['S02'], from: 'P1', amps: 40, volts: 208, phases: 1 as const }],
      raceways: [
        {
          id: 'R1',
          path: [[-8, 0, 11] as const, [9, 0, 11] as const, [9, 9, 11] as const].map((at): [number, number, number] => [
            ...at,
          ]),
          method: 'EMT' as const,
          place: 'overhead' as const,
        },
        {
          id: 'R2',
          path: [
            [-60, 30, -2],
            [-80, 30, -2],
          ] as [number, number, number][],
          method: 'PVC40' as const,
          place: 'underground' as const,
        },
      ],
      asBuilt: { D1: { note: 'checked' } },
    };
    const base = baseOf(drawn);
    expect([base.isDrawn, base.amps, [...base.wanted]]).toEqual([true, 40, ['S02']]);
    expect([base.file.drops, base.file.chargers, base.file.asBuilt]).toEqual([undefined, undefined, undefined]);
    expect(base.file.raceways?.map(({ id }) => id)).toEqual(['R2']);
    expect(base.file.equipment).toEqual(drawn.equipment);
    expect(baseOf(hall())).toMatchObject({ isDrawn: false, amps: 32, wanted: { size: 16 } });
  });

  test('keeps the loads of boards that go, for those that come', () => {
    const lit = {
      ...hall(),
      loads: [
        { id: 'L1', from: 'P1', name: 'Lighting', volts: 120, phases: 1 as const, va: 600, continuous: true },
        { id: 'L2', from: 'SE1', name: 'Sign', volts: 120, phases: 1 as const, va: 200, continuous: true },
      ],
    };
    const cleared = withoutBoards(baseOf(lit))!;
    expect(cleared.file.equipment?.map(({ id }) => id)).toEqual(['U1', 'SE1']);
    expect([cleared.file.loads, cleared.loads].map((loads) => loads?.map(({ id }) => id))).toEqual([['L2'], ['L1']]);
  });
});

describe('a failing finding is forced', () => {
  const site = toSite(hall());
  const finding = (about: string[], rule: Finding['rule'] = 'stalls-overlap'): Finding => ({
    severity: 'fail',
    rule,
    about,
    says: '',
    source: '',
  });
  test('where it is of the lot alone, or there before any way', () => {
    expect(forcing(site)(finding(['S01', 'C1']))?.by).toContain('stalls');
    const twice = toSite({ ...hall(), stalls: [...hall().stalls!, { ...hall().stalls![0]!, id: 'TWIN' }] });
    expect(forcing(twice)(finding(['S01', 'TWIN']))?.by).toContain('as it stands');
  });
  test('not where it is of what a way brings or loads', () => {
    expect(forcing(site)(finding(['F1', 'P1'], 'feeder-overload'))).toBeNull();
    expect(forcing(site)(finding(['S01', 'D01']))).toBeNull();
  });
});

test('a day of the crew is its hands for eight hours, or the hands of a lift', () => {
  const crew = [
    { trade: 'electrician', wage: 50, count: 2 },
    { trade: 'helper', wage: 30, count: 1 },
  ];
  const { crew: _, ...without } = INVENTED_LIST;
  expect([hoursADay({ ...INVENTED_LIST, crew }), hoursADay(without)]).toEqual([24, 16]);
});
