import { mend } from '../../calc/propose/anew/mend.ts';
import { brokeWords } from '../../calc/propose/anew/mend-words.ts';
import { proposeAnew } from '../../calc/propose/anew/propose-anew.ts';
import { scopeOf } from '../../calc/propose/anew/scope.ts';
import type { PartNews, PartRequest } from './part-request.ts';
import { untilAfter } from './until-after.ts';

/** Of what is broken, the first sentence of the first finding: the findings themselves have all. */
const brief = ([first = '', ...more]: readonly string[]): readonly string[] => [
  first.split(/(?<=\.) (?=[A-Z])/)[0]!,
  ...more,
];

/** Draws a part of a lot again away from the page, which ends this worker when it is told to stop. */
const here = self as unknown as DedicatedWorkerGlobalScope;
here.onmessage = ({ data }: MessageEvent<PartRequest>) => {
  const post = (news: PartNews): void => here.postMessage(news);
  post(made(data, (done, of) => post({ kind: 'doing', done, of })));
};

function made(request: PartRequest, tell: (done: number, of: number) => void): PartNews {
  const { file, prices, seconds } = request;
  const mayGoOn = untilAfter(seconds);
  if (request.kind === 'mend') {
    const found = mend(file, request.before, prices, tell, () => mayGoOn());
    if (!found?.mended) return { kind: 'none', says: '' };
    const { broken, left, mended } = found;
    const { fails, price, says } = mended;
    return {
      kind: 'mended',
      file: mended.file,
      broke: brief(brokeWords(broken, 1)),
      left,
      mended: { fails, price },
      says,
    };
  }
  const { what, asked, keep, cordsADrop } = request;
  const scoped = scopeOf(file, asked);
  if (!scoped.ok) return { kind: 'none', says: `Nothing is proposed anew: ${scoped.says}.` };
  const wish = { what, scope: scoped.scope, keep: new Set(keep), cordsADrop, prices };
  const anew = proposeAnew(file, wish, tell, () => mayGoOn());
  const says = anew.parts.flatMap((part) => [...part.says, ...part.without.map((one) => one.says)]);
  return { kind: 'anew', file: anew.file, says, before: anew.before, after: anew.after };
}
