import type { Study } from '../../calc/study/shape.ts';
import { study } from '../../calc/study/study.ts';
import type { StudyNews, StudyRequest } from './study-request.ts';

/** Works a study out away from the page, which ends this worker when it is told to stop. */
const here = self as unknown as DedicatedWorkerGlobalScope;
here.onmessage = ({ data: { file, wish } }: MessageEvent<StudyRequest>) => {
  const post = (news: StudyNews): void => here.postMessage(news);
  let sent = 0;
  const fresh = (soFar: Study): Study => {
    const ways = soFar.ways.slice(sent);
    sent = soFar.ways.length;
    return { ...soFar, ways };
  };
  const studied = study(
    file,
    wish,
    (doing) => post({ kind: 'doing', doing }),
    (soFar) => post({ kind: 'ready', soFar: fresh(soFar) }),
  );
  post(studied.ok ? { kind: 'done', soFar: fresh(studied.study) } : { kind: 'refused', says: studied.says });
};
