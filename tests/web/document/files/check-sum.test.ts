import { crc32 } from 'node:zlib';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { checkSum } from '../../../../web/document/files/check-sum.ts';

test('is the CRC-32 that the catalogue of CRCs gives for "123456789"', () => {
  expect(checkSum('123456789')).toBe(0xcbf43926);
  expect(checkSum('')).toBe(0);
});

// Node's own zlib has it from 20.15 on.
test.runIf(typeof crc32 === 'function')('is that of zlib for any text', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'binary' }), (text) => {
      expect(checkSum(text)).toBe(crc32(new TextEncoder().encode(text)));
    }),
  );
});
