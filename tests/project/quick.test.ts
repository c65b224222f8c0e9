import { existsSync } from 'node:fs';
import { expect, test } from 'vitest';
import HEAVY from '../heavy.json' with { type: 'json' };

test('each test that the quick run leaves out is there, once: one that was moved would come back unseen', () => {
  expect(HEAVY.filter((file) => !existsSync(file))).toEqual([]);
  expect(new Set(HEAVY).size).toBe(HEAVY.length);
});
