import { expect, test } from 'vitest';
import { plan } from '../../../../calc/plan/plan.ts';
import { INVENTED_LIST } from '../../../../calc/prices/invented-list.ts';
import { bidOfRows } from '../../../../calc/propose/bid-worth.ts';
import { dropsPart } from '../../../../calc/propose/drops/drops-part.ts';
import { equipmentPart } from '../../../../calc/propose/panels/equipment-part.ts';
import { propose } from '../../../../calc/propose/propose.ts';
import { wholeOf } from '../../../../calc/propose/whole.ts';
import type { SiteFile } from '../../../../routing/site/site.ts';
import { toSite } from '../../../../routing/site/to-site.ts';
import { failing } from '../propose-parts.ts';
import { HANDS } from './hands.ts';
import { doubleRows } from './lots.ts';

const prices = INVENTED_LIST;
const dollars = (file: SiteFile): number => bidOfRows(plan(toSite(file)).takeoff, prices);
const proposed = (file: SiteFile, cordsADrop: number): SiteFile =>
  propose(file, { what: 'all', cordsADrop, prices, answers: 0 }).file;

/** Panels where straight feet put them, and routes by a price a foot. */
function byFeet(file: SiteFile, cordsADrop: number): number {
  const { file: hung, cords } = dropsPart(file, cordsADrop);
  const way = equipmentPart(hung, { prices, cords });
  const whole = wholeOf(
    { file, had: [], way, cords, prices },
    { answers: 0 },
    () => {},
    () => true,
  );
  expect(whole.fails).toBe(0);
  return whole.dollars;
}

test('24 stalls: a panel that is moved by hand, with its raceways proposed anew, comes to no less', () => {
  const { ground } = HANDS['24']();
  const file = proposed(ground, 1);
  const own = dollars(file);
  expect(failing(file)).toEqual([]);
  expect(own).toBeLessThan(byFeet(ground, 1) * 0.997);
  const [, panel] = file.equipment!;
  for (const [dx, dy] of [
    [6, 0],
    [-6, 0],
    [3, 0],
    [0, 6],
    [0, -6],
  ] as const) {
    const moved = {
      ...panel!,
      at: [panel!.at[0] + dx, panel!.at[1] + dy] as const,
      entry: [panel!.entry[0] + dx, panel!.entry[1] + dy, panel!.entry[2]] as const,
    };
    const bare: SiteFile = { ...file, equipment: [file.equipment![0]!, moved], raceways: [], pullpoints: [] };
    const next = propose(bare, { what: 'raceways', cordsADrop: 1, prices, answers: 0 }).file;
    if (failing(next).length === 0) expect(dollars(next)).toBeGreaterThan(own * 0.9995);
  }
}, 240_000);

/** What a careful hand came to with two cords a drop, panels by straight feet but for one that it stood 6 ft nearer: by the invented list. */
const HAND_102 = 553_589;

test('102 stalls with two cords a drop come to no more than a hand that moved one panel', () => {
  const ground = doubleRows({ along: 17, canopies: 3, volts: 208, away: 40 });
  const file = proposed(ground, 2);
  expect(failing(file)).toEqual([]);
  expect(file.chargers).toHaveLength(102);
  expect(dollars(file)).toBeLessThan(HAND_102);
}, 240_000);
