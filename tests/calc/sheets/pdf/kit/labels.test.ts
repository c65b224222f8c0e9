import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Area, isWithinArea } from '../../../../../calc/sheets/pdf/kit/area.ts';
import {
  areasOf,
  bestPlace,
  type LabelGround,
  type LabelSize,
  type LabelWish,
} from '../../../../../calc/sheets/pdf/kit/labels/best-label-place.ts';
import { freeSpace } from '../../../../../calc/sheets/pdf/kit/labels/free-space.ts';
import { placesAlong, placesAround } from '../../../../../calc/sheets/pdf/kit/labels/label-places.ts';
import { writeLabels, writeMostOrNone } from '../../../../../calc/sheets/pdf/kit/labels/labels.ts';
import { penWith } from '../../../../../calc/sheets/pdf/kit/pen.ts';
import type { Point2 } from '../../../../../routing/site/site.ts';
import { overlap } from './overlap.ts';
import { plainLettering } from './plain-lettering.ts';

const room: Area = { x: 0, y: 0, width: 400, height: 300 };

/** A ground that remembers what was taken of it. */
function watchedGround(): { readonly ground: LabelGround; readonly taken: Area[] } {
  const hard = freeSpace();
  const taken: Area[] = [];
  const take = (area: Area): void => {
    taken.push(area);
    hard.take(area);
  };
  return { ground: { hard: { ...hard, take }, heavy: freeSpace(), thin: freeSpace() }, taken };
}

const wishAt = (at: Point2, text: string, far = true): LabelWish => ({
  layer: 'dropNumbers',
  lines: [
    { text, weight: 'bold' },
    { text: 'P1-1,3', dots: ['#000000', '#c4201d'] },
  ],
  size: 'small',
  colour: '#000000',
  places: (size) => placesAround(at, 8, size, far),
});

describe('labels', () => {
  test('no two lie over one another, and all lie in the room', () => {
    const point = fc.tuple(fc.double({ min: 0, max: 400, noNaN: true }), fc.double({ min: 0, max: 300, noNaN: true }));
    fc.assert(
      fc.property(fc.array(point, { maxLength: 60 }), (points) => {
        const { ground, taken } = watchedGround();
        const wishes = points.map((at, i) => wishAt(at, `D${i}`));
        const left = writeLabels(penWith(plainLettering()), room, ground, wishes);
        expect(taken.length).toBe(wishes.length - left.length);
        taken.forEach((area, i) => {
          expect(isWithinArea(area, room)).toBe(true);
          for (const other of taken.slice(i + 1)) expect(overlap(area, other)).toBe(false);
        });
      }),
      { numRuns: 60 },
    );
  });
  test('who stops asking for places once a better one is found finds the same as who asks for all', () => {
    const coordinate = fc.double({ min: 0, max: 300, noNaN: true });
    const area = fc.record({
      x: coordinate,
      y: coordinate,
      width: fc.double({ min: 1, max: 60, noNaN: true }),
      height: fc.double({ min: 1, max: 60, noNaN: true }),
    });
    fc.assert(
      fc.property(fc.array(area, { maxLength: 25 }), fc.array(area, { maxLength: 25 }), (hard, thin) => {
        const ground: LabelGround = { hard: freeSpace(), heavy: freeSpace(), thin: freeSpace() };
        for (const one of hard) ground.hard.take(one);
        for (const one of thin) ground.thin.take(one);
        const size = { width: 30, height: 8 };
        const all = { places: () => placesAround([150, 150], 8, size, true) };
        const some = { places: (asked: LabelSize) => placesAround([150, 150], 8, asked, true) };
        const cheapest = [...all.places()]
          .filter((place) => bestPlace({ places: () => [place] }, size, room, ground) !== undefined)
          .map((place) => ({ place, over: areasOf(size, place).every(ground.thin.isFree) ? 0 : 1.5 }))
          .sort((a, b) => a.place.cost! + a.over - b.place.cost! - b.over)[0]?.place;
        expect(bestPlace(some, size, room, ground)).toEqual(bestPlace(all, size, room, ground));
        expect(bestPlace(some, size, room, ground)).toEqual(cheapest);
      }),
      { numRuns: 60 },
    );
  });
  test('a label keeps off a raceway where there is another place', () => {
    const { ground, taken } = watchedGround();
    const raceway: Area = { x: 200, y: 148, width: 120, height: 4 };
    ground.heavy.take(raceway);
    writeLabels(penWith(plainLettering()), room, ground, [wishAt([200, 150], 'D01')]);
    expect(taken).toHaveLength(1);
    expect(overlap(taken[0]!, raceway)).toBe(false);
  });
  test('where too few of a kind find a good place, none is written', () => {
    const crowd = Array.from({ length: 40 }, (_, i) =>
      wishAt([200 + (i % 8) * 3, 150 + Math.floor(i / 8) * 3], `D${i}`, false),
    );
    const { ground, taken } = watchedGround();
    const pen = penWith(plainLettering());
    expect(writeMostOrNone(pen, room, ground, crowd, 0.85)).toHaveLength(40);
    expect(taken).toEqual([]);
    expect(pen.content()).not.toContain('Tj');
    expect(writeMostOrNone(pen, room, ground, [wishAt([60, 60], 'D1'), wishAt([200, 200], 'D2')], 0.85)).toEqual([]);
    expect(pen.content().match(/Tj/g)).toHaveLength(4);
  });
  test('along a line it is read from below or from the right, whichever way the line is drawn', () => {
    for (let degrees = 0; degrees < 360; degrees += 15) {
      const angle = (degrees * Math.PI) / 180;
      const to: Point2 = [200 * Math.cos(angle), 200 * Math.sin(angle)];
      for (const { turn } of placesAlong([0, 0], to, 3, { width: 30, height: 6 })) {
        expect(turn).toBeGreaterThan(-90);
        expect(turn).toBeLessThanOrEqual(90);
      }
    }
  });
});
