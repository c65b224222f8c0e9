import { expect, test } from 'vitest';
import { plan } from '../../../calc/plan/plan.ts';
import { newMarks } from '../../../routing/site/records/new-mark.ts';
import type { Mark } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { lotWith } from './faults/small-lot.ts';

const told = (records: readonly Mark[]) =>
  plan(toSite(lotWith({ records }))).findings.filter(({ rule }) => rule === 'records-conflict');
let ids = 0;
const written = (known: readonly Mark[], by: string, value: number) =>
  newMarks(
    known,
    [{ of: 'EV1', part: 'pilot A', what: 'measured', reading: { value, unit: 'V' } }],
    { by },
    () => `m${++ids}`,
  );

test('two people who read different things are a finding until somebody decides', () => {
  const [hers, his] = [written([], 'RL', 12), written([], 'JB', 9)];
  expect(told(hers)).toEqual([]);
  // The same twice is nothing to decide.
  expect(told([...hers, ...written([], 'JB', 12)])).toEqual([]);
  const both = [...hers, ...his];
  expect(told(both)).toMatchObject([{ severity: 'warn', about: ['EV1'], value: 2, limit: 1 }]);
  expect(told(both)[0]!.says).toMatch(/EV1 \(pilot A, measured\): RL and JB wrote different things/);
  expect(told([...both, ...written(both, 'TK', 12)])).toEqual([]);
});
