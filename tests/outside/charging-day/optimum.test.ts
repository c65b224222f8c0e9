import loadHighs from 'highs';
import { beforeAll, describe, expect, test } from 'vitest';
import { highsProgram } from '../../../calc/day/optimum/highs-program.ts';
import { leastCeiling } from '../../../calc/day/optimum/least-ceiling.ts';
import type { NewLinearProgram } from '../../../calc/day/optimum/linear-program.ts';
import { optimum } from '../../../calc/day/optimum/optimum.ts';
import { simulate } from '../../../calc/day/simulated/simulate.ts';
import { worldOf } from '../../../calc/day/simulated/world.ts';
import { dayOf, INSTANCES } from './instances.ts';

let newProgram: NewLinearProgram;
beforeAll(async () => {
  const highs = await loadHighs();
  newProgram = () => highsProgram(highs);
});

describe('the best schedule', () => {
  test.each(INSTANCES.filter(({ answer }) => answer.optimum !== undefined))('$id', (instance) => {
    const world = worldOf(dayOf(instance));
    const wanted = instance.answer.optimum!;
    const best = optimum(world, newProgram);
    const close = (a: number, b: number, what: string) =>
      expect(Math.abs(a - b) / Math.max(Math.abs(b), 1e-9), `${what} ${a} ${b}`).toBeLessThan(1e-4);
    close(best.energy, wanted.energy, 'energy');
    close(best.energyBound, wanted.energyBound, 'bound');
    if (instance.input.tariff) {
      close(best.cost, wanted.cost, 'cost');
      close(best.costBound, wanted.costBound, 'cost bound');
    }
    expect(best.relaxed).toEqual(wanted.relaxed);
    const search = instance.input.search;
    if (search?.ceiling !== undefined) {
      const unmanaged = simulate(world, 'unmanaged').got;
      const found = leastCeiling(
        world,
        world.input.limits.findIndex(({ id }) => id === search.ceiling),
        unmanaged.map((kwh) => (search.share ?? 1) * kwh),
        newProgram,
      );
      close(found!.ceiling, wanted.ceiling!, 'ceiling');
      close(found!.ceilingBound, wanted.ceilingBound!, 'ceiling bound');
    }
  });
});
