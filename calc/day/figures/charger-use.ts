import { kept } from '../../../routing/kept/kept.ts';
import type { DayInput } from '../day-input.ts';
import type { Strategy } from '../rules/rules.ts';
import { simulate } from '../simulated/simulate.ts';
import { worldOf } from '../simulated/world.ts';
import { energyPrices } from './cost.ts';

/** What a charger gives on such a day, and over a billing period. */
export interface ChargerUse {
  readonly charger: string;
  readonly cars: number;
  /** Kilowatt-hours of a day, and of a period of such days. */
  readonly energy: number;
  readonly periodEnergy: number;
  /** Money for the energy of a period at the price of each hour, without demand; null where there is no tariff. */
  readonly cost: number | null;
}

/** The energy that each charger meters under a rule, and its cost by the tariff's energy prices. Kept. */
export const chargerUse = kept((input: DayInput, strategy: Strategy): readonly ChargerUse[] => {
  const world = worldOf(input);
  const { amps } = simulate(world, strategy, { keepAmps: true });
  const { tariff, chargers } = input;
  const prices = tariff === null ? null : energyPrices(world.window, tariff);
  const uses = chargers.map(() => ({ cars: 0, energy: 0, cost: 0 }));
  amps!.forEach((steps, car) => {
    const use = uses[world.charger[car]!];
    if (use === undefined) return;
    use.cars++;
    steps.forEach((current, step) => {
      const kwh = current * world.kwh[car]!;
      use.energy += kwh;
      use.cost += kwh * (prices?.[step] ?? 0);
    });
  });
  const days = tariff?.days ?? 1;
  return uses.map(({ cars, energy, cost }, c) => ({
    charger: chargers[c]!.id,
    cars,
    energy,
    periodEnergy: days * energy,
    cost: tariff === null ? null : days * cost,
  }));
});
