import fc from 'fast-check';
import { expect, test } from 'vitest';
import { labelThatFits, patchOf, type StripPlace, stripLabels } from '../../../web/strip/strip-labels.ts';
import type { StripLeg, Unrolled, UnrolledPoint } from '../../../web/strip/unrolled.ts';

/** Ten pixels to a foot both ways, elevation 0 at 140. */
const PLACE: StripPlace = {
  x: (along) => 64 + along * 10,
  y: (up) => 140 - up * 10,
  width: 900,
  words: (length) => `${Math.round(length)}' 0"`,
};

function flatOf(points: readonly UnrolledPoint[], pulls: readonly (readonly [string, UnrolledPoint])[] = []): Unrolled {
  const legs = points.slice(1).map((to, i): StripLeg => {
    const from = points[i]!;
    const kind = to.along === from.along ? 'riser' : to.up === from.up ? 'level' : 'slope';
    return { kind, from, to, length: Math.hypot(to.along - from.along, to.up - from.up), raceway: 'R1' };
  });
  return {
    points,
    legs,
    bends: [],
    pullpoints: pulls.map(([id, at]) => ({ id, at })),
    conduits: [],
    along: points.at(-1)!.along,
    low: Math.min(...points.map(({ up }) => up)),
    high: Math.max(...points.map(({ up }) => up)),
  };
}

const at = (along: number, up: number): UnrolledPoint => ({ along, up });

test('a riser and the leg after it are told by their lengths, the leg with its elevation', () => {
  const labels = stripLabels(flatOf([at(0, 6), at(0, 11), at(40, 11)]), PLACE, []);
  expect(labels.map(({ words }) => words)).toEqual([`40' 0" at 11' 0"`, `riser 5' 0"`]);
});

test('a leg shorter than its words is left out', () => {
  const labels = stripLabels(flatOf([at(0, 11), at(4, 11)]), PLACE, []);
  expect(labels).toEqual([]);
});

test('a length moves along its leg where the name of a pull point stands in the middle', () => {
  const plain = stripLabels(flatOf([at(0, 11), at(60, 11)]), PLACE, [])[0]!;
  const labels = stripLabels(flatOf([at(0, 11), at(60, 11)], [['PB1', at(30, 11)]]), PLACE, []);
  expect(labels.map(({ words }) => words)).toEqual(['PB1', plain.words]);
  expect(labels[1]!.x).not.toBe(plain.x);
});

test('what is lettered there already is left free, and where all is taken nothing is said', () => {
  const everywhere = { left: 0, right: 900, top: 0, bottom: 200 };
  expect(stripLabels(flatOf([at(0, 6), at(0, 11), at(40, 11)]), PLACE, [everywhere])).toEqual([]);
});

test('however a run goes, no label lies over another, over a raceway or over the edge', () => {
  const step = fc.record({ along: fc.integer({ min: 0, max: 30 }), up: fc.integer({ min: -6, max: 6 }) });
  const pulls = fc.array(fc.nat(12), { maxLength: 4 });
  fc.assert(
    fc.property(fc.array(step, { minLength: 1, maxLength: 12 }), pulls, (steps, where) => {
      const points = [at(0, 7)];
      for (const { along, up } of steps) {
        const last = points.at(-1)!;
        // Level or upright, as raceways are.
        if (along > 0) points.push(at(last.along + along, last.up));
        if (up !== 0) points.push(at(points.at(-1)!.along, Math.min(13, Math.max(0, last.up + up))));
      }
      if (points.length < 2) return;
      const flat = flatOf(
        points,
        where.map((i, n) => [`PB${n + 1}`, points[i % points.length]!] as const),
      );
      const patches = stripLabels(flat, PLACE, []).map(({ words, x, y, anchor }) => patchOf(words, x, y, anchor));
      for (const [i, a] of patches.entries()) {
        expect(a.left).toBeGreaterThanOrEqual(0);
        expect(a.right).toBeLessThanOrEqual(PLACE.width);
        for (const b of patches.slice(i + 1))
          expect(a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom).toBe(false);
        for (const { from, to } of flat.legs) {
          const across = Math.max(PLACE.x(from.along), a.left) <= Math.min(PLACE.x(to.along), a.right);
          const high = Math.min(PLACE.y(from.up), PLACE.y(to.up));
          const low = Math.max(PLACE.y(from.up), PLACE.y(to.up));
          expect(across && Math.max(high, a.top) <= Math.min(low, a.bottom)).toBe(false);
        }
      }
    }),
  );
});

test('of several ways to say a thing the longest that has room is taken', () => {
  expect(labelThatFits(['1" EMT, 3 circuits', '1" EMT', '1"'], 200)).toBe('1" EMT, 3 circuits');
  expect(labelThatFits(['1" EMT, 3 circuits', '1" EMT', '1"'], 60)).toBe('1" EMT');
  expect(labelThatFits(['1" EMT, 3 circuits', '1" EMT', '1"'], 5)).toBeNull();
});
