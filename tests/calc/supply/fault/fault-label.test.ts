import { expect, test } from 'vitest';
import { bondedWords } from '../../../../calc/supply/bonding/bonded-words.ts';
import { faultLabel } from '../../../../calc/supply/fault/fault-labels.ts';
import { feeder, panel, siteOf, source, supplied, transformer } from '../small-site.ts';

const { supply } = supplied(
  siteOf({
    equipment: [{ ...source(480), faultAmps: 30_000, faultXr: 6 }, transformer('T', { electrode: 'rods' }), panel('P')],
    feeders: [feeder('SVC', 'T'), feeder('T', 'P', { length: 10 })],
  }),
);
const row = (id: string) => supply.equipment.find((one) => one.id === id)!;

test('the label of a board has the most of its fault current, where, and a date or a place for it', () => {
  const { fault } = row('P');
  const most = Math.round(Math.max(fault!.most, fault!.lineToNeutral!));
  expect(faultLabel(row('P'), '208Y/120 V', '2026-11-25')).toBe(
    `P: maximum available fault current ${most} A at 208Y/120 V; calculated 2026-11-25`,
  );
  expect(faultLabel(row('P'), '208Y/120 V')).toContain('calculated ____-__-__');
  expect(faultLabel({ ...row('P'), fault: { ...fault!, isUnlimited: true } }, '208Y/120 V')).toContain('unlimited');
  const { fault: _, ...unknown } = row('P');
  expect(faultLabel(unknown, '208Y/120 V')).toBeNull();
});

test('what is bonded in words', () => {
  expect(supply.bonded.flatMap(bondedWords)).toEqual([
    'system bonding jumper 4 AWG copper',
    'electrode conductor 6 AWG copper to ground rods',
  ]);
});
