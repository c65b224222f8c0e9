import fc from 'fast-check';
import { expect, test } from 'vitest';
import { lossOf, parseMirror } from '../../../../web/document/keeping/store/mirror.ts';

const mirror = { doc: 'd', name: 'Lot', edits: 1, at: 0 };

test('what was written is read again', () => {
  expect(parseMirror(JSON.stringify(mirror))).toEqual(mirror);
});

test('anything else is as if nothing had been written', () => {
  expect(parseMirror(null)).toBeNull();
  expect(parseMirror('{"doc":1}')).toBeNull();
  fc.assert(fc.property(fc.string(), (text) => parseMirror(text) === null));
});

test('the loss of a site that nobody changed is not spoken of', () => {
  expect(lossOf({ ...mirror, edits: 0 })).toBeNull();
  expect(lossOf(mirror)).toMatch(/^This browser has cleared “Lot” with its one change, /);
});
