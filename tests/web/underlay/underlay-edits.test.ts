import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { ImportedLine } from '../../../routing/site/import/imported.ts';
import type { SiteFile, Underlay } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { applyEdit, invertEdit } from '../../../web/document/change/edit.ts';
import { editErrors } from '../../../web/document/change/edit-errors.ts';
import { turnEdit, turnedFrom } from '../../../web/underlay/into-elements/turn-into-edit.ts';
import { linesPerLayer, packedLines, unpackedLines } from '../../../web/underlay/reading/packed-lines.ts';
import {
  changeUnderlay,
  placeUnderlay,
  removeUnderlay,
  reorderUnderlay,
  underlaysIfSame,
} from '../../../web/underlay/underlay-edits.ts';
import { underlaysOf } from '../../../web/underlay/underlays.ts';

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
      (now: SiteFile) => changeUnderlay(now, 0, 'Fade underlay', toSite(now).underlay!, { dim: 0.2, locked: true }),
      (now: SiteFile) => changeUnderlay(now, 0, 'Move underlay', toSite(now).underlay!, { at: [1, 2] }),
      (now: SiteFile) => removeUnderlay(now, 0),
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

const named = (name: string): Underlay => ({ ...underlay, file: name, hash: name.repeat(64).slice(0, 64) });
const names = (file: SiteFile): readonly string[] => underlaysOf(file).map(({ file: name }) => name);

test('another underlay lies over the first, which stays in the field that it had', () => {
  const one = applyEdit(empty('ft'), placeUnderlay(empty('ft'), named('a'), null));
  expect(one.underlays).toBeUndefined();
  const two = applyEdit(one, placeUnderlay(one, named('b'), null));
  expect(two.underlay).toBe(one.underlay);
  expect(two.underlays?.map(({ file }) => file)).toEqual(['b']);
  expect(names(applyEdit(two, placeUnderlay(two, named('c'), null, 0)))).toEqual(['c', 'b']);
  expect(applyEdit(two, removeUnderlay(two, 1))).toEqual(one);
  const upper = applyEdit(two, removeUnderlay(two, 0));
  expect([upper.underlay?.file, upper.underlays]).toEqual(['b', undefined]);
});

test('each keeps its own scale, turn, dimness and lock in whatever order they come to lie', () => {
  type Act = readonly [kind: 'add' | 'change' | 'remove' | 'order', at: number, to: number];
  const acts = fc.array(
    fc.tuple(
      fc.constantFrom('add' as const, 'change' as const, 'remove' as const, 'order' as const),
      fc.nat(8),
      fc.nat(8),
    ),
    { maxLength: 12 },
  );
  fc.assert(
    fc.property(acts, fc.constantFrom('ft' as const, 'm' as const), (all: readonly Act[], units) => {
      let file = empty(units);
      // The plainest list that could be meant by it.
      let model: Underlay[] = [];
      all.forEach(([kind, at, to], turn) => {
        const n = model.length;
        if (kind !== 'add' && n === 0) return;
        const i = n > 0 ? at % n : 0;
        const j = n > 0 ? to % n : 0;
        const patch = { dim: to / 10, locked: at % 2 === 0, hidden: to % 2 === 0, rotation: at * 10 };
        const fresh = named(String(turn % 10));
        const own = underlaysOf(toSite(file))[i]!;
        const edit =
          kind === 'add'
            ? placeUnderlay(file, fresh, null)
            : kind === 'change'
              ? changeUnderlay(file, i, 'Change underlay', own, patch)
              : kind === 'remove'
                ? removeUnderlay(file, i)
                : reorderUnderlay(file, i, j);
        if (kind === 'add') model.push(fresh);
        else if (kind === 'change') model = model.map((each, k) => (k === i ? { ...each, ...patch } : each));
        else {
          const [gone] = model.splice(i, 1);
          if (kind === 'order') model.splice(j, 0, gone!);
        }
        const after = applyEdit(file, edit);
        expect(editErrors(after, edit)).toEqual([]);
        expect(applyEdit(after, invertEdit(edit))).toEqual(file);
        file = after;
      });
      const now = underlaysOf(toSite(file));
      expect(now.map(({ at: _, scale: __, ...rest }) => rest)).toEqual(
        model.map(({ at: _, scale: __, ...rest }) => rest),
      );
      for (const [i, { scale }] of now.entries()) expect(scale / model[i]!.scale).toBeCloseTo(1, 10);
      expect(file.underlay === undefined).toBe(model.length === 0);
    }),
  );
});

test('a metric site keeps the scale of a drawing in millimetres to the last figure', () => {
  const file = applyEdit(empty('m'), placeUnderlay(empty('m'), underlay, null));
  expect(file.underlay?.scale).toBeCloseTo(0.001, 15);
  expect(Math.abs(toSite(file).underlay!.scale / underlay.scale - 1)).toBeLessThan(1e-11);
});

test('lines turned into stalls are one edit with free ids, where the underlay lies', () => {
  const rectangle: ImportedLine = {
    layer: 'a',
    closed: true,
    points: [
      [0, 0],
      [2700, 0],
      [2700, 5500],
      [0, 5500],
    ],
  };
  const other: ImportedLine = {
    layer: 'b',
    closed: false,
    points: [
      [0, 0],
      [1, 1],
    ],
  };
  const beside = { ...rectangle, points: rectangle.points.map(([x, y]) => [x + 2700, y] as const) };
  const packed = packedLines([rectangle, other, beside]);
  expect(linesPerLayer(packed)).toEqual([
    ['a', 2],
    ['b', 1],
  ]);
  expect(unpackedLines(packed, new Set(['b']))).toEqual([other]);
  const file = empty('ft');
  const turned = turnedFrom(
    underlay,
    { lines: packed },
    { kind: 'stalls', layers: new Set(['a']), elevation: 0, flip: false },
  );
  const edit = turnEdit(file, 'stalls', turned);
  expect(edit.name).toBe('Turn lines of the underlay into 2 stalls');
  const after = applyEdit(file, edit);
  expect(editErrors(after, edit)).toEqual([]);
  expect(new Set(after.stalls?.map(({ id }) => id)).size).toBe(2);
  expect(after.stalls?.[0]?.width).toBeCloseTo(2.7 / 0.3048, 5);
  expect([120, 300]).toContain(Math.round(after.stalls![0]!.heading));
});

test('what was read of an underlay is for it alone, as it lies by then', () => {
  const other = { ...underlay, file: 'survey.dxf' };
  const site = { underlay: { ...underlay, at: [7, 7] as const }, underlays: [other] };
  expect(underlaysIfSame(site, 0, underlay)).toBe(site.underlay);
  expect(underlaysIfSame(site, 1, underlay)).toBeNull();
  expect(underlaysIfSame({ underlay: other }, 0, underlay)).toBeNull();
  expect(underlaysIfSame({}, 0, underlay)).toBeNull();
});
