import { describe, expect, test } from 'vitest';
import { STRATEGIES } from '../../../calc/day/rules/rules.ts';
import { outcomeOf } from '../../../calc/day/simulated/outcome.ts';
import { simulate } from '../../../calc/day/simulated/simulate.ts';
import { worldOf } from '../../../calc/day/simulated/world.ts';
import { dayOf, INSTANCES } from './instances.ts';

describe('rules of load management, car by car', () => {
  test.each(INSTANCES)('$id', (instance) => {
    const world = worldOf(dayOf(instance));
    const { cars, strategies } = instance.answer;
    cars.forEach((car, i) => {
      const c = world.charger[i]!;
      expect(c < 0 ? null : world.input.chargers[c]!.id).toBe(car.charger);
      expect(world.input.cars[i]).toMatchObject({ arrive: car.arrive, leave: car.leave, kwh: car.need });
    });
    for (const strategy of STRATEGIES) {
      const { got, peak, ...figures } = outcomeOf(world, simulate(world, strategy));
      const { got: wanted, peak: wantedPeak, ceiling: _, more: __, ...wantedFigures } = strategies[strategy];
      const off = Math.max(...wanted.map((kwh, i) => Math.abs(kwh - got[i]!)));
      expect(off, strategy).toBeLessThan(1e-6);
      for (const [name, value] of Object.entries(wantedFigures))
        expect(Math.abs((figures as Record<string, number>)[name]! - value), `${strategy} ${name}`).toBeLessThan(
          1e-6 * Math.max(1, value) * 10,
        );
      for (const [limit, rows] of Object.entries(wantedPeak ?? {}))
        for (const [row, amps] of Object.entries(rows)) expect(peak[limit]![row], strategy).toBeCloseTo(amps, 5);
    }
  });
});
