import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ELEMENT_LISTS } from '../../../../routing/site/kinds/kinds.ts';
import { siteFileSchema } from '../../../../routing/site/schema/schema.ts';
import type { SiteFile } from '../../../../routing/site/site.ts';
import { toSite } from '../../../../routing/site/to-site.ts';
import { elementsOf, type ListName } from '../../../../web/document/change/element-lists.ts';
import { leafAt, type SharedValue, valuesAt, withValue } from '../../../../web/document/change/shared-field.ts';
import { setShared } from '../../../../web/document/edits/set-shared.ts';
import { PANEL_KINDS } from '../../../../web/panels/elements/kinds.tsx';
import type { SharedWords } from '../../../../web/panels/selection/shared-words.ts';
import { feetFile, metricFile } from '../../../routing/site/numbers/metric.ts';
import { checkEdit } from '../../document/edits/check-edit.ts';
import { SMALL } from '../../document/small-site.ts';

/** What each element has for itself: its name, its place in the plan, and what it belongs to. */
const APART: { readonly [L in ListName]: readonly string[] } = {
  stalls: ['at', 'label'],
  columns: ['at'],
  members: [],
  keepouts: ['outline'],
  aisles: ['outline'],
  // The words of one marking.
  equipment: ['at', 'seriesWith'],
  feeders: ['to'],
  loads: ['name'],
  raceways: [],
  pullpoints: [],
  drops: [],
  chargers: ['drop', 'stalls'],
  notes: ['at', 'text', 'to'],
  dimensions: ['from', 'to'],
  clouds: ['outline', 'mark'],
  sections: ['name', 'from', 'to'],
  boundaries: ['path', 'name'],
};

const all = ELEMENT_LISTS.flatMap((list) =>
  (PANEL_KINDS[list].shared as readonly SharedWords[]).map((field) => [list, field.label, field] as const),
);

test.each(ELEMENT_LISTS)('every field of %s is one that several may share, or one that each has for itself', (list) => {
  const shared = (PANEL_KINDS[list].shared as readonly SharedWords[]).map(({ paths }) => String(paths[0]![0]));
  const fields = Object.keys(siteFileSchema.entries[list].wrapped.item.entries).filter((field) => field !== 'id');
  expect([...new Set([...shared, ...APART[list]])].sort()).toEqual(fields.sort());
});

test.each(all)('of %s, %s says what it means where it is not given, if it can be left out', (list, _, field) => {
  const { optional, kind } = leafAt(list, field);
  expect(optional).toBe(field.absent !== undefined || field.none !== undefined);
  if (kind === 'text') expect(field.among).toBeDefined();
});

/** A value that the field can be given. */
function anyValue(file: SiteFile, list: ListName, field: SharedWords): fc.Arbitrary<SharedValue> {
  const { kind, options, most } = leafAt(list, field);
  if (kind === 'yes or no') return fc.boolean();
  if (kind === 'choice') return fc.constantFrom(...options);
  if (kind !== 'text') return fc.integer({ min: 1, max: most ?? 40 });
  if (field.among === 'equipment') return fc.constantFrom(...elementsOf(file, 'equipment').map(({ id }) => id));
  return fc.constantFrom(...(field.among === 'vehicles' ? ['suv'] : ['6', '4/0']));
}

describe.each([feetFile, metricFile])('in a file in $units', (file) => {
  test.each(all)('of %s, %s is given to all at once, in feet, and to nothing else, in one step', (list, _, field) => {
    const ids = elementsOf(file, list).map(({ id }) => id);
    expect(ids.length).toBeGreaterThan(0);
    fc.assert(
      fc.property(anyValue(file, list, field), (value) => {
        const edit = setShared(file, list, ids, field, value);
        const after = checkEdit(file, edit);
        const site = toSite(after);
        const elements: readonly object[] = site[list];
        for (const element of elements)
          for (const now of valuesAt(element, field))
            if (typeof value === 'number') expect(now).toBeCloseTo(value, 4);
            else expect(field.words?.[String(now)] ?? now).toBe(field.words?.[String(value)] ?? value);
        expect({ ...after, [list]: file[list] }).toEqual(file);
        expect(edit.name).toMatch(new RegExp(`^Set the ${field.called ?? field.label} of `));
      }),
      { numRuns: 5 },
    );
  });

  test.each(all.filter(([list, , field]) => leafAt(list, field).optional))(
    'of %s, %s is taken away from all at once',
    (list, _, field) => {
      const ids = elementsOf(file, list).map(({ id }) => id);
      const after = checkEdit(file, setShared(file, list, ids, field, undefined));
      for (const element of elementsOf(after, list)) expect(valuesAt(element, field)).toEqual([undefined]);
    },
  );
});

test('the step says what was set, and of how many: those that changed', () => {
  const [box, retractor] = PANEL_KINDS.drops.shared;
  expect(setShared(SMALL, 'drops', ['D1', 'D2'], box!, 11.5).name).toBe('Set the box elevation of 2 drops');
  const one = { ...SMALL, drops: [{ ...SMALL.drops![0]!, box: [4.5, 18, 11.5] as const }, SMALL.drops![1]!] };
  expect(setShared(one as unknown as SiteFile, 'drops', ['D1', 'D2'], box!, 11.5).name).toBe(
    'Set the box elevation of drop D2',
  );
  expect(setShared(SMALL, 'drops', ['D1', 'D2'], retractor!, 11).steps).toEqual([]);
  const bare = withValue(SMALL.drops![0]!, { label: '', paths: [['retractor']] }, undefined);
  expect(withValue(bare, retractor!, 9)).toEqual(bare);
  expect(valuesAt(bare, retractor!)).toEqual([]);
});

test('a level member is raised at both ends; a sloping one has an elevation at each', () => {
  const level = toSite(SMALL).members;
  const sloping = [{ ...level[0]!, to: [27, 18, 14] as const }];
  const labels = (members: typeof level): string[] =>
    PANEL_KINDS.members.shared.filter(({ suits }) => suits?.(members) ?? true).map(({ label }) => label);
  expect(labels(level)).toEqual(['elevation', 'stringer to be put in']);
  expect(labels(sloping)).toEqual(['elevation of the from end', 'elevation of the to end', 'stringer to be put in']);
  const after = checkEdit(SMALL, setShared(SMALL, 'members', ['M1'], PANEL_KINDS.members.shared[0]!, 13));
  expect(after.members?.[0]).toMatchObject({ from: [0, 18, 13], to: [27, 18, 13] });
});
