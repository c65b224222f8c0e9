import { describe, expect, test } from 'vitest';
import type { Machine } from '../../../calc/cli/machine.ts';
import { newVerb } from '../../../calc/cli/verbs/new.ts';
import { plan } from '../../../calc/plan/plan.ts';
import { readSite } from '../../../routing/site/file/read.ts';
import { toSite } from '../../../routing/site/to-site.ts';

const written = new Map<string, unknown>([['taken.site.json', '']]);
const machine = {
  isTaken: (path: string) => written.has(path),
  write: (path: string, text: unknown) => written.set(path, text),
} as unknown as Machine;

describe.each([1, 9, 14])('a start of %i stalls', (stalls) => {
  const { status, out } = newVerb([], { stalls: String(stalls), replace: false }, machine);
  const read = readSite(out);
  if (!read.ok) throw new Error(JSON.stringify(read.errors));
  const { findings, runs } = plan(toSite(read.file));
  test('is a site file in which each stall is served and nothing fails', () => {
    expect(status).toBe(0);
    expect(read.file.stalls).toHaveLength(stalls);
    expect(runs).toHaveLength(stalls);
    expect(findings.filter(({ severity }) => severity === 'fail')).toEqual([]);
  });
  test('says that its sizes are invented', () => {
    expect(read.file.note).toContain('invented');
  });
});

test('what is wrong is named, and no file is written over unasked', () => {
  const errors = (options: object): string => newVerb([], { replace: false, ...options }, machine).err;
  expect(errors({})).toContain('--stalls');
  for (const stalls of ['0', '2.5', 'many', '1000']) expect(errors({ stalls })).toContain(`got "${stalls}"`);
  expect(errors({ stalls: '4', rows: '3' })).toContain('--rows');
  expect(errors({ stalls: '4', out: 'taken.site.json' })).toContain('--replace');
  expect(written.size).toBe(1);
});
