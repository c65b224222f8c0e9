import { describe, expect, test } from 'vitest';
import { dayFigures } from '../../../calc/day/figures/day-figures.ts';
import { plan } from '../../../calc/plan/plan.ts';
import { INVENTED_LIST } from '../../../calc/prices/invented-list.ts';
import { type LoadWish, lineShare } from '../../../calc/propose/panels/charger-amps.ts';
import { readLoad } from '../../../calc/propose/panels/read-load.ts';
import { propose } from '../../../calc/propose/propose.ts';
import { costOf } from '../../../calc/takeoff/bid/cost.ts';
import type { SiteFile } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { libraryLot } from '../../bench/samples/library-lot.ts';
import { doubleRows } from './hand/lots.ts';
import { FEW_ANSWERS } from './propose-parts.ts';

const LOT = doubleRows({ along: 5, canopies: 1, volts: 208, away: 40 });
const proposed = (file: SiteFile, load: LoadWish) =>
  propose(file, { what: 'all', cordsADrop: 1, prices: INVENTED_LIST, load, answers: FEW_ANSWERS });
const boards = ({ equipment = [] }: SiteFile) => equipment.filter(({ kind }) => kind === 'panelboard');
const fails = (file: SiteFile) => plan(toSite(file)).findings.filter(({ severity }) => severity === 'fail');
const costIn = (file: SiteFile): number => costOf(plan(toSite(file)).takeoff, INVENTED_LIST, 0).cost;

test('a line carries its two pairs 60 degrees apart: the greatest of three by phasors', () => {
  for (let n = 0; n <= 30; n++) {
    const pairs = [0, 0, 0].map((_, k) => Math.floor(n / 3) + (k < n % 3 ? 1 : 0));
    // Currents of AB, BC and CA at 0, -120 and 120 degrees; a line has that of one pair less that of the other.
    const at = pairs.map((amps, k) => {
      const turn = ([0, -120, 120][k]! * Math.PI) / 180;
      return [amps * Math.cos(turn), amps * Math.sin(turn)] as const;
    });
    const lines = [0, 1, 2].map((k) => {
      const [one, other] = [at[k]!, at[(k + 2) % 3]!];
      return Math.hypot(one[0] - other[0], one[1] - other[1]);
    });
    expect(lineShare(n)).toBeCloseTo(Math.max(...lines), 9);
  }
});

describe('load management of a lot of ten', () => {
  const full = proposed(LOT, { kind: 'full' });

  test('a ceiling is dealt to the panels, mains carry 125 % of it, and it is told what it saves', () => {
    const { file, parts } = proposed(LOT, { kind: 'ceiling', amps: 120 });
    const held = boards(file);
    expect(held.reduce((sum, { managedAmps = 1e9 }) => sum + managedAmps, 0)).toBeLessThanOrEqual(120);
    for (const { mainAmps, managedAmps } of held) expect(mainAmps).toBeGreaterThanOrEqual(1.25 * managedAmps!);
    expect(fails(file)).toEqual([]);
    expect(costIn(file)).toBeLessThan(costIn(full.file));
    expect(parts[1]!.says.join(' ')).toMatch(/Under a ceiling of 120 A .* It saves about \$\d+/);
  });

  test('energy in a stay is what every charger gives with all of them on', () => {
    const { file, parts } = proposed(LOT, { kind: 'energy', kwh: 24, hours: 8 });
    for (const { id, managedAmps } of boards(file)) {
      const own = file.chargers!.filter(({ from }) => from === id).length;
      // 208 V between two lines, for eight hours.
      expect(((managedAmps! / lineShare(own)) * 208 * 8) / 1000).toBeGreaterThanOrEqual(24);
    }
    expect(fails(file)).toEqual([]);
    expect(parts[1]!.says.join(' ')).toContain('For 24 kWh in 8 h for each car');
    expect(full.parts[1]!.says).toContain('All chargers run at full rate at once.');
  });
});

test('by the charging day of a lot no car is short, with smaller mains than at full rate', () => {
  const { drops, chargers, raceways, pullpoints, feeders, loads, asBuilt, ...rest } = libraryLot();
  const ground: SiteFile = { ...rest, equipment: rest.equipment!.filter(({ kind }) => kind === 'source') };
  const { file } = proposed(ground, { kind: 'day' });
  expect(dayFigures(toSite(file)).map(({ carsShort }) => carsShort)).toEqual([0]);
  const amps = boards(file).reduce((sum, { mainAmps = 0 }) => sum + mainAmps, 0);
  // 16 chargers of 7,200 VA: 413 A at 125 %, 450 A the next standard rating.
  expect(amps).toBeLessThan(450);
  expect(fails(file)).toEqual([]);
});

test('what the site forces to fail is told with what forces it', () => {
  const service: NonNullable<SiteFile['equipment']>[number] = {
    id: 'SE',
    kind: 'service',
    at: [-30, 0],
    size: [4, 2, 7],
    entry: [-30, 0, 2],
    volts: 208,
    phases: 3,
    busAmps: 100,
    mainAmps: 100,
  };
  const { file, parts } = proposed({ ...LOT, equipment: [service] }, { kind: 'full' });
  expect(fails(file).length).toBeGreaterThan(0);
  const told = parts[1]!.says.filter((one) => one.startsWith('Forced: '));
  expect(told.join(' ')).toContain('SE stands with a rating of less than is asked of it');
  // Held under the service it fails nothing, and nothing is told to be forced.
  const held = proposed({ ...LOT, equipment: [service] }, { kind: 'ceiling', amps: 80 });
  expect(fails(held.file)).toEqual([]);
  expect(held.parts[1]!.says.join(' ')).not.toContain('Forced');
});

test.each([
  ['full', { kind: 'full' }],
  ['20 kWh / 8 h', { kind: 'energy', kwh: 20, hours: 8 }],
  ['180a', { kind: 'ceiling', amps: 180 }],
  ['day', { kind: 'day' }],
] as const)('%s is read', (words, load) => {
  expect(readLoad(words)).toEqual({ ok: true, load });
});

test.each([
  // 32 A at 208 V is 6.656 kW.
  ['60kWh/8h', /no more than 53\.2 kWh in 8 h/],
  ['0A', /over 0 A/],
  ['20kWh/0h', /more than 0/],
  ['half', /expected full, day/],
] as const)('%s is refused', (words, says) => {
  expect(readLoad(words)).toMatchObject({ ok: false, says: expect.stringMatching(says) });
});
