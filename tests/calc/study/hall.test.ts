import { describe, expect, test } from 'vitest';
import { plan } from '../../../calc/plan/plan.ts';
import { INVENTED_LIST } from '../../../calc/prices/invented-list.ts';
import type { StudyWay } from '../../../calc/study/shape.ts';
import { study } from '../../../calc/study/study.ts';
import { beats } from '../../../calc/study/unbeaten.ts';
import { readSite } from '../../../routing/site/file/read.ts';
import { writeSite } from '../../../routing/site/file/write.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { hall } from './hall.ts';

/** By plain arithmetic; nothing here is the program's. */
const CHARGERS = 16;
const AMPS = 32;
const VOLTS = 208;
const STAY = 4;
/** Sixteen across two lines each, dealt over three pairs: a line carries sqrt(3) of a third of them. */
const LINE = ((CHARGERS * AMPS) / 3) * Math.sqrt(3);
const CONTINUOUS = 225 * 0.8;
/** Greatest line of chargers dealt over the pairs as evenly as whole ones can be: sqrt(x^2 + y^2 + xy) of the fuller two. */
const greatestLine = (count: number, amps: number): number => {
  const [x, y] = [Math.ceil(count / 3), Math.ceil((count - 1) / 3)];
  return amps * Math.sqrt(x * x + y * y + x * y);
};

const told: string[] = [];
const studied = study(hall(), { prices: INVENTED_LIST, stayHours: STAY, day: null }, ({ says }) => told.push(says));
if (!studied.ok) throw new Error(studied.says);
const made = studied.study;
const of = (mount: string, supply: string, amps = AMPS): StudyWay => {
  const found = made.ways.find((way) => way.mount.startsWith(mount) && way.supply === supply && way.amps === amps);
  if (found === undefined)
    throw new Error(`no way ${mount}, ${supply}, ${amps} A among ${made.ways.map(({ name }) => name).join('\n')}`);
  return found;
};
const ONE = 'Overhead, one';
const equipmentOf = ({ file }: StudyWay, id: string) => toSite(file).equipment.find((one) => one.id === id);

describe('sixteen stalls on 4/0 copper in a full conduit, 225 A at 208 V', () => {
  test('the figures are those of plain arithmetic', () => {
    expect(LINE).toBeCloseTo(295.6, 1);
    expect(CONTINUOUS).toBe(180);
    expect([greatestLine(9, AMPS) <= CONTINUOUS, greatestLine(10, AMPS) <= CONTINUOUS]).toEqual([true, false]);
  });

  test('as it is, all share 180 A, and nine could run at full rate', () => {
    const way = of(ONE, 'F1 as it is, shared limit of 180 A');
    expect(equipmentOf(way, 'P1')?.managedAmps).toBe(180);
    expect(way.figures).toMatchObject({ served: 16, fullRate: 9, trench: 0, fails: 0, roomKva: 0 });
    // What a car gets: the lines as full as they may be, its share of the fuller pair, for the stay.
    const share = (AMPS * CONTINUOUS) / greatestLine(CHARGERS, AMPS);
    expect(way.figures.energy).toBeCloseTo((share * VOLTS * STAY) / 1000, 1);
    expect(plan(toSite(way.file)).findings.filter(({ severity }) => severity === 'fail')).toEqual([]);
  });

  test('nine alone run at full rate without a limit', () => {
    const way = of(ONE, 'F1 as it is, only 9 chargers');
    const site = toSite(way.file);
    expect(site.chargers).toHaveLength(9);
    expect(equipmentOf(way, 'P1')?.managedAmps).toBeUndefined();
    expect(way.figures).toMatchObject({ served: 9, fullRate: 9 });
    const amps = plan(site).supply.equipment.find(({ id }) => id === 'P1')!.amps;
    expect(Math.max(amps.A, amps.B, amps.C)).toBeCloseTo(greatestLine(9, AMPS), 0);
    // Energy over all sixteen cars that come.
    expect(way.figures.energy).toBeCloseTo((9 * AMPS * VOLTS * STAY) / 1000 / CHARGERS, 1);
  });

  test('raised to 480 V all run at full rate, at 128 A and 112.5 kVA loaded to 95 %, or 150 kVA with room', () => {
    const kva = (CHARGERS * AMPS * VOLTS) / 1000;
    expect((kva * 1000) / (480 * Math.sqrt(3))).toBeCloseTo(128, 0);
    expect((100 * kva) / 112.5).toBeCloseTo(95, 0);
    for (const rated of [112.5, 150]) {
      const way = of(ONE, `F1 at 480 V, ${rated} kVA apart`);
      expect(way.figures).toMatchObject({ served: 16, fullRate: 16, trench: 0, fails: 0 });
      expect(way.figures.energy).toBeCloseTo((AMPS * VOLTS * STAY) / 1000, 1);
      const { supply } = plan(toSite(way.file));
      const [transformer] = supply.transformers;
      expect(transformer?.kva).toBe(rated);
      // At the volts that the windings leave, a few percent under nominal; the pulled line is a little over the mean.
      expect(transformer!.loadKva).toBeGreaterThan(0.95 * kva);
      expect(transformer!.loadKva).toBeLessThanOrEqual(kva * 1.001);
      const lines = Object.values(supply.feeders.find(({ id }) => id === 'F1')!.amps) as number[];
      const [a, b, c] = lines as [number, number, number];
      expect((a + b + c) / 3).toBeGreaterThan(120);
      expect((a + b + c) / 3).toBeLessThan(134);
      // Left on the feeder at 480 V, by its greatest line.
      expect(way.figures.roomKva).toBeGreaterThan(30);
      expect(way.figures.roomKva).toBeLessThan(((CONTINUOUS - 128) * 480 * Math.sqrt(3)) / 1000);
    }
    const [tight, roomy] = [112.5, 150].map((rated) => of(ONE, `F1 at 480 V, ${rated} kVA apart`));
    expect(roomy!.figures.spareAmps!).toBeGreaterThan(tight!.figures.spareAmps!);
    expect(roomy!.figures.price!).toBeGreaterThan(tight!.figures.price!);
    // In one assembly there is no conduit between board and transformer: it costs less.
    const inBoard = of(ONE, 'F1 at 480 V, 112.5 kVA in the board');
    expect(inBoard.figures.price!).toBeLessThan(tight!.figures.price!);
    expect(toSite(inBoard.file).feeders.find(({ from }) => from === 'T1')).toMatchObject({ to: 'P1', length: 2 });
    // With room for 40 A chargers: 133 of 150 kVA, 160 of 180 A.
    expect((CHARGERS * 40 * VOLTS) / 1000).toBeLessThan(150);
    expect(of(ONE, 'F1 at 480 V, 150 kVA apart', 40).figures.fullRate).toBe(16);
  });

  test('each way says what its supply carries: 296 A dealt evenly under 180 A, 128 A at 480 V, the transformer at 95 %', () => {
    const says = (supply: string): string => of(ONE, supply).says.join(' ');
    const shared = says('F1 as it is, shared limit of 180 A');
    expect(shared).toContain(`All 16 chargers of P1 at full rate would draw ${Math.round(greatestLine(16, AMPS))} A`);
    expect(shared).toContain('(296 A were they dealt evenly); its limit is 180 A.');
    const tight = says('F1 at 480 V, 112.5 kVA apart');
    const [, percent, kva] = /T1 is loaded to (\d+)%: ([\d.]+) of 112.5 kVA/.exec(tight)!;
    // At the volts that are left behind the windings: a few percent less than by nominal.
    expect(Number(percent)).toBeGreaterThan(90);
    expect(Number(percent)).toBeLessThanOrEqual(95);
    expect(Number(kva)).toBeCloseTo((112.5 * Number(percent)) / 100, -1);
    const [, amps] = /F1 carries (\d+) A on its busiest line, all chargers on, of the 180 A/.exec(tight)!;
    expect(Math.abs(Number(amps) - 128)).toBeLessThanOrEqual(8);
    const [, room] = /T1 is loaded to (\d+)%: [\d.]+ of 150 kVA/.exec(says('F1 at 480 V, 150 kVA apart'))!;
    expect(Math.abs(Number(room) - 71)).toBeLessThanOrEqual(3);
  });

  test('smaller chargers all run at full rate as it is', () => {
    expect(greatestLine(CHARGERS, 16)).toBeLessThan(CONTINUOUS);
    expect(greatestLine(CHARGERS, 24)).toBeGreaterThan(CONTINUOUS);
    const way = of(ONE, 'F1 as it is', 16);
    expect(way.figures).toMatchObject({ served: 16, fullRate: 16 });
    expect(way.figures.energy).toBeCloseTo((16 * VOLTS * STAY) / 1000, 1);
  });

  test('a new feeder runs all at full rate in a trench of its own; more than the service carries cannot be', () => {
    const way = of(ONE, 'new feeder, one board');
    // 125 % of the greatest line at the next standard rating.
    expect(1.25 * greatestLine(CHARGERS, AMPS)).toBeLessThan(400);
    expect(toSite(way.file).feeders.find(({ to }) => to === 'P1')).toMatchObject({ from: 'SE1', breakerAmps: 400 });
    expect(way.figures.fullRate).toBe(16);
    // From one entry to the other, the straight way being 104 ft.
    expect(way.figures.trench).toBeGreaterThanOrEqual(104);
    expect(1.25 * greatestLine(CHARGERS, 48)).toBeGreaterThan(400);
    expect(made.cannot.find(({ name }) => name.includes('48 A'))?.says).toContain('F0');
    expect(of(ONE, 'new feeders, panels as proposed').figures.fullRate).toBe(16);
  });

  test('new feeders of aluminum are ways beside those of copper: at the same place, told with their drop, and cheaper by this list', () => {
    for (const [copper, aluminum] of [
      ['new feeder, one board', 'new feeder of aluminum, one board'],
      ['new feeders, panels as proposed', 'new feeders of aluminum, panels as proposed'],
    ] as const) {
      const [of1, of2] = [of(ONE, copper), of(ONE, aluminum)];
      const fresh = toSite(of2.file).feeders.filter(({ existing }) => existing !== true);
      expect(fresh.map(({ conductor }) => conductor.metal)).toEqual(fresh.map(() => 'aluminum'));
      expect(of2.figures).toMatchObject({ served: 16, fullRate: 16, fails: 0 });
      expect(of2.figures.price!).toBeLessThan(of1.figures.price!);
      expect(of2.says.join(' ')).toContain('of aluminum: every terminal');
      const stands = toSite(of2.file).feeders.filter(({ existing }) => existing === true);
      expect(stands.every(({ conductor }) => conductor.metal === 'copper')).toBe(true);
    }
  });

  test('pedestals one-sided and two-sided, with trench, cost more and close stalls for longer', () => {
    const overhead = of(ONE, 'F1 as it is, shared limit of 180 A');
    const [one, two] = ['Pedestals, one', 'Pedestals, two'].map((mount) =>
      of(mount, 'F1 as it is, shared limit of 180 A'),
    );
    expect(toSite(one!.file).drops).toHaveLength(16);
    expect(toSite(two!.file).drops).toHaveLength(8);
    for (const way of [one!, two!]) {
      expect(way.figures.served).toBe(16);
      expect(way.figures.trench).toBeGreaterThan(72);
      expect(way.figures.price!).toBeGreaterThan(overhead.figures.price!);
      expect(way.figures.stallDays!).toBeGreaterThan(overhead.figures.stallDays!);
    }
  });
});

describe('a study', () => {
  test('has no failing finding that is not forced', () => {
    for (const { name, file, forced } of made.ways) {
      const fails = plan(toSite(file)).findings.filter(({ severity }) => severity === 'fail');
      expect([name, fails.length]).toEqual([name, forced.length]);
    }
    // This lot forces none.
    expect(made.ways.flatMap(({ forced }) => forced)).toEqual([]);
  });

  test('marks those that nothing beats, and gives what beats each other one', () => {
    expect(made.unbeaten.size).toBeGreaterThan(3);
    for (const { id, figures } of made.ways)
      expect(made.ways.some((other) => beats(other.figures, figures))).toBe(!made.unbeaten.has(id));
  });

  test('looked at more than it drew, and says what it left out', () => {
    expect(made.looked).toBeGreaterThan(made.ways.length + made.cannot.length);
    expect(made.ways.length).toBeLessThanOrEqual(30);
    expect(made.leftOut.length).toBeGreaterThan(0);
    expect(told.length).toBeGreaterThan(made.ways.length);
  });

  test('is of sites that open again as they are', () => {
    for (const { file } of made.ways) {
      const read = readSite(writeSite(file));
      expect(read.ok ? read.file : read.errors).toEqual(file);
    }
  });

  test('needs stalls and something that feeds, and is bounded', () => {
    const says = (more: object): string => {
      const none = study({ ...hall(), ...more }, { prices: INVENTED_LIST, stayHours: STAY, day: null });
      return none.ok ? '' : none.says;
    };
    expect(says({ stalls: [] })).toContain('stall');
    expect(says({ equipment: [], feeders: [] })).toContain('equipment');
    const [first] = hall().stalls!;
    expect(says({ stalls: Array.from({ length: 601 }, (_, i) => ({ ...first!, id: `X${i}` })) })).toContain('600');
  });
});
