import { useStore } from 'zustand';
import { createStore } from 'zustand/vanilla';
import type { Study, StudyWish } from '../../calc/study/shape.ts';
import type { StudyDoing } from '../../calc/study/study.ts';
import type { SiteFile } from '../../routing/site/site.ts';
import { counted } from '../../routing/words/counted.ts';
import type { DocumentStore } from '../document/store.ts';
import { beginWork, endWork, type TellWork, workStore } from '../long-work/work-store.ts';
import type { StudyNews, StudyRequest } from './study-request.ts';

interface Studies {
  /** What is being worked on; null while nothing is. */
  readonly doing: StudyDoing | null;
  /** The ways that are done, of the file that they were asked for; kept when the rest is stopped. */
  readonly study: Study | null;
  readonly file: SiteFile | null;
  readonly isStopped: boolean;
  readonly fault: string;
}

const IDLE: Studies = { doing: null, study: null, file: null, isStopped: false, fault: '' };

export const studyStore = createStore<Studies>(() => IDLE);

export const useStudies = <T>(choose: (state: Studies) => T): T => useStore(studyStore, choose);

/** What the work is called where long work is told. */
const WHAT = 'Ways to do the job';

/** Asks for the ways to do the job on the open site, worked out by a worker, each told as it is done. */
export function askStudy(document: DocumentStore, wish: StudyWish, seconds: number): void {
  const { file } = document.getState().committed();
  const begun = beginWork(WHAT, (signal, tell) => worked({ file, wish, seconds }, signal, tell), 'finished');
  if (begun) studyStore.setState({ ...IDLE, file, doing: { says: 'waits for the others', done: 0, of: 0 } });
  else document.getState().notify(`${WHAT}: they are being worked out already, or too much is.`);
}

/** Stops working; the ways that are done stay. */
export function stopStudy(): void {
  const own = workStore.getState().works.find(({ what }) => what === WHAT);
  if (own) endWork(own.id);
  // One that waits has nobody to hear it yet.
  ended({ isStopped: true });
}

const ended = (how: Partial<Studies>): void => studyStore.setState({ ...how, doing: null });

function worked(request: StudyRequest, signal: AbortSignal, tell: TellWork): Promise<string> {
  if (signal.aborted) return new Promise(() => undefined);
  const worker = new Worker(new URL('./study-worker.ts', import.meta.url), { type: 'module' });
  signal.addEventListener('abort', () => {
    worker.terminate();
    ended({ isStopped: true });
  });
  return new Promise<string>((resolve, reject) => {
    const fail = (why: Error): void => {
      worker.terminate();
      ended({ fault: `The ways could not be worked out: ${why.message}` });
      reject(why);
    };
    worker.onmessage = ({ data }: MessageEvent<StudyNews>) => {
      if (data.kind === 'doing') {
        studyStore.setState({ doing: data.doing });
        tell(data.doing.says, data.doing.done, Math.max(1, data.doing.of));
      } else if (data.kind === 'refused') fail(new Error(data.says));
      else {
        const study = joined(studyStore.getState().study, data.soFar);
        studyStore.setState({ study });
        if (data.kind === 'ready') return;
        worker.terminate();
        ended({});
        resolve(`${counted(study.ways.length, 'way')}, ${study.unbeaten.size} of which nothing beats on all counts.`);
      }
    };
    // Without words it is the worker's own file that did not come.
    worker.onerror = ({ message }) => fail(new Error(message || 'module script failed'));
    worker.postMessage(request);
  });
}

/** The study so far: what came otherwise in its place, and what is new after those that came before. */
const joined = (before: Study | null, fresh: Study): Study => ({
  ...fresh,
  ways: [...new Map([...(before?.ways ?? []), ...fresh.ways].map((way) => [way.id, way])).values()],
});
