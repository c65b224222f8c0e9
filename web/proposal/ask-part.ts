import { failureWords } from '../words/failure-words.ts';
import type { PartNews, PartRequest } from './part-request.ts';

/** What came of drawing a part of a lot again. */
export type PartOutcome = Exclude<PartNews, { kind: 'doing' }>;

/** Has a part of a lot drawn again by a worker of its own. Returns how to stop it, after which nothing is heard. */
export function askPart(
  request: PartRequest,
  hear: (made: PartOutcome) => void,
  tell: (done: number, of: number) => void = () => {},
): () => void {
  const worker = new Worker(new URL('./part-worker.ts', import.meta.url), { type: 'module' });
  worker.onmessage = ({ data }: MessageEvent<PartNews>) => {
    if (data.kind === 'doing') return tell(data.done, data.of);
    worker.terminate();
    hear(data);
  };
  worker.onerror = ({ message }) => {
    worker.terminate();
    // Without words it is the worker's own file that did not come.
    hear({
      kind: 'none',
      says: `It could not be worked out: ${failureWords(new Error(message || 'module script failed'))}`,
    });
  };
  worker.postMessage(request);
  return () => worker.terminate();
}
