import { readFileSync } from 'node:fs';
import { readSite } from '../../../routing/site/file/read.ts';
import type { SiteFile } from '../../../routing/site/site.ts';

/** The small sample: 16 stalls under one canopy, in which nothing fails. */
export function libraryLot(): SiteFile {
  const read = readSite(readFileSync('samples/library-lot.site.json', 'utf8'));
  if (!read.ok) throw new RangeError('the sample is not read');
  return read.file;
}
