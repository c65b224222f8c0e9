import type { DayInput } from '../../../calc/day/day-input.ts';
import type { BestNews, BestRequest } from '../../../web/tables/day/best/best-request.ts';

/** What the page's own worker took for a day, milliseconds from its start, solver and all. */
export interface WorkerTimes {
  /** Until the energy was certified to one part in ten thousand. */
  readonly certified: number;
  readonly whole: number;
  readonly energy: number;
  readonly energyBound: number;
}

const CERTIFIED = 1e-4;

/** A day asked of a new worker, as the page does when it is told to look for the best. */
const askBest = (input: DayInput): Promise<WorkerTimes> =>
  new Promise((resolve, reject) => {
    const from = performance.now();
    let certified = Number.POSITIVE_INFINITY;
    const worker = new Worker(new URL('../../../web/tables/day/best/best-worker.ts', import.meta.url), {
      type: 'module',
    });
    worker.onerror = () => reject(new Error('the worker was not loaded'));
    worker.onmessage = ({ data }: MessageEvent<BestNews>) => {
      const ms = performance.now() - from;
      if (data.kind === 'doing') {
        if (data.what === 'energy' && data.gap <= CERTIFIED) certified = Math.min(certified, ms);
        return;
      }
      worker.terminate();
      if (data.kind === 'failed') reject(new Error(data.says));
      else resolve({ certified, whole: ms, energy: data.best.energy, energyBound: data.best.energyBound });
    };
    const request: BestRequest = { input, limit: null };
    worker.postMessage(request);
  });
export type AskBest = typeof askBest;

Object.assign(window, { askBest });
