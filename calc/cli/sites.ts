import { readSite } from '../../routing/site/read.ts';
import type { Site, SiteFile } from '../../routing/site/site.ts';
import { toSite } from '../../routing/site/to-site.ts';
import type { Machine } from './machine.ts';

export interface NamedSite {
  readonly path: string;
  readonly file: SiteFile;
  readonly site: Site;
}

export type SitesRead =
  | { readonly ok: true; readonly sites: readonly NamedSite[] }
  | { readonly ok: false; readonly reason: string };

/** Reads all the named site files, or gives every error of every file with its place. */
export function readSites(paths: readonly string[], machine: Machine): SitesRead {
  const sites: NamedSite[] = [];
  const reasons: string[] = [];
  for (const path of paths) {
    let text: string;
    try {
      text = machine.read(path);
    } catch (error) {
      reasons.push(`${path}: cannot be read: ${error instanceof Error ? error.message : String(error)}`);
      continue;
    }
    const read = readSite(text);
    if (read.ok) sites.push({ path, file: read.file, site: toSite(read.file) });
    else for (const { place, says } of read.errors) reasons.push(`${path}: ${place ? `${place}: ` : ''}${says}`);
  }
  return reasons.length > 0 ? { ok: false, reason: reasons.join('\n') } : { ok: true, sites };
}
