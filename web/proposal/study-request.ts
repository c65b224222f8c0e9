import type { Study, StudyWish } from '../../calc/study/shape.ts';
import type { StudyDoing } from '../../calc/study/study.ts';
import type { SiteFile } from '../../routing/site/site.ts';

export interface StudyRequest {
  readonly file: SiteFile;
  readonly wish: StudyWish;
  /** At most about so long. */
  readonly seconds: number;
}

/** What the worker tells: how far it is; the study so far, with only those ways that are new or came out otherwise; why there is none. */
export type StudyNews =
  | { readonly kind: 'doing'; readonly doing: StudyDoing }
  | { readonly kind: 'ready' | 'done'; readonly soFar: Study }
  | { readonly kind: 'refused'; readonly says: string };
