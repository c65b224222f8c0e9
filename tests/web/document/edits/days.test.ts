import { describe, expect, test } from 'vitest';
import { addDay, changeDay, removeDay } from '../../../../web/document/edits/charging/days.ts';
import { holdPanels } from '../../../../web/document/edits/charging/hold-panels.ts';
import { SMALL } from '../small-site.ts';
import { checkEdit } from './check-edit.ts';

const day = { id: 'work', from: '06:00', to: '20:00', population: { kind: 'workplace', cars: 2, seed: 1 } } as const;

describe('days of charging', () => {
  test('come, are changed in place and go, and with the last the field goes', () => {
    const with1 = checkEdit(SMALL, addDay(SMALL, day));
    const with2 = checkEdit(with1, addDay(with1, { ...day, id: 'other' }));
    const changed = checkEdit(with2, changeDay(with2, { ...day, strategy: 'first' }));
    expect(changed.days?.map(({ id, strategy }) => [id, strategy])).toEqual([
      ['work', 'first'],
      ['other', undefined],
    ]);
    const one = checkEdit(changed, removeDay(changed, 'other'));
    expect(checkEdit(one, removeDay(one, 'work')).days).toBeUndefined();
    expect(removeDay(one, 'nobody').steps).toEqual([]);
  });

  test('panels are held each to its own amperes as one edit', () => {
    const { equipment = [] } = SMALL;
    const ids = equipment.slice(0, 2).map(({ id }) => id);
    const edit = holdPanels(
      SMALL,
      ids.map((id, i) => ({ id, amps: 90 + i })),
    );
    expect(edit.name).toBe(`Hold ${ids.map((id, i) => `${id} to ${90 + i} A`).join(', ')}`);
    const held = checkEdit(SMALL, edit);
    expect(held.equipment!.slice(0, 2).map(({ managedAmps }) => managedAmps)).toEqual(ids.map((_, i) => 90 + i));
    expect(held.equipment!.slice(2)).toEqual(equipment.slice(2));
  });
});
