import { expect, test } from 'vitest';
import signs from '../../../../calc/sheets/fonts/signs.json' with { type: 'json' };
import { FACES } from '../../../../calc/sheets/pdf/kit/scripts/faces.ts';
import { signsOfTypefaces } from './signs.mjs';

test('the table of signs says what the typefaces have (node tests/calc/sheets/fonts/signs.mjs writes it)', () => {
  expect(signs).toEqual(signsOfTypefaces());
  expect(Object.keys(signs).sort()).toEqual(['set', ...FACES].sort());
});
