import type { Tell } from '../../words/explain.ts';
import { STRATEGY_WORDS } from '../figures/day-words.ts';
import { STRATEGIES } from '../rules/rules.ts';
import type { Charge } from './charge.ts';

/** Tells of each rule, and of the best schedule, what the day came to and from what. */
export function tellCharge({ cars, strategies, optimum }: Charge, tell: Tell): void {
  const need = cars.reduce((sum, car) => sum + car.need, 0);
  const served = cars.filter(({ charger }) => charger !== null).length;
  for (const rule of STRATEGIES) {
    const outcome = strategies[rule];
    if (outcome === undefined) continue;
    tell(() => ({
      find: `energy, ${STRATEGY_WORDS[rule]}`,
      formula:
        'amperes x volts (x root 3 on three lines) x hours of a step, over all cars and steps; amperes as the rule shares what the limits leave',
      values: {
        cars: cars.length,
        'with a cord': served,
        'asked for': `${need} kWh`,
        'cars short': outcome.carsShort,
        'shortest by': `${outcome.worstShort} kWh`,
      },
      result: outcome.energy,
      unit: 'kWh',
      source: 'definition of the rule',
    }));
  }
  if (optimum === null) return;
  tell(() => ({
    find: 'energy, best schedule',
    formula:
      'the most that constant currents in each step give within the limits, by linear programs; the bound is worked from their prices alone',
    values: { bound: `${optimum.energyBound} kWh`, 'left out': optimum.relaxed.join(', ') || 'nothing' },
    result: optimum.energy,
    unit: 'kWh',
    source: 'duality of linear programs',
  }));
}
