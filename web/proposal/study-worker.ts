import type { Study, StudyWay } from '../../calc/study/shape.ts';
import { study } from '../../calc/study/study.ts';
import type { StudyNews, StudyRequest } from './study-request.ts';
import { untilAfter } from './until-after.ts';

/** Works a study out away from the page, which ends this worker when it is told to stop. */
const here = self as unknown as DedicatedWorkerGlobalScope;
here.onmessage = ({ data: { file, wish, seconds } }: MessageEvent<StudyRequest>) => {
  const post = (news: StudyNews): void => here.postMessage(news);
  const sent = new Set<StudyWay>();
  const fresh = (soFar: Study): Study => {
    const ways = soFar.ways.filter((way) => !sent.has(way));
    for (const way of ways) sent.add(way);
    return { ...soFar, ways };
  };
  const studied = study(
    file,
    wish,
    (doing) => post({ kind: 'doing', doing }),
    (soFar) => post({ kind: 'ready', soFar: fresh(soFar) }),
    untilAfter(seconds),
  );
  post(studied.ok ? { kind: 'done', soFar: fresh(studied.study) } : { kind: 'refused', says: studied.says });
};
