import { readSite } from '../../routing/site/file/read.ts';
import type { Site, SiteFile } from '../../routing/site/site.ts';
import { toSite } from '../../routing/site/to-site.ts';
import type { Machine } from './machine.ts';
import { fewAlike } from './words/few-alike.ts';

export interface SiteOfFile {
  readonly path: string;
  readonly file: SiteFile;
  readonly site: Site;
}

export type SitesRead =
  | { readonly ok: true; readonly sites: readonly SiteOfFile[] }
  | { readonly ok: false; readonly reason: string };

/** One file read, or every error of it with its place. */
export type SiteRead =
  | ({ readonly ok: true } & SiteOfFile)
  | { readonly ok: false; readonly path: string; readonly errors: readonly string[] };

/** Reads one named site file; `-` is standard input. */
export function readNamedSite(path: string, machine: Machine): SiteRead {
  let text: string;
  try {
    text = machine.read(path);
  } catch (error) {
    return { ok: false, path, errors: [`cannot be read: ${error instanceof Error ? error.message : String(error)}`] };
  }
  const read = readSite(text);
  if (read.ok) return { ok: true, path, file: read.file, site: toSite(read.file) };
  return { ok: false, path, errors: read.errors.map(({ place, says }) => `${place ? `${place}: ` : ''}${says}`) };
}

/** The line of JSON of a file that cannot be read, in the place of what was asked of it. */
export const unreadLine = ({ path, errors }: { readonly path: string; readonly errors: readonly string[] }): string =>
  JSON.stringify({ format: 'overrow/unread', version: 1, file: path, errors });

/** Why some files could not be read, a line for each error. */
export const reasonsOf = (reads: readonly SiteRead[]): string =>
  reads.flatMap((read) => (read.ok ? [] : fewAlike(read.errors).map((says) => `${read.path}: ${says}`))).join('\n');

/** Reads all the named site files, or gives every error of every file with its place. */
export function readSites(paths: readonly string[], machine: Machine): SitesRead {
  const reads = paths.map((path) => readNamedSite(path, machine));
  const sites = reads.flatMap((read) => (read.ok ? read : []));
  return sites.length < reads.length ? { ok: false, reason: reasonsOf(reads) } : { ok: true, sites };
}
