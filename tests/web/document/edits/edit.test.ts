import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { writeSite } from '../../../../routing/site/file/write.ts';
import type { SiteFile } from '../../../../routing/site/site.ts';
import { applyEdit, type Edit, type EditStep, invertEdit, joinEdits } from '../../../../web/document/change/edit.ts';
import { elementsOf } from '../../../../web/document/change/element-lists.ts';
import { parseEdit } from '../../../../web/document/change/parse-edit.ts';
import { setStep } from '../../../../web/document/change/set-field.ts';
import { SMALL } from '../small-site.ts';
import { checkEdit } from './check-edit.ts';

const edit = (...steps: EditStep[]): Edit => ({ name: 'test', steps });
const [stall] = SMALL.stalls!;
const other = { ...stall!, id: 'S99' };

describe('applyEdit', () => {
  test('puts an element in at its place and takes it out again', () => {
    const after = checkEdit(SMALL, edit({ kind: 'insert', list: 'stalls', index: 1, element: other }));
    expect(after.stalls?.map(({ id }) => id)).toEqual(['S07', 'S99', 'S08', 'S09']);
  });

  test('shares every list and element that it does not touch with the file before it', () => {
    const before = SMALL.drops![0]!;
    const after = checkEdit(
      SMALL,
      edit({ kind: 'change', list: 'drops', id: 'D1', before, after: { ...before, cord: 25 } }),
    );
    expect(after.drops?.[1]).toBe(SMALL.drops?.[1]);
    for (const list of ['stalls', 'chargers', 'raceways', 'vehicles', 'asBuilt'] as const) {
      expect(after[list]).toBe(SMALL[list]);
    }
  });

  test('a field that comes and goes comes back to its own place among the fields', () => {
    const after = checkEdit(SMALL, edit(setStep(SMALL, 'gridlines', undefined)));
    expect(Object.keys(after)).not.toContain('gridlines');
    const given = checkEdit(after, edit(setStep(after, 'gridlines', { x: [] })));
    expect(Object.keys(given)).toEqual(Object.keys(SMALL));
  });

  test('a list that the file lacked is absent again after the edit that brought it is taken back', () => {
    const bare: SiteFile = { format: 'overrow/site', version: 1, units: 'ft', name: 'bare' };
    const element = { ...stall!, vehicle: 'sedan' };
    const after = checkEdit(
      bare,
      edit(setStep(bare, 'stalls', []), { kind: 'insert', list: 'stalls', index: 0, element }),
    );
    expect(after.stalls).toHaveLength(1);
  });

  test('two elements can trade their names in one edit', () => {
    const [a, b] = [SMALL.columns![0]!, { ...SMALL.columns![0]!, id: 'C2' }];
    const two = applyEdit(SMALL, edit({ kind: 'insert', list: 'columns', index: 1, element: b }));
    const after = checkEdit(
      two,
      edit(
        { kind: 'change', list: 'columns', id: 'C1', before: a, after: { ...a, id: 'C2' } },
        { kind: 'change', list: 'columns', id: 'C2', before: b, after: { ...b, id: 'C1', height: 9 } },
      ),
    );
    expect(after.columns).toEqual([
      { ...a, id: 'C2' },
      { ...b, id: 'C1', height: 9 },
    ]);
  });

  test('refuses a step that does not fit the file', () => {
    const misfits: EditStep[] = [
      { kind: 'remove', list: 'stalls', index: 0, element: other },
      { kind: 'remove', list: 'stalls', index: 9, element: other },
      { kind: 'insert', list: 'stalls', index: 4, element: other },
      { kind: 'change', list: 'stalls', id: 'S99', before: other, after: other },
    ];
    for (const step of misfits) expect(() => applyEdit(SMALL, edit(step))).toThrow(RangeError);
    const { stalls: _, ...none } = SMALL;
    expect(() => applyEdit(none, edit({ kind: 'insert', list: 'stalls', index: 0, element: other }))).toThrow(
      RangeError,
    );
  });

  test('an edit done and taken back leaves the text of the saved file as it was', () => {
    const joined = joinEdits(
      'both',
      edit({ kind: 'insert', list: 'stalls', index: 3, element: other }),
      edit(setStep(SMALL, 'rules', { cordLimit: 30 })),
    );
    expect(writeSite(applyEdit(applyEdit(SMALL, joined), invertEdit(joined)))).toBe(writeSite(SMALL));
  });
});

test('random puts, takes and changes within one edit are taken back to the letter', () => {
  const kinds = fc.array(
    fc.record({
      kind: fc.constantFrom('insert', 'remove', 'change', 'rename'),
      at: fc.nat(),
      width: fc.integer({ min: 7, max: 12 }),
    }),
    { maxLength: 40 },
  );
  fc.assert(
    fc.property(kinds, (choices) => {
      // A mirror of what the list should hold after each step: the slow and obvious way.
      const mirror = [...elementsOf(SMALL, 'stalls')];
      const steps = choices.flatMap(({ kind, at, width }, turn): EditStep[] => {
        if (kind === 'insert') {
          const index = at % (mirror.length + 1);
          const element = { ...stall!, id: `N${turn}`, width };
          mirror.splice(index, 0, element);
          return [{ kind, list: 'stalls', index, element }];
        }
        if (mirror.length === 0) return [];
        const index = at % mirror.length;
        const element = mirror[index]!;
        if (kind === 'remove') {
          mirror.splice(index, 1);
          return [{ kind, list: 'stalls', index, element }];
        }
        const after = { ...element, width, ...(kind === 'rename' && { id: `X${turn}` }) };
        mirror[index] = after;
        return [{ kind: 'change', list: 'stalls', id: element.id, before: element, after }];
      });
      const after = applyEdit(SMALL, edit(...steps));
      expect(after.stalls).toEqual(mirror);
      expect(applyEdit(after, invertEdit(edit(...steps)))).toEqual(SMALL);
    }),
  );
});

describe('parseEdit', () => {
  test('takes no edit with an unsound step', () => {
    const sound = { kind: 'insert', list: 'stalls', index: 0, element: other };
    expect(parseEdit({ name: 'x', steps: [sound] })).not.toBeNull();
    const unsound: unknown[] = [
      null,
      'edit',
      [],
      { name: 'x' },
      { name: 3, steps: [] },
      { name: 'x', steps: [null] },
      { name: 'x', steps: [{ ...sound, kind: 'put' }] },
      { name: 'x', steps: [{ ...sound, list: '__proto__' }] },
      { name: 'x', steps: [{ ...sound, index: -1 }] },
      { name: 'x', steps: [{ ...sound, index: 0.5 }] },
      { name: 'x', steps: [{ ...sound, element: { ...other, width: 'nine' } }] },
      { name: 'x', steps: [{ ...sound, element: { ...other, extra: 1 } }] },
      { name: 'x', steps: [{ kind: 'set', field: 'format', after: 'other' }] },
      { name: 'x', steps: [{ kind: 'set', field: '__proto__', after: {} }] },
      { name: 'x', steps: [{ kind: 'set', field: 'rules', after: { cordLimit: -1 } }] },
    ];
    for (const value of unsound) expect(parseEdit(value)).toBeNull();
  });

  test('never throws, whatever comes out of a store', () => {
    fc.assert(fc.property(fc.anything(), (value) => parseEdit(value) === null || Array.isArray((value as Edit).steps)));
  });
});
