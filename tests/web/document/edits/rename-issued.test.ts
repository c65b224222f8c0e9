import { expect, test } from 'vitest';
import type { SiteFile } from '../../../../routing/site/site.ts';
import { rename } from '../../../../web/document/edits/rename.ts';
import { SMALL_LOT } from '../../../calc/checks/faults/small-lot.ts';
import { checkEdit } from './check-edit.ts';

test.each([
  ['EV1', { X: { panel: 'P1', spaces: [1, 3] } }],
  ['P1', { EV1: { panel: 'X', spaces: [1, 3] } }],
])('what was issued goes under the new name of %s', (id, circuits) => {
  const file = { ...SMALL_LOT, issued: { circuits: { EV1: { panel: 'P1', spaces: [1, 3] } } } };
  const renamed = rename(JSON.parse(JSON.stringify(file)) as SiteFile, id, 'X');
  expect(renamed.ok && checkEdit(JSON.parse(JSON.stringify(file)), renamed.edit).issued).toEqual({ circuits });
});

test('names of conduits go under the new name of their charger, and stay where something else is renamed', () => {
  const file = { ...SMALL_LOT, issued: { conduits: { 'EV1/1': 'P1-7.1', 'EV2/2': 'P1-7.2' } } };
  const after = (id: string) => {
    const renamed = rename(JSON.parse(JSON.stringify(file)) as SiteFile, id, 'X/9');
    return renamed.ok && checkEdit(JSON.parse(JSON.stringify(file)), renamed.edit).issued;
  };
  expect(after('EV1')).toEqual({ conduits: { 'X/9/1': 'P1-7.1', 'EV2/2': 'P1-7.2' } });
  expect(after('D1')).toEqual(file.issued);
});
