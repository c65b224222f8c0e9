import { expect, test } from 'vitest';
import { refsOf } from '../../../web/words/refs.ts';
import { plannedSample } from '../../outside/sheets/planned-samples.ts';

test('whatever the bill is made of stands on the board somewhere: a junction by the drops of its circuits', () => {
  const { file, planned } = plannedSample('fleet-yard');
  const junction = planned.boxes.find(({ kind }) => kind === 'junction')!;
  const refs = refsOf(file, planned, junction.id);
  expect(refs.length).toBeGreaterThan(0);
  expect(refs.every(({ list }) => list === 'drops')).toBe(true);
  expect(new Set(refs.map(({ id }) => id)).size).toBe(refs.length);
  for (const { item, of } of planned.takeoff)
    for (const id of of) expect(refsOf(file, planned, id).length, `${item} ${id}`).toBeGreaterThan(0);
});
