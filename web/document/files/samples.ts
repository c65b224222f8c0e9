import { readSite } from '../../../routing/site/file/read.ts';
import type { SiteFile } from '../../../routing/site/site.ts';

const TEXTS: Readonly<Record<string, () => Promise<string>>> = import.meta.glob<string>(
  '../../../samples/*.site.json',
  {
    query: '?raw',
    import: 'default',
  },
);

/** The sample that a new page opens. */
export const DEFAULT_SAMPLE = 'library-lot';

const nameOf = (path: string): string => path.replace(/^.*\//, '').replace(/\.site\.json$/, '');

/** The names of the sample sites, such as `library-lot`, in order. */
export const SAMPLES: readonly string[] = Object.keys(TEXTS).map(nameOf).sort();

/** A sample site, fetched when it is asked for. Throws RangeError for a name that is none of `SAMPLES`. */
export async function sample(name: string): Promise<SiteFile> {
  const path = Object.keys(TEXTS).find((each) => nameOf(each) === name);
  const text = path && (await TEXTS[path]?.());
  if (!text) throw new RangeError(`there is no sample ${name}`);
  const read = readSite(text);
  if (!read.ok)
    throw new RangeError(`the sample ${name} is not valid: ${read.errors[0]?.place} ${read.errors[0]?.says}`);
  return read.file;
}
