import { expect, test } from 'vitest';
import { byWords, takeoffKind } from '../../../calc/prices/kind.ts';

const kindOf = (spec: string) => takeoffKind({ item: 'elbow', spec, unit: 'each', basis: 'invented' });

test('a kind that is held is the one kind of its words, however many others have been asked for', () => {
  const held = kindOf('held');
  for (let i = 0; i < 20_000; i++) kindOf(`${i} degrees`);
  expect(kindOf('held')).toBe(held);
  expect(kindOf('another')).not.toBe(held);
});

test('answers by words are worked once each, until there are thousands', () => {
  let worked = 0;
  const of = byWords((first, second) => {
    worked++;
    return `${first} ${second}`;
  });
  for (let round = 0; round < 3; round++) for (let i = 0; i < 1000; i++) expect(of('EMT', String(i))).toBe(`EMT ${i}`);
  expect(worked).toBe(1000);
  for (let i = 1000; i < 10_000; i++) of('EMT', String(i));
  expect(of('EMT', '0')).toBe('EMT 0');
  expect(worked).toBe(10_001);
});
