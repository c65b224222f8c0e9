import fc from 'fast-check';
import { expect, test } from 'vitest';
import { copied } from '../../../routing/kept/changed-places.ts';
import { guestsOf, keptHosts } from '../../../routing/plane/kept-hosts.ts';

interface Dot {
  readonly x: number;
}

const makeHosts = () =>
  keptHosts<Dot>(
    ({ x }) => ({ minX: x - 1, minY: 0, maxX: x + 1, maxY: 0 }),
    (a, b) => Math.abs(a.x - b.x) < 1,
    ({ x }) => [x],
    0,
  );

test('what is kept of who lies on whom is what is worked anew, after any moves', () => {
  const place = fc.integer({ min: 0, max: 30 }).map((n) => n / 2);
  const moves = fc.array(fc.tuple(fc.nat(), place), { maxLength: 25 });
  fc.assert(
    fc.property(fc.array(place, { minLength: 1, maxLength: 20 }), moves, (xs, steps) => {
      const hostsOf = makeHosts();
      let dots: readonly Dot[] = xs.map((x) => ({ x }));
      let told = hostsOf(dots);
      for (const [at, x] of steps) {
        const i = at % dots.length;
        const next = dots.slice();
        next[i] = { x };
        dots = copied(next, dots, [i]);
        const now = hostsOf(dots);
        const whole = makeHosts()(dots);
        expect([...now.of]).toEqual([...whole.of]);
        // Who follows `told` alone has missed nothing.
        if (now.told === told.told) expect([...guestsOf(now)]).toEqual([...guestsOf(told)]);
        told = now;
      }
    }),
  );
});

test('a list in which nothing lies on anything keeps its answer while one moves', () => {
  const hostsOf = makeHosts();
  const dots = Array.from({ length: 50 }, (_, i): Dot => ({ x: 3 * i }));
  const before = hostsOf(dots);
  const moved = dots.with(20, { x: 60.5 });
  expect(hostsOf(copied(moved, dots, [20])).of).toBe(before.of);
});

test('who must lie so far in another is found as well where only what lies so far in is looked at', () => {
  const INTO = 0.5;
  const deep = (a: Dot, b: Dot): boolean => 2 - Math.abs(a.x - b.x) > INTO;
  const hostsBy = (into: number) =>
    keptHosts<Dot>(
      ({ x }) => ({ minX: x - 1, minY: -1, maxX: x + 1, maxY: 1 }),
      deep,
      ({ x }) => [x],
      into,
    );
  const place = fc.integer({ min: 0, max: 40 }).map((n) => n / 4);
  fc.assert(
    fc.property(fc.array(place, { minLength: 1, maxLength: 20 }), (xs) => {
      const dots = xs.map((x) => ({ x }));
      expect(hostsBy(INTO)(dots).of).toEqual(hostsBy(0)(dots).of);
    }),
  );
});
