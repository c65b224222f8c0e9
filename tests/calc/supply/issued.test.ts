import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { keptSpaces } from '../../../calc/supply/panels/kept-spaces.ts';
import { panelSchedules } from '../../../calc/supply/panels/panel-schedule.ts';
import { spacesFor } from '../../../calc/supply/panels/panel-spaces.ts';
import { linesOfSpaces } from '../../../calc/supply/tree/issued-lines.ts';
import { linesOf } from '../../../calc/supply/tree/supply-lines.ts';
import { readSite } from '../../../routing/site/file/read.ts';
import { writeSite } from '../../../routing/site/file/write.ts';
import { LINES, type Lines } from '../../../routing/site/schema/vocabulary.ts';
import type { IssuedCircuit, Site } from '../../../routing/site/site.ts';
import { SMALL_LOT } from '../checks/faults/small-lot.ts';
import { chargers, feeder, load, panel, siteOf, source, supplied } from './small-site.ts';

const issue = (site: Site, circuits: Readonly<Record<string, IssuedCircuit>>): Site => ({
  ...site,
  issued: { circuits: new Map(Object.entries(circuits)), conduits: new Map(), boxes: new Map() },
});
const SIX = siteOf({
  equipment: [source(208), panel('P', { spaces: 30 }), panel('Q', { spaces: 30 })],
  feeders: [feeder('SVC', 'P'), feeder('SVC', 'Q')],
  chargers: chargers('P', 6),
  loads: [load('P', 'L')],
});
const placed = (site: Site, id = 'P'): Record<string, string> =>
  Object.fromEntries(
    panelSchedules(site)
      .get(id)!
      .circuits.map((circuit) => [circuit.id.replace('EV-P-', ''), `${circuit.lines} ${circuit.spaces.join(' ')}`]),
  );
const saysOf = (site: Site): string[] =>
  supplied(site)
    .findings.filter(({ rule }) => rule === 'issued')
    .map(({ says }) => says);

describe('circuits that were issued', () => {
  // Hand-worked: rows run A, B, C from the top, two spaces a row.
  test('spaces lie on the lines of their rows', () => {
    expect([[1, 3], [2, 4], [3, 5], [5, 7], [7], [8, 10, 12]].map((spaces) => linesOfSpaces(spaces, 'ABC'))).toEqual([
      'AB',
      'AB',
      'BC',
      'CA',
      'A',
      'ABC',
    ]);
    expect(
      [
        [1, 2],
        [3, 1],
        [1, 5],
      ].map((spaces) => linesOfSpaces(spaces, 'ABC')),
    ).toEqual([null, null, null]);
    expect([[1], [3], [5], [3, 5]].map((spaces) => linesOfSpaces(spaces, 'CA'))).toEqual(['C', 'A', 'C', 'CA']);
    expect(linesOfSpaces([1, 3, 5], 'AB')).toBeNull();
  });

  test('one that is moved to other spaces lies on their lines, and no other moves', () => {
    const before = placed(SIX);
    expect(before['1']).toBe('AB 1 3');
    const moved = issue(SIX, { 'EV-P-1': { panel: 'P', spaces: [21, 23] } });
    expect(linesOf(moved).chargers.get('EV-P-1')).toBe('BC');
    expect(placed(moved)).toEqual({ ...before, '1': 'BC 21 23' });
    expect(saysOf(moved)).toEqual([]);
  });

  test('lines alone may be issued: the circuit finds spaces on them', () => {
    const moved = placed(issue(SIX, { 'EV-P-1': { panel: 'P', phases: 'CA' } }));
    expect(moved['1']).toMatch(/^CA /);
    expect({ ...moved, '1': '' }).toEqual({ ...placed(SIX), '1': '' });
  });

  test('two that are issued in each other’s spaces change places', () => {
    const before = placed(SIX);
    const spacesOf = (id: string): number[] => before[id]!.split(' ').slice(1).map(Number);
    const swapped = placed(
      issue(SIX, {
        'EV-P-1': { panel: 'P', spaces: spacesOf('2') },
        'EV-P-2': { panel: 'P', spaces: spacesOf('1') },
      }),
    );
    expect(swapped).toEqual({ ...before, '1': before['2'], '2': before['1'] });
  });

  test('what is issued stays when chargers come', () => {
    const issued = { 'EV-P-3': { panel: 'P', spaces: [25, 27] } };
    const more = siteOf({ equipment: SIX.equipment, feeders: SIX.feeders, chargers: chargers('P', 9) });
    expect(placed(issue(more, issued))['3']).toBe(placed(issue(SIX, issued))['3']);
  });

  test('a load and an outgoing feeder are issued as chargers are', () => {
    const site = siteOf({
      equipment: [source(208), panel('P', { spaces: 42 }), panel('Q')],
      feeders: [feeder('SVC', 'P'), feeder('P', 'Q')],
      chargers: chargers('P', 3),
      loads: [load('P', 'L')],
    });
    const issued = issue(site, { L: { panel: 'P', spaces: [41] }, 'F-Q': { panel: 'P', spaces: [32, 34, 36] } });
    expect(placed(issued)).toMatchObject({ L: 'C 41', 'F-Q': 'ABC 32 34 36' });
    expect(saysOf(issued)).toEqual([]);
  });

  test.each<[string, IssuedCircuit, string]>([
    ['gone', { panel: 'P', spaces: [1, 3] }, 'it is no longer drawn'],
    ['EV-P-1', { panel: 'Q', spaces: [1, 3] }, 'it is fed from P'],
    ['EV-P-1', { panel: 'P', spaces: [1, 2] }, 'spaces 1, 2 do not lie one under another on one side'],
    ['EV-P-1', { panel: 'P', spaces: [31, 33] }, 'P has 30 spaces and none numbered 33'],
    ['EV-P-1', { panel: 'P', spaces: [1, 3, 5] }, 'it has 2 poles and was issued 3'],
    ['EV-P-1', { panel: 'P', phases: 'ABC' }, 'it cannot lie on ABC there'],
    ['EV-P-1', { panel: 'P', spaces: [1, 3], phases: 'BC' }, 'its spaces lie on AB and it was issued on BC'],
  ])('of %s issued as %o it is told why it was not kept', (id, circuit, why) => {
    const says = saysOf(issue(SIX, { [id]: circuit }));
    expect(says).toHaveLength(1);
    expect(says[0]).toContain(why);
  });

  test('of two that were issued the same spaces the first keeps them', () => {
    const both = { panel: 'P', spaces: [25, 27] } as const;
    const site = issue(SIX, { 'EV-P-5': both, 'EV-P-6': both });
    expect(saysOf(site)[0]).toContain('EV-P-6, issued in P, could not be kept: spaces 25, 27 are issued to EV-P-5');
  });

  test('the file keeps what was issued', () => {
    const issued = { circuits: { EV1: { panel: 'P1', spaces: [5, 7], phases: 'CA' } } };
    const text = writeSite(JSON.parse(JSON.stringify({ ...SMALL_LOT, issued })));
    const read = readSite(text);
    expect(read.ok && read.file.issued).toEqual(issued);
    expect(readSite(text.replace('"CA"', '"CB"')).ok).toBe(false);
  });

  test('whatever is issued, no space is taken twice and every breaker is on its own lines', () => {
    const own = fc.constantFrom<Lines>(...LINES);
    const spaces = fc.array(fc.integer({ min: 1, max: 44 }), { maxLength: 3 });
    fc.assert(
      fc.property(
        fc.array(fc.record({ lines: own, dealt: own, issued: spaces }), { maxLength: 25 }),
        fc.option(fc.nat(84)),
        (breakers, room) => {
          const lines = breakers.map((one) => one.lines);
          const dealt = breakers.map((one) => (one.dealt.length === one.lines.length ? one.dealt : one.lines));
          const issued = breakers.map((one) => one.issued);
          const kept = keptSpaces(lines, dealt, issued, 'ABC', room ?? undefined);
          expect(new Set(kept.flat()).size).toBe(kept.flat().length);
          kept.forEach((at, i) => {
            if (at.length > 0) expect(linesOfSpaces(at, 'ABC')).toBe(lines[i]);
            else expect(room).not.toBeNull();
            if (room !== null) expect(Math.max(0, ...at)).toBeLessThanOrEqual(room);
          });
          expect(
            keptSpaces(
              lines,
              lines,
              [...lines].map(() => []),
              'ABC',
              42,
            ),
          ).toEqual(spacesFor(lines, 'ABC', 42));
        },
      ),
    );
  });
});
