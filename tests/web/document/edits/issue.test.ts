import { expect, test } from 'vitest';
import type { SiteFile } from '../../../../routing/site/site.ts';
import { feedChargers } from '../../../../web/document/edits/issue.ts';
import { SMALL_LOT } from '../../../calc/checks/faults/small-lot.ts';
import { checkEdit } from '../check-edit.ts';

const P2 = { ...SMALL_LOT.equipment[1]!, id: 'P2', at: [-10, 0] };
const lot = (issued?: SiteFile['issued']): SiteFile =>
  JSON.parse(JSON.stringify({ ...SMALL_LOT, equipment: [...SMALL_LOT.equipment, P2], ...(issued && { issued }) }));
const fedBy = (file: SiteFile): Record<string, string> =>
  Object.fromEntries(file.chargers!.map(({ id, from }) => [id, from]));

test('chargers are fed from another board, and what was issued of them on the old one is let go', () => {
  const before = lot({ circuits: { EV1: { panel: 'P1', spaces: [1, 3] }, EV2: { panel: 'P1', phases: 'CA' } } });
  const edit = feedChargers(before, ['EV1'], 'P2');
  expect(edit.name).toBe('Feed charger EV1 from P2');
  const after = checkEdit(before, edit);
  expect(fedBy(after)).toEqual({ EV1: 'P2', EV2: 'P1' });
  expect(after.issued).toEqual({ circuits: { EV2: { panel: 'P1', phases: 'CA' } } });
});

test('on lines that are given they are issued there', () => {
  const after = checkEdit(lot(), feedChargers(lot(), ['EV1', 'EV2'], 'P2', 'BC'));
  expect(fedBy(after)).toEqual({ EV1: 'P2', EV2: 'P2' });
  const there = { panel: 'P2', phases: 'BC' };
  expect(after.issued).toEqual({ circuits: { EV1: there, EV2: there } });
});

test('without lines and without another board nothing is done; the last that was issued takes the field along', () => {
  const before = lot({ circuits: { EV1: { panel: 'P1', phases: 'CA' } } });
  expect(feedChargers(before, ['EV1'], 'P1').steps).toEqual([]);
  expect(checkEdit(before, feedChargers(before, ['EV1'], 'P2'))).not.toHaveProperty('issued');
});
