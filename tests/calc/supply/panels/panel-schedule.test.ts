import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { panelSchedules } from '../../../../calc/supply/panels/panel-schedule.ts';
import { spacesFor } from '../../../../calc/supply/panels/panel-spaces.ts';
import { LINES } from '../../../../routing/site/schema/vocabulary.ts';
import { chargers, feeder, load, panel, siteOf, source } from '../small-site.ts';

/** Line of a space: rows of two spaces run A, B, C from the top. */
const lineOf = (space: number): string => 'ABC'[Math.floor((space - 1) / 2) % 3]!;

describe('panel schedules', () => {
  test('two-pole breakers down one side lie across AB, CA, BC', () => {
    expect(spacesFor(['AB', 'AB', 'CA', 'CA', 'BC', 'BC'], 'ABC', 12)).toEqual([
      [1, 3],
      [2, 4],
      [5, 7],
      [6, 8],
      [9, 11],
      [10, 12],
    ]);
  });

  test('every breaker has as many spaces as poles, on its own lines, on one side, and none twice', () => {
    fc.assert(
      fc.property(fc.array(fc.constantFrom(...LINES), { maxLength: 40 }), fc.option(fc.nat(84)), (breakers, spaces) => {
        const placed = spacesFor(breakers, 'ABC', spaces ?? undefined);
        const used = placed.flat();
        expect(new Set(used).size).toBe(used.length);
        placed.forEach((at, i) => {
          if (at.length === 0) {
            expect(spaces).not.toBeNull();
            return;
          }
          const lines = breakers[i]!;
          expect(at).toHaveLength(lines.length);
          expect([...at].map(lineOf).sort().join('')).toBe([...lines].sort().join(''));
          for (let pole = 1; pole < at.length; pole++) expect(at[pole]! - at[pole - 1]!).toBe(2);
          if (spaces !== null) expect(Math.max(...at)).toBeLessThanOrEqual(spaces);
        });
      }),
    );
  });

  test('two lines of a single-phase panel alternate', () => {
    expect(spacesFor(['A', 'B', 'AB'], 'AB', 4)).toEqual([[2], [4], [1, 3]]);
    expect(spacesFor(['A', 'B', 'AB', 'A'], 'AB', 4)).toEqual([[2], [4], [1, 3], []]);
  });

  test('outgoing feeders, chargers and loads each have their breaker', () => {
    const site = siteOf({
      equipment: [source(208), panel('P', { spaces: 30 }), panel('Q')],
      feeders: [feeder('SVC', 'P'), feeder('P', 'Q')],
      chargers: chargers('P', 3),
      loads: [load('P', 'L')],
    });
    const schedule = panelSchedules(site).get('P')!;
    expect(schedule.poles).toBe(3 + 3 * 2 + 1);
    expect(schedule.circuits.map(({ id, serves }) => [id, serves])).toContainEqual(['F-Q', 'feeder']);
    expect(schedule.circuits[0]).toMatchObject({ id: 'F-Q', spaces: [1, 3, 5] });
    expect(panelSchedules(site).get('SVC')).toBeUndefined();
    expect(panelSchedules(site).get('Q')!.circuits).toEqual([]);
  });
});
