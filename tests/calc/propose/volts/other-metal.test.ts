import { expect, test } from 'vitest';
import { plan } from '../../../../calc/plan/plan.ts';
import { INVENTED_LIST } from '../../../../calc/prices/invented-list.ts';
import { bidOfRows } from '../../../../calc/propose/bid-worth.ts';
import { dropsPart } from '../../../../calc/propose/drops/drops-part.ts';
import { equipmentPart } from '../../../../calc/propose/panels/equipment-part.ts';
import { inTheGround } from '../../../../calc/propose/panels/panel-source.ts';
import { inMetal, otherMetalWords } from '../../../../calc/propose/volts/other-metal.ts';
import { type Whole, wholeOf } from '../../../../calc/propose/whole.ts';
import type { SiteFile } from '../../../../routing/site/site.ts';
import { toSite } from '../../../../routing/site/to-site.ts';
import { doubleRows } from '../hand/lots.ts';
import { failing } from '../propose-parts.ts';

const ground = doubleRows({ along: 8, canopies: 1, volts: 208, away: 240 });

function laid(metal: 'copper' | 'aluminum'): Whole {
  const { file: hung, cords } = dropsPart(ground, 1);
  const way = equipmentPart(hung, { prices: INVENTED_LIST, cords, shape: { more: 0, isShared: true, metal } });
  return wholeOf(
    { file: ground, had: [], way, cords, prices: INVENTED_LIST },
    { isBounded: false, answers: 0, isSearched: false },
    () => {},
    () => true,
  );
}

const bid = (file: SiteFile): number => bidOfRows(plan(toSite(file)).takeoff, INVENTED_LIST);
const worst = (file: SiteFile): number =>
  Math.max(...plan(toSite(file)).circuits.map(({ worstDropPercent }) => worstDropPercent));

test('a proposal draws its feeders of the metal of the rules, and says what the other metal would come to', () => {
  const { file } = laid('copper');
  expect(file.feeders!.every(({ conductor }) => conductor.metal === 'copper')).toBe(true);
  const [says, ...more] = otherMetalWords(ground, file, INVENTED_LIST);
  expect(more).toEqual([]);
  const [, saved, then, now] = /about \$([\d,]+) less, the worst drop ([\d.]+)% in place of ([\d.]+)%/.exec(says!)!;
  expect(says).toContain('marked for aluminum');
  expect(Number(now)).toBeCloseTo(worst(file), 1);
  // The same lot with the feeders drawn so by hand, as their breakers ask for.
  const drawn = inMetal(file, new Set(file.feeders!.map(({ id }) => id)), 'aluminum');
  expect(Number(then)).toBeLessThanOrEqual(worst(drawn) + 0.05);
  const dollars = Number(saved!.replaceAll(',', ''));
  expect(dollars).toBeGreaterThan(1000);
  // What holding the drop adds comes off it.
  expect(dollars).toBeLessThanOrEqual(Math.round(bid(file) - bid(drawn)) + 1);
});

test('asked for, they are of aluminum, fail in nothing, and cost less by this list; branches stay of copper', () => {
  const [copper, aluminum] = [laid('copper'), laid('aluminum')];
  expect(failing(aluminum.file)).toEqual([]);
  expect(aluminum.file.feeders!.every(({ conductor }) => conductor.metal === 'aluminum')).toBe(true);
  expect(toSite(aluminum.file).rules.metal).toBe('copper');
  expect(aluminum.dollars).toBeLessThan(copper.dollars);
});

test('conductors of aluminum carry their breaker by the table, and are no smaller than 1/0', () => {
  const { rules } = toSite(ground);
  // Table of ampacities at 75 °C, aluminum: 1/0 120 A, 4/0 180 A, 250 kcmil 205 A, 300 kcmil 230 A, 500 kcmil 310 A.
  expect(inTheGround(rules, 100, 'aluminum')).toMatchObject({ size: '1/0', metal: 'aluminum', sets: 1 });
  expect(inTheGround(rules, 225, 'aluminum')).toMatchObject({ size: '300', sets: 1 });
  expect(inTheGround(rules, 300, 'aluminum')).toMatchObject({ size: '500', sets: 1 });
  expect(inTheGround(rules, 225)).toMatchObject({ size: '4/0', metal: 'copper', sets: 1 });
});
