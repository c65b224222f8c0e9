import { expect, test } from 'vitest';
import { steelParcels } from '../../../../routing/propose/equipment/steel-parcels.ts';
import type { Aisle, Member } from '../../../../routing/site/site.ts';

const beams: readonly Member[] = [0, 27, 54].map((x, i) => ({ id: `B${i}`, from: [x, -18, 13], to: [x, 18, 13] }));
const next: readonly Member[] = beams.map(({ id, from, to }) => ({
  id: `N${id}`,
  from: [from[0], 42, 13],
  to: [to[0], 78, 13],
}));
const across: Aisle = {
  id: 'A1',
  outline: [
    [-10, 18],
    [64, 18],
    [64, 42],
    [-10, 42],
  ],
};

test('beams that a stringer may join are one parcel, those beyond an open aisle another', () => {
  const parcels = steelParcels({ members: [...beams, ...next], aisles: [across] });
  expect(parcels.map((own) => own.map(({ id }) => id))).toEqual([
    ['B0', 'B1', 'B2'],
    ['NB0', 'NB1', 'NB2'],
  ]);
});

test('a beam over the aisle joins them; beams farther apart than a stringer goes are apart', () => {
  const bridge: Member = { id: 'X', from: [0, 10, 14], to: [0, 50, 14] };
  expect(steelParcels({ members: [...beams, ...next, bridge], aisles: [across] })).toHaveLength(1);
  const far: Member = { id: 'F', from: [85, -18, 13], to: [85, 18, 13] };
  expect(steelParcels({ members: [...beams, far], aisles: [] })).toHaveLength(2);
});
