import { expect, test } from 'vitest';
import { failureWords } from '../../../web/words/failure-words.ts';

// How the three kinds of engine say that a module did not come; the last is this page's own, for a worker's file.
test.each([
  'Failed to fetch dynamically imported module: https://host/assets/xlsx-1.js',
  'error loading dynamically imported module: https://host/assets/xlsx-1.js',
  'Importing a module script failed.',
  'module script failed',
])('a part that did not come is told with what to do, not by its address: %s', (message) => {
  const says = failureWords(new TypeError(message));
  expect(says).toContain('try again with a network');
  expect(says).toContain('save the site to a file');
  expect(says).not.toContain('assets');
});

test('any other failure is told as it is', () => {
  expect(failureWords(new RangeError('there is no sample x'))).toBe('there is no sample x');
  expect(failureWords('out of room')).toBe('out of room');
});
