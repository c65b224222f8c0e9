import loadHighs from 'highs';
import { beforeAll, describe, expect, test } from 'vitest';
import { canMeet } from '../../../calc/day/optimum/can-meet.ts';
import { highsProgram } from '../../../calc/day/optimum/highs-program.ts';
import type { NewLinearProgram } from '../../../calc/day/optimum/linear-program.ts';
import { ceilingOfRule, moreUnderRule, mostCopies, targetsOf } from '../../../calc/day/rules/rule-search.ts';
import { STRATEGIES } from '../../../calc/day/rules/rules.ts';
import { simulate } from '../../../calc/day/simulated/simulate.ts';
import { worldOf } from '../../../calc/day/simulated/world.ts';
import { dayOf, INSTANCES } from './instances.ts';

let newProgram: NewLinearProgram;
beforeAll(async () => {
  const highs = await loadHighs();
  newProgram = () => highsProgram(highs);
});

describe('least ceilings and added chargers of each rule', () => {
  test.each(INSTANCES.filter(({ input }) => input.search?.ceiling !== undefined || input.search?.more))(
    '$id',
    (instance) => {
      const world = worldOf(dayOf(instance));
      const { ceiling, share = 1, more } = instance.input.search!;
      const unmanaged = simulate(world, 'unmanaged');
      const limit = world.input.limits.findIndex(({ id }) => id === ceiling);
      for (const strategy of STRATEGIES.slice(1)) {
        const wanted = instance.answer.strategies[strategy];
        if (limit >= 0)
          expect(
            ceilingOfRule(world, limit, strategy, targetsOf(unmanaged, share), {
              unmanaged,
              leastOfAny: instance.answer.optimum!.ceiling!,
            }),
            strategy,
          ).toBe(wanted.ceiling);
        if (more) expect(moreUnderRule(world, strategy, share), `${strategy} more`).toBe(wanted.more);
      }
      if (more)
        expect(
          mostCopies(world, (copied) => canMeet(copied, targetsOf(simulate(copied, 'unmanaged'), share), newProgram)),
        ).toBe(instance.answer.optimum!.more);
    },
  );
});
