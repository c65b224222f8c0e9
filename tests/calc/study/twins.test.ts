import { expect, test } from 'vitest';
import { FIGURE_NAMES, type WayFigures } from '../../../calc/study/figures.ts';
import { twinOf } from '../../../calc/study/twins.ts';
import { wayName } from '../../../calc/study/way-name.ts';
import type { SiteFile } from '../../../routing/site/site.ts';

const figures = (price: number): WayFigures =>
  Object.fromEntries(FIGURE_NAMES.map((name) => [name, name === 'price' ? price : null])) as WayFigures;

const lot = (panel: string, drop: string, amps: number): SiteFile => ({
  format: 'overrow/site',
  version: 1,
  units: 'ft',
  name: panel,
  equipment: [{ id: panel, kind: 'panelboard', at: [0, 0], size: [3, 1, 6], entry: [0, 0, 6], volts: 208, phases: 3 }],
  drops: [{ id: drop, box: [10, 0, 11], cord: 25 }],
  chargers: [{ id: 'EV1', drop, stalls: [], from: panel, amps, volts: 208, phases: 1 }],
});

const way = { file: lot('P1', 'D1', 32), figures: figures(100.01) };

test('the same layout at the same price is one way, whatever its elements and the lot are called', () => {
  expect(twinOf([way], { file: lot('MDP', 'X7', 32), figures: figures(100.01) })).toBe(way);
});

test('it is one, at whichever of equal boards load management is set, where every figure is the same', () => {
  const held = { ...way.file, equipment: way.file.equipment!.map((one) => ({ ...one, managedAmps: 80 })) };
  expect(twinOf([way], { file: held, figures: figures(100.01) })).toBe(way);
  expect(twinOf([way], { file: held, figures: { ...figures(100.01), energy: 12 } })).toBeNull();
});

test('a cent, an ampere or a foot apart they are two', () => {
  expect(twinOf([way], { file: way.file, figures: figures(100.02) })).toBeNull();
  expect(twinOf([way], { file: lot('P1', 'D1', 40), figures: figures(100.01) })).toBeNull();
  const moved = { ...way.file, drops: [{ id: 'D1', box: [11, 0, 11] as [number, number, number], cord: 25 }] };
  expect(twinOf([way], { file: moved, figures: figures(100.01) })).toBeNull();
});

test('it goes by both names', () => {
  expect(wayName({ name: 'One', also: [] })).toBe('One');
  expect(wayName({ name: 'One', also: ['two', 'three'] })).toBe('One (the same comes of: two; of: three)');
});
