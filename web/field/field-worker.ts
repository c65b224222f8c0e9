import { deviationOf } from '../../calc/field/cures.ts';
import { toleranceSteps } from '../../calc/field/tolerance.ts';
import type { Site } from '../../routing/site/site.ts';
import { toSite } from '../../routing/site/to-site.ts';
import type { FieldAsk, FieldNews, FieldRequest } from './field-request.ts';

/** Plans away from the page, way by way, so that it can be told to stop. */
const here = self as unknown as DedicatedWorkerGlobalScope;
const post = (news: FieldNews): void => here.postMessage(news);
const pause = (): Promise<void> => new Promise((resolve) => setTimeout(resolve));

const open = new Set<number>();
let site: Site | null = null;

here.onmessage = ({ data }: MessageEvent<FieldRequest>) => {
  if ('stop' in data) {
    open.delete(data.stop);
    return;
  }
  if (data.file) site = toSite(data.file);
  if (!site) return;
  open.add(data.number);
  void answer(site, data.number, data.ask);
};

async function answer(asked: Site, number: number, ask: FieldAsk): Promise<void> {
  // What was asked just before may be called off by the next word already.
  await pause();
  if (!open.has(number)) return;
  if (ask.kind === 'deviation') post({ number, deviation: deviationOf(asked, ask.drop, ask.prices) });
  else {
    const steps = toleranceSteps(asked, ask.point);
    while (open.has(number)) {
      const { done, value } = steps.next();
      if (done) {
        post({ number, room: value });
        break;
      }
      post({ number, share: value });
      await pause();
    }
  }
  open.delete(number);
}
