import fc from 'fast-check';
import loadHighs from 'highs';
import { describe, expect, test } from 'vitest';
import { type Choice, leastOfEach } from '../../../../calc/propose/volts/least-of-each.ts';
import '../../../seed.ts';

const sum = (taken: readonly Choice[], of: keyof Choice): number => taken.reduce((all, one) => all + one[of], 0);
const choices = (most: number) =>
  fc.array(fc.record({ percent: fc.integer({ min: 0, max: 40 }), dollars: fc.integer({ min: 0, max: 100 }) }), {
    minLength: 1,
    maxLength: most,
  });

/** The least dollars of all ways to take one of each that lose no more than so much; null where there are none. */
function ofAll(parts: readonly (readonly Choice[])[], most: number): number | null {
  const all = parts.reduce<readonly (readonly Choice[])[]>(
    (taken, list) => taken.flatMap((one) => list.map((each) => [...one, each])),
    [[]],
  );
  const within = all.filter((taken) => sum(taken, 'percent') <= most).map((taken) => sum(taken, 'dollars'));
  return within.length === 0 ? null : Math.min(...within);
}

/** The same by an integer program. */
function asProgram(parts: readonly (readonly Choice[])[], most: number): string {
  const named = parts.map((list, i) => list.map((one, j) => ({ ...one, name: `x${i}_${j}` })));
  const terms = (of: keyof Choice): string =>
    named.flatMap((list) => list.map((one) => `${one[of]} ${one.name}`)).join(' + ');
  const rows = named.map((list, i) => ` one${i}: ${list.map(({ name }) => name).join(' + ')} = 1`);
  const names = named.flatMap((list) => list.map(({ name }) => name)).join(' ');
  return `Minimize\n obj: ${terms('dollars')}\nSubject To\n drop: ${terms('percent')} <= ${most}\n${rows.join('\n')}\nBinary\n ${names}\nEnd\n`;
}

/** A chain of feeders as they are: each choice of larger conductors loses less and costs more, in steps of its own. */
function chainOf(seed: number, parts: number, each: number): readonly (readonly Choice[])[] {
  let state = seed;
  const next = (): number => {
    state = (Math.imul(state, 1_103_515_245) + 12_345) & 0x7fffffff;
    return state / 0x7fffffff;
  };
  return Array.from({ length: parts }, () => {
    const [loss, price] = [0.5 + 2 * next(), 500 + 9000 * next()];
    return Array.from({ length: each }, (_, i): Choice => {
      const larger = 1 + (i * (0.8 + 0.4 * next())) / 4;
      return { percent: loss / larger, dollars: i === 0 ? 0 : Math.round(price * (larger - 1)) };
    });
  });
}

describe('of one choice each the cheapest that loses no more than so much', () => {
  test('is that of looking at all', () => {
    fc.assert(
      fc.property(
        fc.array(choices(5), { minLength: 1, maxLength: 5 }),
        fc.integer({ min: 0, max: 150 }),
        (parts, most) => {
          const found = leastOfEach(parts, most);
          expect(found === null ? null : sum(found, 'dollars')).toBe(ofAll(parts, most));
          if (found !== null) expect(sum(found, 'percent')).toBeLessThanOrEqual(most);
          for (const [i, one] of (found ?? []).entries()) expect(parts[i]).toContain(one);
        },
      ),
      { numRuns: 200 },
    );
  });

  test('is that of an integer program along chains of six feeders with sixteen choices each', async () => {
    const highs = await loadHighs();
    for (const seed of [1, 2]) {
      const parts = chainOf(seed, 6, 16);
      const most =
        0.45 *
        sum(
          parts.map(([first]) => first!),
          'percent',
        );
      const found = leastOfEach(parts, most)!;
      const solved = highs.solve(asProgram(parts, most), { mip_rel_gap: 0, mip_abs_gap: 0 });
      expect(solved.Status).toBe('Optimal');
      expect(sum(found, 'percent')).toBeLessThanOrEqual(most + 1e-9);
      expect(sum(found, 'dollars')).toBeCloseTo(solved.ObjectiveValue, 4);
    }
  });

  test('where no more sums may be looked at, is one that does all the same', () => {
    let dearer = 0;
    for (const seed of [1, 2, 3, 4, 5, 6, 7, 8]) {
      const parts = chainOf(seed, 6, 40);
      const most =
        0.45 *
        sum(
          parts.map(([first]) => first!),
          'percent',
        );
      const [short, whole] = [leastOfEach(parts, most, 60)!, leastOfEach(parts, most)!];
      expect(short).toHaveLength(6);
      expect(sum(short, 'percent')).toBeLessThanOrEqual(most + 1e-9);
      expect(sum(short, 'dollars')).toBeGreaterThanOrEqual(sum(whole, 'dollars') - 1e-6);
      expect(sum(short, 'dollars')).toBeLessThan(1.25 * sum(whole, 'dollars'));
      if (sum(short, 'dollars') > sum(whole, 'dollars') + 1e-6) dearer++;
    }
    // So few are too few here: the count does stop it.
    expect(dearer).toBeGreaterThan(0);
    expect(leastOfEach([[{ percent: 3, dollars: 0 }]], 2, 0)).toBeNull();
  });
});
