import { describe, expect, test } from 'vitest';
import { ceilingsOfAll, decidingDay, decidingFigures, decidingWords } from '../../../calc/day/figures/deciding-day.ts';
import { alternativeOf } from '../../../calc/plan/compared/alternative.ts';
import { comparison } from '../../../calc/plan/compared/comparison.ts';
import { INVENTED_LIST } from '../../../calc/prices/invented-list.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { managedLot } from './managed-lot.ts';

const day = (id: string, kwh: readonly number[]) => ({
  id,
  from: '08:00',
  to: '12:00',
  cars: kwh.map((one) => ({ arrive: '08:00', leave: '12:00', kwh: one })),
});
/** Two 32 A chargers at 208 V on lines of a panel: four hours give each 26.6 kWh at most. */
const lot = (managedAmps: number, ...days: ReturnType<typeof day>[]) => {
  const file = managedLot({ days });
  return toSite({
    ...file,
    equipment: file.equipment!.map((one) => (one.id === 'P1' ? { ...one, managedAmps } : one)),
  });
};
const easy = day('easy', [4, 4]);
const hard = day('hard', [26, 26]);

describe('the day that decides', () => {
  test('is the hardest of all, whatever its place, unless one is named', () => {
    const site = lot(20, easy, hard);
    expect(decidingFigures(site, { id: 'easy', of: 2, isChosen: false })!.carsShort).toBe(0);
    expect(decidingFigures(site, { id: 'hard', of: 2, isChosen: false })!.carsShort).toBeGreaterThan(0);
    expect(decidingDay([site], null)).toEqual({ id: 'hard', of: 2, isChosen: false });
    expect(decidingDay([lot(20, hard, easy)], null)!.id).toBe('hard');
    expect(decidingDay([site], 'easy')).toEqual({ id: 'easy', of: 2, isChosen: true });
    expect(decidingDay([site], 'gone')!.id).toBe('hard');
    expect(decidingDay([lot(20)], null)).toBeNull();
  });

  test('where nobody is short it is the one with the higher peak', () => {
    expect(decidingDay([lot(90, day('one', [12]), day('full', [12, 12]))], null)!.id).toBe('full');
  });

  test('is one for all that are compared, and is named where there are several', () => {
    const of = (name: string, site: ReturnType<typeof lot>) => alternativeOf(name, site, INVENTED_LIST);
    const both = [of('a', lot(90, easy, hard)), of('b', lot(20, easy, hard))];
    const short = (wanted: string | null) =>
      comparison(both, wanted).find(({ fact }) => fact.startsWith('cars short on the charging day'))!;
    expect(short(null).fact).toBe('cars short on the charging day (hard, the hardest of 2 days)');
    expect(short(null).values[0]).toBe(0);
    expect(short(null).values[1]).toBeGreaterThan(0);
    expect(short('easy').fact).toBe('cars short on the charging day (easy, chosen of 2 days)');
    expect(short('easy').values).toEqual([0, 0]);
    expect(decidingWords({ id: 'hard', of: 1, isChosen: false })).toBeNull();
  });

  test('ceilings of all days are the largest of each', () => {
    const figures = (id: string) => decidingFigures(lot(90, easy, hard), { id, of: 2, isChosen: true })!;
    const [small] = figures('easy').ceilings;
    const [large] = figures('hard').ceilings;
    expect(large!.least!).toBeGreaterThan(small!.least!);
    expect(ceilingsOfAll([figures('hard'), figures('easy')])).toEqual([large]);
    expect(ceilingsOfAll([{ ...figures('easy'), ceilings: [{ limit: 'P1', least: null }] }, figures('hard')])).toEqual([
      { limit: 'P1', least: null },
    ]);
  });
});
