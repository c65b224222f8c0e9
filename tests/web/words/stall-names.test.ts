import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { printStalls, readStalls } from '../../../web/words/stall-names.ts';

const ROW = [
  { id: 'S01', label: '1' },
  { id: 'S02', label: '2' },
  { id: 'S03', label: '3' },
  { id: 'S09', label: '12' },
  { id: 'S10', label: 'EV 1' },
  { id: 'S11' },
  { id: 'S12', label: '7' },
  { id: 'S13', label: '7' },
];

describe('stalls are named', () => {
  test.each([
    ['1, 3', ['S01', 'S03']],
    ['3 1', ['S03', 'S01']],
    ['1-3', ['S01', 'S02', 'S03']],
    ['1 to 3; 12', ['S01', 'S02', 'S03', 'S09']],
    ['1–12', ['S01', 'S02', 'S03', 'S12', 'S09'].filter((id) => id !== 'S12')],
    ['EV 1', ['S10']],
    ['S11', ['S11']],
    ['S02, 2', ['S02']],
    ['S13', ['S13']],
    ['', []],
  ])('by %j', (text, ids) => {
    expect(readStalls(text, ROW)).toEqual({ ok: true, ids });
  });

  test.each([
    ['4', 'no stall 4'],
    ['1, four', 'no stall four'],
    ['1-9', 'no stall 1-9'],
    ['7', '7 is the number of 2 stalls: S12, S13'],
  ])('%j is refused, and the word that is wrong is told', (text, says) => {
    expect(readStalls(text, ROW)).toEqual({ ok: false, says });
  });

  test('as the board shows them: by id only where two share a number', () => {
    expect(printStalls(['S01', 'S10', 'S11', 'S13'], ROW)).toBe('1, EV 1, S11, S13');
  });
});

test('what is printed of any stalls is read as the same stalls', () => {
  // No label is another stall's id: that stall would be named by it.
  const label = fc.option(fc.constantFrom('1', '2', '10', 'A1', 'A 2', 'N-3'), { nil: undefined });
  const stalls = fc
    .uniqueArray(fc.constantFrom('S1', 'S2', 'S3', 'S4', 'x-1'), { minLength: 1 })
    .chain((ids) =>
      fc.tuple(...ids.map((id) => label.map((own) => ({ id, ...(own !== undefined && { label: own }) })))),
    );
  fc.assert(
    fc.property(stalls, fc.nat(), (list, seed) => {
      const ids = list.map(({ id }) => id).filter((_, i) => (seed >> i) % 2 === 0);
      const read = readStalls(printStalls(ids, list), list);
      expect(read).toEqual({ ok: true, ids });
    }),
  );
});
