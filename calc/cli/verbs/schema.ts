import { siteJsonSchema } from '../../../routing/site/schema/json-schema.ts';
import { done, type VerbOutcome, wrong } from '../outcome.ts';

/** `schema`: the JSON Schema of the site file. */
export function schemaVerb(words: readonly string[]): VerbOutcome {
  if (words.length > 0) return wrong(`schema: takes no words, not "${words.join(' ')}"`);
  return done(`${JSON.stringify(siteJsonSchema(), null, 2)}\n`);
}
