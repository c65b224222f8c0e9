import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { steelOver, turnBetween } from '../../../routing/network/hang-under.ts';
import { type CanopyShape, canopyBays } from '../../../routing/propose/rows/canopy-bays.ts';
import { CANOPY_FORMS } from '../../../routing/propose/rows/canopy-slope.ts';
import type { Member, Point2 } from '../../../routing/site/site.ts';

const RAFTER: Member = { id: 'B1', from: [0, -12, 10], to: [0, 12, 14] };

const SHAPE: CanopyShape = {
  spacing: 20,
  columnLines: 1,
  lineGap: 18,
  overhang: 16,
  endOverhang: 3,
  columnSize: 1,
  form: 'one slope',
  tilt: 6,
  rises: 'left',
  levelAt: 'columns',
  beamElevation: 14,
  purlinsAbove: 0.5,
  purlinSpacing: 5,
  side: 'left',
};

const membersOf = (shape: CanopyShape): Member[] => {
  const { beams, purlins } = canopyBays([3, 4], [43, 4], 2, shape);
  return [
    ...beams.map((line, i) => ({ ...line, id: `B${i}` })),
    ...purlins.map((line, i) => ({ ...line, id: `P${i}` })),
  ];
};

describe('the steel over a place', () => {
  test('of a sloping member lies between its ends as the place does (2 in 12: 4 ft up over 24)', () => {
    expect(steelOver([RAFTER], RAFTER, [0, -12])).toBe(10);
    expect(steelOver([RAFTER], RAFTER, [0, 0])).toBe(12);
    expect(steelOver([RAFTER], RAFTER, [0, 6])).toBe(13);
    expect(steelOver([RAFTER], RAFTER, [0.03, 12.04])).toBe(14);
  });

  test('is none beside a member or past its end', () => {
    expect(steelOver([RAFTER], RAFTER, [0.2, 0])).toBeNull();
    expect(steelOver([RAFTER], RAFTER, [0, 12.2])).toBeNull();
    const post: Member = { id: 'M', from: [0, 0, 0], to: [0, 0, 10] };
    expect(steelOver([post], post, [0, 0])).toBeNull();
  });

  test('of a member aslant is told square to it, to 0.05 ft', () => {
    // 3, 4, 5: along (0.6, 0.8), square to it (-0.8, 0.6). 10 ft up over 50.
    const aslant: Member = { id: 'M', from: [2, 1, 10], to: [32, 41, 20] };
    const at = (along: number, aside: number): Point2 => [2 + 0.6 * along - 0.8 * aside, 1 + 0.8 * along + 0.6 * aside];
    for (const along of [0, 10, 37.5, 50]) {
      expect(steelOver([aslant], aslant, at(along, 0))!).toBeCloseTo(10 + along / 5, 9);
      expect(steelOver([aslant], aslant, at(along, 0.04))!).toBeCloseTo(10 + along / 5, 9);
      expect(steelOver([aslant], aslant, at(along, -0.04))!).toBeCloseTo(10 + along / 5, 9);
      expect(steelOver([aslant], aslant, at(along, 0.06))).toBeNull();
      expect(steelOver([aslant], aslant, at(along, -0.06))).toBeNull();
    }
    expect(steelOver([aslant], aslant, at(-0.06, 0))).toBeNull();
    expect(steelOver([aslant], aslant, at(50.06, 0))).toBeNull();
  });

  test('along a purlin is that of the beams that it lies on', () => {
    const purlin: Member = { id: 'PU1', from: [-10, 6, 13.5], to: [10, 6, 13.5] };
    expect(steelOver([RAFTER, purlin], purlin, [-7, 6])).toBe(13);
    // Along the beam the purlin over it is not in the way.
    expect(steelOver([RAFTER, purlin], RAFTER, [0, 6])).toBe(13);
  });

  test('is not that of another canopy far below', () => {
    const low: Member = { id: 'M', from: [-10, 6, 9], to: [10, 6, 9] };
    expect(steelOver([RAFTER, low], RAFTER, [0, 6])).toBe(13);
  });

  test('is one and the same along beams and along purlins, of a canopy of any form', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...CANOPY_FORMS),
        fc.integer({ min: 0, max: 24 }),
        fc.constantFrom(0.25, 0.5, 1),
        (form, tilt, purlinsAbove) => {
          const members = membersOf({ ...SHAPE, form, tilt, purlinsAbove });
          const beams = members.filter(({ id }) => id.startsWith('B'));
          for (const purlin of members.filter(({ id }) => id.startsWith('P'))) {
            const place: Point2 = [23, purlin.from[1]];
            const along = steelOver(members, purlin, place);
            const across = beams.map((beam) => steelOver(members, beam, place)).filter((z) => z !== null);
            expect(along).toBeCloseTo(Math.min(...across), 6);
          }
        },
      ),
    );
  });
});

describe('where the steel turns', () => {
  const [left, right] = [
    { id: 'B1', from: [0, -10, 13], to: [0, 0, 12] },
    { id: 'B2', from: [0, 0, 12], to: [0, 10, 13] },
  ] as const satisfies readonly Member[];

  test('is the middle of a valley, where a straight line passes it', () => {
    expect(turnBetween(left, right, [0, -6], [0, 7])).toEqual([0, 0]);
    expect(turnBetween(right, left, [0, 7], [0, -6])).toEqual([0, 0]);
  });

  test('is not between places that the line passes aside, or that lie at the turn itself', () => {
    expect(turnBetween(left, right, [0, -6], [5, 7])).toBeNull();
    expect(turnBetween(left, right, [0, -6], [0, 0])).toBeNull();
    expect(turnBetween(left, RAFTER, [0, -6], [0, 7])).toBeNull();
  });
});
