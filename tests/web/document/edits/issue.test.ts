import { expect, test } from 'vitest';
import { panelSchedules } from '../../../../calc/supply/panels/panel-schedule.ts';
import type { SiteFile } from '../../../../routing/site/site.ts';
import { toSite } from '../../../../routing/site/to-site.ts';
import { feedChargers, issuePanel, letGoOfPanel, moveCircuit } from '../../../../web/document/edits/charging/issue.ts';
import { SMALL_LOT } from '../../../calc/checks/faults/small-lot.ts';
import { checkEdit } from './check-edit.ts';

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

const scheduleOf = (file: SiteFile) => panelSchedules(toSite(file)).get('P1')!;
const spacesOf = (file: SiteFile): Record<string, string> =>
  Object.fromEntries(scheduleOf(file).circuits.map(({ id, spaces }) => [id, spaces.join(' ')]));

test('a circuit is moved to free spaces, and no other moves', () => {
  const was = spacesOf(lot());
  const after = checkEdit(lot(), moveCircuit(lot(), scheduleOf(lot()), 'EV1', 21));
  expect(spacesOf(after)).toEqual({ ...was, EV1: '21 23' });
  expect(after.issued).toEqual({ circuits: { EV1: { panel: 'P1', spaces: [21, 23], phases: 'BC' } } });
});

test('two circuits of as many poles change places', () => {
  const was = spacesOf(lot());
  const first = Number(was.EV2!.split(' ')[0]);
  const after = checkEdit(lot(), moveCircuit(lot(), scheduleOf(lot()), 'EV1', first));
  expect(spacesOf(after)).toEqual({ EV1: was.EV2, EV2: was.EV1 });
});

test('what is half in the way makes room', () => {
  const before = checkEdit(lot(), moveCircuit(lot(), scheduleOf(lot()), 'EV2', 21));
  const after = checkEdit(before, moveCircuit(before, scheduleOf(before), 'EV1', 23));
  expect(spacesOf(after).EV1).toBe('23 25');
  expect(spacesOf(after).EV2).not.toMatch(/21|23|25/);
  expect(Object.keys(after.issued!.circuits!)).toEqual(['EV1']);
});

test('spaces that the panel has not are refused; where it stands already nothing is done', () => {
  expect(moveCircuit(lot(), scheduleOf(lot()), 'EV1', 41).steps).toEqual([]);
  expect(moveCircuit(lot(), scheduleOf(lot()), 'EV1', Number(spacesOf(lot()).EV1!.split(' ')[0])).steps).toEqual([]);
});

test('a whole schedule is issued, and let go', () => {
  const issued = checkEdit(lot(), issuePanel(lot(), scheduleOf(lot())));
  expect(Object.keys(issued.issued!.circuits!).sort()).toEqual(['EV1', 'EV2']);
  expect(spacesOf(issued)).toEqual(spacesOf(lot()));
  expect(checkEdit(issued, letGoOfPanel(issued, 'P1'))).toEqual(lot());
});
