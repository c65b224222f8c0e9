import type { Site } from '../site/site.ts';
import { type CordField, fieldOf } from './field.ts';
import { type Shared, sharedOf } from './shared.ts';

/** A site made ready for its reach to be worked. */
export interface Now {
  readonly site: Site;
  readonly field: CordField;
  readonly shared: Shared;
}

export const nowOf = (site: Site): Now => ({ site, field: fieldOf(site), shared: sharedOf(site) });
