import { expect, test } from 'vitest';
import { overlapFindings } from '../../../../routing/checks/overlaps/overlap-findings.ts';
import { ELEMENT_LISTS } from '../../../../routing/site/kinds/kinds.ts';
import { toSite } from '../../../../routing/site/to-site.ts';
import { applyEdit } from '../../../../web/document/change/edit.ts';
import { elementsOf, type Ref } from '../../../../web/document/change/element-lists.ts';
import { held } from '../../../../web/document/edits/gather.ts';
import { mirrorCopy } from '../../../../web/document/edits/moving/copy.ts';
import { outerCornerOf } from '../../../../web/document/edits/moving/outer-corner.ts';
import { libraryLot } from '../../../bench/samples/library-lot.ts';

const file = libraryLot();
const whole: readonly Ref[] = ELEMENT_LISTS.flatMap((list) => elementsOf(file, list).map(({ id }) => ({ list, id })));

test.each([90, 0])('a copy mirrored in the offered line at %i degrees lies on nothing of the lot', (degrees) => {
  const corner = outerCornerOf(held(file, whole))!;
  const rules = overlapFindings(toSite(applyEdit(file, mirrorCopy(file, whole, corner, degrees)))).map(
    ({ rule, about }) => `${rule} ${about.join(' ')}`,
  );
  expect(rules).toEqual([]);
  // Through the middle, as it once was offered, the copy lies on the lot.
  const middle = overlapFindings(toSite(applyEdit(file, mirrorCopy(file, whole, [39.5, 0], degrees))));
  expect(new Set(middle.map(({ rule }) => rule))).toContain('stalls-overlap');
});

test('the corner is that of outlines, not of the points that things are placed by', () => {
  expect(outerCornerOf(held(file, [{ list: 'stalls', id: 'S08' }]))).toEqual([79, 18]);
  expect(outerCornerOf(held(file, [{ list: 'columns', id: 'C1' }]))).toEqual([0.5, 0.5]);
  expect(outerCornerOf(held(file, [{ list: 'equipment', id: 'P1' }]))).toEqual([-4.5, 0.5]);
  expect(outerCornerOf([])).toBeNull();
});
