import { expect, test } from 'vitest';
import type { DrawnLine } from '../../../routing/site/import/imported.ts';
import type { SiteFile, Underlay } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { applyEdit, invertEdit } from '../../../web/document/edit.ts';
import { editErrors } from '../../../web/document/edit-errors.ts';
import { linesPerLayer, packedLines, unpackedLines } from '../../../web/underlay/packed-lines.ts';
import { turnEdit, turnedFrom } from '../../../web/underlay/turn-into-edit.ts';
import { changeUnderlay, placeUnderlay, removeUnderlay } from '../../../web/underlay/underlay-edits.ts';

const empty = (units: 'ft' | 'm'): SiteFile => ({ format: 'overrow/site', version: 1, units, name: 'Lot' });
const underlay: Underlay = {
  file: 'plan.dxf',
  kind: 'dxf',
  hash: '0'.repeat(64),
  at: [100, -40],
  scale: 0.001 / 0.3048,
  rotation: 30,
};

test.each(['ft', 'm'] as const)(
  'placing, changing and removing an underlay on a site in %s is valid and undone',
  (units) => {
    let file = empty(units);
    const steps = [
      (now: SiteFile) => placeUnderlay(now, underlay, { lon: -98, lat: 39, bearing: 10 }),
      (now: SiteFile) => changeUnderlay(now, 'Fade underlay', toSite(now).underlay!, { dim: 0.2, locked: true }),
      (now: SiteFile) => changeUnderlay(now, 'Move underlay', toSite(now).underlay!, { at: [1, 2] }),
      removeUnderlay,
    ];
    for (const make of steps) {
      const edit = make(file);
      const after = applyEdit(file, edit);
      expect(editErrors(after, edit)).toEqual([]);
      expect(applyEdit(after, invertEdit(edit))).toEqual(file);
      file = after;
    }
    expect(file.underlay).toBeUndefined();
    expect(file.georef).toEqual({ lon: -98, lat: 39, bearing: 10 });
  },
);

test('a metric site keeps the scale of a drawing in millimetres to the last figure', () => {
  const file = applyEdit(empty('m'), placeUnderlay(empty('m'), underlay, null));
  expect(file.underlay?.scale).toBeCloseTo(0.001, 15);
  expect(Math.abs(toSite(file).underlay!.scale / underlay.scale - 1)).toBeLessThan(1e-11);
});

test('lines turned into stalls are one edit with free ids, where the underlay lies', () => {
  const rectangle: DrawnLine = {
    layer: 'a',
    closed: true,
    points: [
      [0, 0],
      [2700, 0],
      [2700, 5500],
      [0, 5500],
    ],
  };
  const other: DrawnLine = {
    layer: 'b',
    closed: false,
    points: [
      [0, 0],
      [1, 1],
    ],
  };
  const packed = packedLines([rectangle, other, rectangle]);
  expect(linesPerLayer(packed)).toEqual([
    ['a', 2],
    ['b', 1],
  ]);
  expect(unpackedLines(packed, new Set(['b']))).toEqual([other]);
  const file = empty('ft');
  const turned = turnedFrom(underlay, packed, { kind: 'stalls', layers: new Set(['a']), elevation: 0, flip: false });
  const edit = turnEdit(file, 'stalls', turned);
  expect(edit.name).toBe('Turn lines of the underlay into 2 stalls');
  const after = applyEdit(file, edit);
  expect(editErrors(after, edit)).toEqual([]);
  expect(new Set(after.stalls?.map(({ id }) => id)).size).toBe(2);
  expect(after.stalls?.[0]?.width).toBeCloseTo(2.7 / 0.3048, 5);
  expect([120, 300]).toContain(Math.round(after.stalls![0]!.heading));
});
