import { expect, it } from 'vitest';
import { statedScale } from '../../../web/underlay/reading/stated-scale.ts';

it('a scale that a sheet states is read, in feet for an inch of it', () => {
  for (const [words, feet] of [
    ['SITE PLAN Scale: 1" = 20\'-0"', 20],
    ['1"=40\'', 40],
    ['1/8" = 1\'-0"', 8],
    ['1 1/2" = 1\'-0"', 2 / 3],
    ['SCALE 1:200', 200 / 12],
    ['scale: 1" = 20\' … 1" = 20\'-0"', 20],
  ] as const)
    expect(statedScale(words), words).toBeCloseTo(feet, 9);
});
it('none, or several that differ, say nothing', () => {
  for (const words of ['', 'N.T.S.', '1" = 20\' and 1/4" = 1\'-0"', 'ratio 1:3', '0/0" = 1\'', '3/0" = 2\''])
    expect(statedScale(words), words).toBeNull();
});
