import { expect, test } from 'vitest';
import type { SiteFile } from '../../../../routing/site/site.ts';
import { rename } from '../../../../web/document/edits/rename.ts';
import { SMALL_LOT } from '../../../calc/checks/faults/small-lot.ts';
import { checkEdit } from '../check-edit.ts';

test.each([
  ['EV1', { X: { panel: 'P1', spaces: [1, 3] } }],
  ['P1', { EV1: { panel: 'X', spaces: [1, 3] } }],
])('what was issued goes under the new name of %s', (id, circuits) => {
  const file = { ...SMALL_LOT, issued: { circuits: { EV1: { panel: 'P1', spaces: [1, 3] } } } };
  const renamed = rename(JSON.parse(JSON.stringify(file)) as SiteFile, id, 'X');
  expect(renamed.ok && checkEdit(JSON.parse(JSON.stringify(file)), renamed.edit).issued).toEqual({ circuits });
});
