import type { Site } from '../../../routing/site/site.ts';

/** A site under the name of its file. */
export interface NamedSite {
  readonly name: string;
  readonly site: Site;
}
