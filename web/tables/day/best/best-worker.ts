import loadHighs from 'highs';
import wasm from 'highs/runtime?url';
import { highsProgram } from '../../../../calc/day/optimum/highs-program.ts';
import { STRATEGIES } from '../../../../calc/day/rules/rules.ts';
import { charge } from '../../../../calc/day/simulated/charge.ts';
import { scheduleLoad } from '../../../../calc/day/simulated/schedule-load.ts';
import type { BestNews, BestRequest } from './best-request.ts';

/** Looks for the best schedule away from the page, which ends this worker when it is told to stop. */
const here = self as unknown as DedicatedWorkerGlobalScope;
here.onmessage = async ({ data: { input, limit } }: MessageEvent<BestRequest>) => {
  const post = (news: BestNews): void => here.postMessage(news);
  try {
    const highs = await loadHighs({ locateFile: () => wasm });
    const wish = {
      strategies: STRATEGIES,
      optimum: true,
      amps: false,
      search: { share: 1, more: false, ...(limit !== null && { ceiling: limit }) },
    };
    const { strategies, optimum } = charge(
      input,
      wish,
      () => highsProgram(highs),
      (what, round, gap) => post({ kind: 'doing', what, round, gap }),
    );
    const ceilings = Object.fromEntries(STRATEGIES.map((name) => [name, strategies[name]?.ceiling ?? null]));
    post({
      kind: 'done',
      best: {
        energy: optimum!.energy,
        energyBound: optimum!.energyBound,
        ceiling: optimum!.ceiling ?? null,
        ceilings,
        relaxed: optimum!.relaxed,
        ...scheduleLoad(
          input,
          optimum!.amps!,
          input.limits.findIndex(({ id }) => id === limit),
        ),
      },
    });
  } catch (error) {
    post({ kind: 'failed', says: error instanceof Error ? error.message : String(error) });
  }
};
